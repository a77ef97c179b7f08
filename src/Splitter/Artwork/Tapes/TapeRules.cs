using System.Collections.Immutable;
using Splitter.Artwork.Sewing;
using Splitter.Diagnostics;
using Splitter.Geometry;
using Splitter.Recipes;

namespace Splitter.Artwork.Tapes;

/// <summary>
/// The recipe's rules for shapes of a tape. A shape has its name and that of its colour block as ids, what it is sewn
/// as for a class, and its thread's colour. Its stitches stay as they are: a rule may keep it whole, or leave it out.
/// </summary>
internal static class TapeRules
{
    internal static Result<ImmutableArray<Shape>> Apply(
        Recipe recipe,
        ImmutableArray<SewThread> threads,
        ImmutableArray<Shape> shapes
    )
    {
        ImmutableArray<DrawnElement> elements = [.. shapes.Select(s => Element(s, threads))];
        var ruled = shapes
            .Zip(elements, (shape, element) => (Shape: shape, Rule: SewRules.For(element, recipe.Artwork.Sew)))
            .Where(s => s.Rule?.As != SewAs.Leave)
            .Select(s =>
                s.Shape with
                {
                    KeepWhole = s.Rule?.KeepWhole == true,
                    KeptWholeAt = s.Rule is { KeepWhole: true } rule ? recipe.PlaceOf(rule.Path) : null,
                    WantsWhole = s.Rule?.KeepWhole is null && ShowsCuts(s.Shape),
                }
            )
            .ToImmutableArray();
        return Result.From(
            ruled,
            [
                .. recipe
                    .Artwork.Sew.Where(rule => Asked(rule).Any())
                    .Select(rule => StitchedProblems.RuleForStitches(recipe.PlaceOf(rule.Path), Asked(rule).First())),
                .. SewRules.Unused(recipe, new Sheet(0, 0, elements)),
                .. ruled.IsEmpty
                    ? [DrawingProblems.NothingToSew(recipe.PlaceOf("artwork"))]
                    : Array.Empty<Diagnostic>(),
            ]
        );
    }

    /// <summary>
    /// A cut through a column shows, however well it is hidden, and so does one through something small.
    /// </summary>
    private static bool ShowsCuts(Shape shape) =>
        shape is SatinShape
        || Math.Max(shape.Footprint.Bounds.Width, shape.Footprint.Bounds.Height) <= RowGroups.SmallThing;

    /// <param name="threads">For each colour block its thread.</param>
    internal static DrawnElement Element(Shape shape, ImmutableArray<SewThread> threads)
    {
        var block = shape.Original[0].Block;
        ImmutableArray<string> ids = [shape.Id, FormattableString.Invariant($"block-{block}")];
        ImmutableArray<string> classes =
        [
            shape switch
            {
                FillShape => "fill",
                SatinShape => "satin",
                _ => "run",
            },
        ];
        return shape is RunShape run
            ? new DrawnLine
            {
                Id = shape.Id,
                Ids = ids,
                Classes = classes,
                Place = shape.Place,
                Color = threads[block - 1].Color,
                Paths = run.Lines,
                Width = SewDefaults.ThreadWidth,
                Cap = Cap.Round,
                Join = Join.Round,
            }
            : new DrawnArea
            {
                Id = shape.Id,
                Ids = ids,
                Classes = classes,
                Place = shape.Place,
                Color = threads[block - 1].Color,
                Ground = shape.Footprint,
            };
    }

    /// <summary>Keys of a rule that would change stitches.</summary>
    private static IEnumerable<string> Asked(SewRule rule)
    {
        if (rule.As is not (null or SewAs.Leave))
            yield return "as";
        if (rule.Angle is not null)
            yield return "angle";
        if (rule.Guide is not null)
            yield return "guide";
        if (rule.RowSpacing is not null)
            yield return "row-spacing";
        if (rule.StitchLength is not null)
            yield return "stitch-length";
        if (rule.Stagger is not null)
            yield return "stagger";
        if (rule.Passes is not null)
            yield return "passes";
        if (rule.Underlay is not null)
            yield return "underlay";
        if (rule.Pull is not null)
            yield return "pull";
        if (rule.Push is not null)
            yield return "push";
    }
}
