using System.Collections.Immutable;
using Splitter.Geometry;

namespace Splitter.Cutting.Tapes;

/// <summary>
/// What lies over a shape where a hooping can sew, when earlier ones have sewn it and this one does not sew it again:
/// an overlap, or a stitch across a seam, would cover it. It grows from the uppermost shape down.
/// </summary>
/// <param name="field">Where the hooping can sew.</param>
internal sealed class FinishedWork(Box field)
{
    /// <summary>Threads are looked at every so often, µm.</summary>
    private const int Step = CellGround.Side;

    /// <summary>A thread and what lies so near it belong together, µm: rows leave no gap then.</summary>
    private const int Beside = CellGround.Side;

    private readonly CellGround earlier = new();
    private readonly CellGround own = new();

    /// <summary>The hooping sews something there, perhaps.</summary>
    internal bool Reaches(Box box) => box.Meets(field);

    /// <param name="from">Of a stitch that an earlier hooping sews.</param>
    internal void AddEarlier(Point from, Point to) => Lay(earlier, from, to);

    /// <summary>The hooping's own, which come after its overlap.</summary>
    internal void AddOwn(ImmutableArray<KeptStitch> stitches)
    {
        for (var i = 1; i < stitches.Length; i++)
            Lay(own, stitches[i - 1].At, stitches[i].At);
    }

    internal bool IsAt(Point place) => earlier.Has(place) && !own.Has(place);

    /// <summary>A stitch would lie over some of it.</summary>
    internal bool IsUnder(Point from, Point to) => Along(from, to).Any(IsAt);

    private void Lay(CellGround ground, Point from, Point to)
    {
        foreach (var at in Along(from, to))
            if (field.Contains(at))
                ground.Lay(at, at, Beside);
    }

    private static IEnumerable<Point> Along(Point from, Point to)
    {
        var count = Math.Max(1, (int)Math.Ceiling(from.DistanceTo(to) / Step));
        for (var k = 0; k <= count; k++)
            yield return from.Towards(to, (double)k / count);
    }
}
