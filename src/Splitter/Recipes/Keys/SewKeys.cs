using System.Collections.Immutable;
using Splitter.Diagnostics;
using Splitter.Recipes.Language;

namespace Splitter.Recipes.Keys;

/// <summary>The keys of a rule in <c>artwork.sew</c>.</summary>
internal static class SewKeys
{
    internal static readonly Key<SewMatch> Match = new("match", MatchKeys.Group)
    {
        Says = "Which shapes the rule is for; all that is asked must hold.",
        Example = "{ class: lettering }",
        Required = true,
    };

    internal static readonly Key<SewAs> As = new(
        "as",
        new WordKind<SewAs>([("fill", SewAs.Fill), ("satin", SewAs.Satin), ("run", SewAs.Run), ("leave", SewAs.Leave)])
    )
    {
        Says = "Rows over an area, stitches across a column, a line of stitches, or nothing at all.",
        Example = "satin",
        Otherwise = "what suits the shape: a narrow area or a stroke from 1 mm up is satin, a finer stroke a run",
    };

    internal static readonly Key<bool> KeepWhole = new(
        "keep-whole",
        new WordKind<bool>([("true", true), ("false", false)])
    )
    {
        Says = "The shape lies in one field; no seam cuts it.",
        Example = "true",
        Otherwise =
            "seams may cut it; of a tape, columns and what is up to 40 mm long stay whole where that takes no "
            + "hooping more",
    };

    internal static readonly Key<double> Angle = new("angle", new AngleKind())
    {
        Says = "Direction of fill rows, clockwise as seen on the drawing.",
        Example = "20 deg",
        Otherwise = "chosen for the kind of stitch",
    };

    internal static readonly Key<string> Guide = new("guide", new TextKind(100_000))
    {
        Says =
            "A line that fill rows follow: the id of one in the artwork, or well-known text in millimetres of "
            + "the finished work.",
        Example = "\"LINESTRING (10 90, 50 60, 90 80)\"",
        Otherwise = "rows are straight",
    };

    internal static readonly Key<int> RowSpacing = new("row-spacing", new LengthKind("0.2 mm", "5 mm"))
    {
        Says = "Distance of fill rows, or of satin stitches along their column.",
        Example = "0.4 mm",
        Otherwise = "chosen for the kind of stitch",
    };

    internal static readonly Key<int> StitchLength = new("stitch-length", new LengthKind("0.5 mm", "12.1 mm"))
    {
        Says = "Longest stitch of a fill row or a run.",
        Example = "4 mm",
        Otherwise = "chosen for the kind of stitch",
    };

    internal static readonly Key<Stagger> Stagger = new("stagger", new FractionKind(16))
    {
        Says = "By which share of a stitch the penetrations of a fill row are moved against those of the row before.",
        Example = "3/8",
        Otherwise = "3/8",
    };

    internal static readonly Key<Passes> Passes = new(
        "passes",
        new WordKind<Passes>([
            ("single", Recipes.Passes.Single),
            ("double", Recipes.Passes.Double),
            ("triple", Recipes.Passes.Triple),
        ])
    )
    {
        Says = "How often a run goes over its lines, through the same holes: once, out and back, or three times, bold.",
        Example = "triple",
        Otherwise = "single",
    };

    /// <summary>No array at all where it is chosen by the kind of stitch and the width of columns.</summary>
    internal static readonly Key<ImmutableArray<UnderlayKind>> Underlay = new(
        "underlay",
        new WordOr<ImmutableArray<UnderlayKind>>(
            "auto",
            default,
            new WordOr<ImmutableArray<UnderlayKind>>(
                "none",
                [],
                new ListKind<UnderlayKind>(
                    new WordKind<UnderlayKind>([
                        ("edge", UnderlayKind.Edge),
                        ("cross", UnderlayKind.Cross),
                        ("centre", UnderlayKind.Centre),
                    ]),
                    0,
                    3
                )
            )
        )
    )
    {
        Says = "Stitches below the visible ones, in sewing order.",
        Example = "[edge, cross]",
        Otherwise =
            "auto: edge below a fill, edge and cross from 10 mm width; below satin nothing up to 1 mm, then "
            + "centre, edge from 2.5 mm, edge and cross from 5 mm",
    };

    internal static readonly Key<int> Pull = new("pull", new LengthKind("0 mm", "2 mm"))
    {
        Says = "How far a stitch reaches past the edge on each side, against the thread's pull.",
        Example = "0.2 mm",
        Otherwise = "chosen for the kind of stitch",
    };

    /// <summary>Less than the trap under neighbours, so that no gap opens.</summary>
    internal static readonly Key<int> Push = new("push", new LengthKind("0 mm", "0.6 mm"))
    {
        Says = "How far a fill is held back at edges along its rows, since rows push each other outwards.",
        Example = "0.2 mm",
        Otherwise = "0 mm",
    };

    internal static readonly GroupKind<SewRule> Group = new(
        [Match, As, KeepWhole, Angle, Guide, RowSpacing, StitchLength, Stagger, Passes, Underlay, Pull, Push],
        group =>
            new(group.Given.Path, group.Get(Match))
            {
                As = group.MaybeValue(As),
                KeepWhole = group.MaybeValue(KeepWhole),
                Angle = group.MaybeValue(Angle),
                Guide = group.OrNull(Guide),
                RowSpacing = group.MaybeValue(RowSpacing),
                StitchLength = group.MaybeValue(StitchLength),
                Stagger = group.MaybeValue(Stagger),
                Passes = group.MaybeValue(Passes),
                Underlay = group.MaybeValue(Underlay) is { IsDefault: false } kinds ? kinds : null,
                Pull = group.MaybeValue(Pull),
                Push = group.MaybeValue(Push),
            },
        group =>
        {
            if (group.Has(Angle) && group.Has(Guide))
                group.Report(RecipeProblems.AngleAndGuide(group.PlaceOf(Guide)));
        }
    );
}
