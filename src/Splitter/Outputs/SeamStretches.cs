using System.Collections.Immutable;
using Splitter.Artwork;
using Splitter.Geometry;
using Splitter.Planning;

namespace Splitter.Outputs;

/// <summary>What a stretch of seam divides, from what shows least to what shows most.</summary>
internal enum SeamGround
{
    /// <summary>Nothing: bare cloth, or what is sewn whole over it.</summary>
    Nothing,

    /// <summary>The rows of a fill.</summary>
    Fill,

    /// <summary>Satin or a run: a misfit shows at half of what shows in a fill (common practice, no source).</summary>
    LineWork,
}

/// <summary>A stretch of seam over one kind of ground.</summary>
internal sealed record SeamStretch(SeamGround Ground, Polyline Line);

/// <summary>Seams divided by what they cross.</summary>
internal static class SeamStretches
{
    internal static ImmutableArray<SeamStretch> Of(Drawing drawing, Plan plan)
    {
        var cut = drawing.Shapes.Where((_, i) => plan.Owners[i] is null).ToList();
        var lines = Clipping(cut.Where(s => s is not FillShape));
        var fills = Clipping(cut.Where(s => s is FillShape));
        var stretches = ImmutableArray.CreateBuilder<SeamStretch>();
        foreach (var seam in plan.SeamLines)
        {
            Add(SeamGround.LineWork, lines.Inside(seam.Line));
            foreach (var beside in lines.Outside(seam.Line))
            {
                Add(SeamGround.Fill, fills.Inside(beside));
                Add(SeamGround.Nothing, fills.Outside(beside));
            }
        }
        return stretches.ToImmutable();

        void Add(SeamGround ground, ImmutableArray<Polyline> found) =>
            stretches.AddRange(found.Where(line => line.Length > 0).Select(line => new SeamStretch(ground, line)));
    }

    private static PathClipping Clipping(IEnumerable<Shape> shapes) =>
        new(Polygons.Union(shapes.Select(s => s.Footprint)));
}
