using System.Collections.Immutable;
using Splitter.Artwork;
using Splitter.Geometry;

namespace Splitter.Planning.Seams;

/// <summary>What a stretch of seam divides, from what shows least to what shows most.</summary>
internal enum SeamGround
{
    /// <summary>Nothing: it passes a shape that one part sews whole.</summary>
    Whole,

    /// <summary>Nothing: cloth without a stitch.</summary>
    Bare,

    /// <summary>The rows of a fill.</summary>
    Fill,

    /// <summary>Satin or a run: a misfit shows at half of what shows in a fill (common practice, no source).</summary>
    LineWork,
}

/// <summary>A stretch of seam over one kind of ground.</summary>
/// <param name="Seam">The whole seam.</param>
/// <param name="Over">The shape that it divides; null where it divides none.</param>
internal sealed record SeamStretch(SeamGround Ground, Polyline Line, Seam Seam, Shape? Over);

/// <summary>Seams divided by what a person sees at them.</summary>
internal static class SeamStretches
{
    /// <summary>
    /// Of the parts that join: where nothing is cut between two, cloth only lies between their shapes.
    /// </summary>
    internal static ImmutableArray<SeamStretch> Of(Drawing drawing, Plan plan)
    {
        var joined = plan.Joins.Select(j => (j.Earlier, j.Later)).ToHashSet();
        return Of(drawing, plan.Owners, [.. plan.SeamLines.Where(s => joined.Contains((s.Earlier, s.Later)))]);
    }

    /// <param name="owners">For each shape the part that sews it whole, or null when seams cut it.</param>
    internal static ImmutableArray<SeamStretch> Of(
        Drawing drawing,
        ImmutableArray<int?> owners,
        ImmutableArray<Seam> seams
    )
    {
        var covers = Covers(drawing, owners, seams);
        var stretches = ImmutableArray.CreateBuilder<SeamStretch>();
        foreach (var seam in seams)
        {
            ImmutableArray<Polyline> open = [seam.Line];
            foreach (var cover in covers.Where(c => c.Bounds.Meets(seam.Line.Bounds)))
            {
                var area = cover.AreaAround(seam.Line.Bounds);
                Add(cover.Ground, seam, cover.Shape, open.SelectMany(line => area.Inside(line)));
                open = [.. open.SelectMany(line => area.Outside(line))];
            }
            Add(SeamGround.Bare, seam, null, open);
        }
        return stretches.ToImmutable();

        void Add(SeamGround ground, Seam seam, Shape? over, IEnumerable<Polyline> found) =>
            stretches.AddRange(
                found.Where(line => line.Length > 0).Select(line => new SeamStretch(ground, line, seam, over))
            );
    }

    /// <summary>
    /// Topmost first. A line of stitches hides nothing below it, so one that is sewn whole comes last: it only keeps
    /// the cloth from being bare.
    /// </summary>
    private static List<Cover> Covers(Drawing drawing, ImmutableArray<int?> owners, ImmutableArray<Seam> seams)
    {
        var lines = Box.Around(seams.Select(s => s.Line.Bounds));
        return
        [
            .. drawing
                .Shapes.Select((shape, i) => (Shape: shape, Owner: owners[i], Index: i))
                .Where(s => s.Shape.Footprint.Bounds.Meets(lines))
                .OrderBy(s => s is { Owner: not null, Shape: RunShape })
                .ThenByDescending(s => s.Index)
                .Select(s => Cover.Of(s.Shape, s.Owner is not null)),
        ];
    }

    /// <summary>
    /// A shape as it covers what lies below: of a drawing at most the trap of a neighbour, of a tape whatever there is.
    /// </summary>
    /// <param name="AreaAround">Its area, as far as a seam in a box needs it.</param>
    private sealed record Cover(Shape? Shape, SeamGround Ground, Box Bounds, Func<Box, PathClipping> AreaAround)
    {
        internal static Cover Of(Shape shape, bool whole)
        {
            var bounds = shape.Footprint.Bounds;
            if (!whole)
                // As where seams are found to cross shapes: along an edge is not through it.
                return new(
                    shape,
                    shape is FillShape ? SeamGround.Fill : SeamGround.LineWork,
                    bounds,
                    CutGround.Of(shape.Footprint).Around
                );
            var area = new PathClipping(shape.Footprint);
            return new(null, SeamGround.Whole, bounds, _ => area);
        }
    }
}
