using System.Collections.Immutable;
using Splitter.Artwork;
using Splitter.Artwork.Columns;
using Splitter.Geometry;

namespace Splitter.Stitching.Satins;

/// <summary>
/// A column measured square to its rungs along the edge that gets on faster, where its stitches are to be evenly dense:
/// from 0 to <see cref="Length"/> µm. An edge that runs in towards the other, as at a tip, a round end or where another
/// column takes over, gets on no faster for being longer: stitches counted along it would pile up.
/// </summary>
internal sealed class ColumnLine
{
    private readonly ImmutableArray<Rung> rungs;
    private readonly double[] along;

    /// <summary>
    /// How far ahead of an end it is looked whether other columns lie there, µm: about the way they overlap.
    /// </summary>
    private const double LookAhead = 400;

    private readonly Lazy<Func<double, double, bool>> ground;
    private readonly bool startsOpen;
    private readonly bool endsOpen;

    /// <param name="covered">
    /// Whether a place is covered by this column or others; without it, both ends are open.
    /// </param>
    internal ColumnLine(Column column, Func<double, double, bool>? covered = null)
    {
        rungs = column.Rungs;
        along = new double[rungs.Length];
        for (var i = 1; i < rungs.Length; i++)
            along[i] = along[i - 1] + Progress(rungs[i - 1], rungs[i]);
        MeanWidth = Column.MeanWidth([column]);
        startsOpen = IsOpen(rungs[1], rungs[0], covered);
        endsOpen = IsOpen(rungs[^2], rungs[^1], covered);
        Bounds = Box.Around(rungs.SelectMany(r => new[] { r.Left, r.Right }));
        ground = new(() => Polygons.Containment(OutlineColumns.Ground([column])));
    }

    /// <summary>What the faster edge gets on, section by section; µm.</summary>
    internal double Length => along[^1];

    /// <summary>Mean width, µm.</summary>
    internal double MeanWidth { get; }

    internal Box Bounds { get; }

    /// <summary>Its end is its start.</summary>
    internal bool IsClosed => rungs[0] == rungs[^1];

    /// <summary>The same closed column, begun elsewhere.</summary>
    internal Column BegunAt(double place)
    {
        var (first, section) = (At(place), Section(place));
        return new([first, .. rungs[(section + 1)..], .. rungs[1..(section + 1)], first]);
    }

    /// <summary>It ends there, and on bare cloth.</summary>
    internal bool IsOpenEnd(double place) => !IsClosed && ((place <= 0 && startsOpen) || (place >= Length && endsOpen));

    /// <summary>Whether its stitches cover a place.</summary>
    internal bool Holds(Point p) => ground.Value(p.X, p.Y);

    internal Rung At(double place)
    {
        var i = Section(place);
        return Between(i, place);
    }

    /// <summary>How far the left and the right edge run there for each micrometre of the column.</summary>
    internal (double Left, double Right) Advance(double place)
    {
        var i = Section(place);
        var length = along[i + 1] - along[i];
        return length <= 0
            ? (1, 1)
            : (
                rungs[i].Left.DistanceTo(rungs[i + 1].Left) / length,
                rungs[i].Right.DistanceTo(rungs[i + 1].Right) / length
            );
    }

    /// <summary>
    /// The places of the rungs between two places, both of these included, in the direction from one to the other.
    /// </summary>
    internal IEnumerable<double> Places(double from, double to)
    {
        var inner = along.Where(a => a > Math.Min(from, to) && a < Math.Max(from, to)).Distinct();
        return [from, .. from <= to ? inner : inner.Reverse(), to];
    }

    /// <summary>Of both edges and square to both rungs, the most.</summary>
    private static double Progress(Rung from, Rung to)
    {
        var (left, right) = (Vector.Between(from.Left, to.Left), Vector.Between(from.Right, to.Right));
        return new[] { from, to }
            .Where(r => r.Width > 0)
            .Select(r => Vector.Between(r.Left, r.Right).Unit)
            .Select(across => Math.Max(Math.Abs(Vector.Cross(across, left)), Math.Abs(Vector.Cross(across, right))))
            .DefaultIfEmpty(left.Length)
            .Max();
    }

    private static bool IsOpen(Rung before, Rung end, Func<double, double, bool>? covered)
    {
        var way = Vector.Between(before.Middle, end.Middle);
        if (covered is null || way.Length == 0)
            return true;
        var ahead = (way.Unit * LookAhead).From(end.Middle);
        return !covered(ahead.X, ahead.Y);
    }

    private Rung Between(int i, double place)
    {
        var length = along[i + 1] - along[i];
        var share = length <= 0 ? 0 : Math.Clamp((place - along[i]) / length, 0, 1);
        return new(rungs[i].Left.Towards(rungs[i + 1].Left, share), rungs[i].Right.Towards(rungs[i + 1].Right, share));
    }

    /// <summary>Index of the rung before a place, which has one after it.</summary>
    private int Section(double place)
    {
        var i = Array.BinarySearch(along, place);
        return Math.Clamp(i >= 0 ? i : ~i - 1, 0, rungs.Length - 2);
    }
}
