using System.Collections.Immutable;
using Splitter.Artwork;
using Splitter.Cutting;
using Splitter.Parts;
using Splitter.Planning;
using Splitter.Recipes;
using Splitter.Stitching.Estimates;

namespace Splitter.Outputs;

/// <summary>
/// About what a hooping amounts to, before it is stitched. Stops are those of the finished part, unless a piece turns
/// out too small to sew.
/// </summary>
internal sealed record HoopingEstimate(int Stitches, int Trims, int Stops, double Minutes)
{
    /// <summary>One for each hooping of a plan.</summary>
    internal static ImmutableArray<HoopingEstimate> Of(Recipe recipe, Drawing drawing, Plan plan)
    {
        var pieces = Cutter.Cut(drawing, plan, recipe.Overlap).ToLookup(piece => piece.Hooping);
        var overlaps = new ShapeOverlaps();
        return
        [
            .. plan.Hoopings.Select((hooping, i) => Of(recipe.Machine, plan, hooping, i == 0, pieces[i], overlaps)),
        ];
    }

    private static HoopingEstimate Of(
        Machine machine,
        Plan plan,
        Hooping hooping,
        bool first,
        IEnumerable<Piece> pieces,
        ShapeOverlaps overlaps
    )
    {
        ImmutableArray<int>[] marks =
        [
            first ? [.. plan.PlacementLines.Select(line => MarkStitcher.Line(line).Stitches.Length)] : [],
            [.. hooping.Takes.Select(i => MarkStitcher.Corner(plan.Corners[i]).Stitches.Length)],
            [.. hooping.Alignments.Select(cross => MarkStitcher.Cross(cross).Stitches.Length)],
            [.. hooping.Gives.Select(i => MarkStitcher.Corner(plan.Corners[i]).Stitches.Length)],
        ];
        PieceEstimate[][] threads =
        [
            .. ThreadOrder
                .Group(pieces, overlaps, piece => piece)
                .Select(group => group.Select(PieceEstimate.Of).ToArray()),
        ];
        var sewnMarks = marks.Where(m => !m.IsEmpty).ToList();
        var stitches = (int)Math.Round(marks.Sum(m => m.Sum()) + threads.Sum(t => t.Sum(piece => piece.Stitches)));
        // Whatever a step begins anew, it begins farther away than thread may lie loose.
        var trims = sewnMarks.Sum(m => m.Length - 1) + threads.Sum(t => t.Sum(piece => piece.Blocks) - 1);
        var stops = Math.Max(0, sewnMarks.Count + threads.Length - 1);
        return new(stitches, trims, stops, Rates.Minutes(machine, stitches, stops, trims));
    }
}
