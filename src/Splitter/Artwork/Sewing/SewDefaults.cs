using System.Collections.Immutable;
using Splitter.Geometry;
using Splitter.Recipes;

namespace Splitter.Artwork.Sewing;

/// <summary>How things are sewn where the recipe does not say. Common practice, no source, unless said.</summary>
internal static class SewDefaults
{
    /// <summary>A stroke from this width up is a satin column, a finer one a run; µm.</summary>
    internal const int NarrowestSatin = 1000;

    /// <summary>
    /// An area no wider than this anywhere is sewn as satin without being asked, µm: wider satin stitches catch on
    /// things in use. Satin is sewn from 1 to 8 mm.
    /// </summary>
    internal const int WidestOwnSatin = 6000;

    /// <summary>Satin that a rule asks for may be this wide, µm; above 8 mm its stitches are split.</summary>
    internal const int WidestAskedSatin = 16_000;

    /// <summary>What one line of stitches covers, µm: no. 40 thread is about 0.4 mm wide.</summary>
    internal const int ThreadWidth = 400;

    /// <summary>Columns narrower than this on average hold without underlay, µm.</summary>
    private const double NoUnderlayBelow = 1000;

    /// <summary>
    /// Columns wider than this on average are held at both edges, narrower ones by one run in the middle; µm.
    /// </summary>
    private const double EdgeUnderlayFrom = 2500;

    /// <summary>
    /// Columns wider than this on average get an open zigzag as well, µm: it keeps long stitches from sinking in.
    /// </summary>
    private const double CrossUnderlayFrom = 5000;

    /// <summary>
    /// Fills that are this wide somewhere get open rows across below the visible ones as well, µm: wide rows sink in,
    /// while narrow ones are held by the runs along their edges.
    /// </summary>
    private const int WideFill = 10_000;

    internal static SewStyle Fill(SewRule? rule, Region ground) =>
        new()
        {
            Angle = rule?.Angle ?? 30,
            RowSpacing = rule?.RowSpacing ?? 400,
            StitchLength = rule?.StitchLength ?? 4000,
            Stagger = rule?.Stagger ?? Stagger.Usual,
            Underlay = rule?.Underlay ?? FillUnderlay(ground),
            Pull = rule?.Pull ?? 200,
            Push = rule?.Push ?? 0,
        };

    internal static SewStyle Satin(SewRule? rule, ImmutableArray<Column> columns) =>
        new()
        {
            Angle = rule?.Angle ?? 0,
            RowSpacing = rule?.RowSpacing ?? 400,
            StitchLength = rule?.StitchLength ?? 4000,
            Underlay = rule?.Underlay ?? SatinUnderlay(columns),
            Pull = rule?.Pull ?? 200,
        };

    internal static SewStyle Run(SewRule? rule) =>
        new() { StitchLength = rule?.StitchLength ?? 2500, Passes = rule?.Passes ?? Passes.Single };

    private static ImmutableArray<UnderlayKind> FillUnderlay(Region ground) =>
        InscribedDisc.Fits(ground, WideFill) ? [UnderlayKind.Edge, UnderlayKind.Cross] : [UnderlayKind.Edge];

    private static ImmutableArray<UnderlayKind> SatinUnderlay(ImmutableArray<Column> columns) =>
        Column.MeanWidth(columns) switch
        {
            < NoUnderlayBelow => [],
            < EdgeUnderlayFrom => [UnderlayKind.Centre],
            < CrossUnderlayFrom => [UnderlayKind.Edge],
            _ => [UnderlayKind.Edge, UnderlayKind.Cross],
        };
}
