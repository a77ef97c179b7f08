using System.Collections.Immutable;
using Splitter.Geometry;
using Splitter.Stitching.Runs;

namespace Splitter.Stitching.Satins;

/// <summary>
/// Sews columns that touch in one go. From where the thread enters a column it runs out below the satin to come, passes
/// on to each column that touches on the way, and covers the column on the way back: every way lies under satin.
/// </summary>
internal sealed class ColumnSewer(
    ImmutableArray<ColumnLine> columns,
    ImmutableArray<ImmutableArray<Joint>> joints,
    JointWays ways,
    Artwork.SewStyle style,
    bool isCut
)
{
    /// <summary>How far the way out stops before a column's end, µm, so that it does not stick out of a tip.</summary>
    internal const double EndInset = 800;

    /// <summary>How far columns of two parts overlap, µm: some 1 mm.</summary>
    private const double Overlap = 1200;

    /// <summary>A shorter side of a column is covered without a way out, µm.</summary>
    internal const double ShortestOut = 1600;

    /// <summary>
    /// How far from a seam a column is begun and ended, µm: it is tied beside the overlap and not on it, where another
    /// part ties as well. Columns overlap by some 1 mm, and a tie is 1.4 mm long.
    /// </summary>
    private const double BesideSeam = 3000;

    /// <summary>A shorter column is begun at its end, µm: twice a side that is covered without a way out.</summary>
    private const double LeastToBeginInside = 2 * ShortestOut;

    /// <summary>A closed column's satin goes on over its start by this, µm, so that no gap opens.</summary>
    private const double ClosingOverlap = 600;

    /// <summary>Longest stitch of the way between two columns, µm.</summary>
    private const double TravelStitch = 2500;

    /// <summary>
    /// Columns that are begun one inside the other: each takes a little of the thread's stack. The rest of a longer
    /// chain is a block of its own.
    /// </summary>
    private const int Deepest = 500;

    private readonly bool[] begun = new bool[columns.Length];
    private readonly bool[] finished = new bool[columns.Length];
    private readonly List<int> sewn = [];
    private int depth;
    private readonly List<Stitch> path = [];

    /// <summary>Where the needle goes before it sews on, and on which columns that lies.</summary>
    private readonly List<(int Column, Point To)> ahead = [];

    /// <summary>
    /// Where to begin a column that was to begin at an end of it: a little inside, where satin hides the tie and less
    /// thread comes together; beside an overlap where a seam has cut it.
    /// </summary>
    internal double BeginningAt(int column, double end)
    {
        if (style.Underlay.IsEmpty || columns[column].IsClosed)
            return end;
        var inset = isCut && !columns[column].IsOpenEnd(end) ? BesideSeam : EndInset;
        return columns[column].Length < Math.Max(2 * inset, LeastToBeginInside) ? end : Math.Abs(end - inset);
    }

    /// <summary>Everything that can be reached from one place of a column, that column included.</summary>
    internal ImmutableArray<Stitch> Sew(int column, double place)
    {
        path.Clear();
        ahead.Clear();
        sewn.Clear();
        if (style.Underlay.IsEmpty && IsAlone(column) && !columns[column].IsClosed)
        {
            Begin(column);
            var end = place > 0 ? 0 : columns[column].Length;
            return [.. Zigzag.Over(columns[column], place, end, style.RowSpacing, style.Pull)];
        }
        Visit(column, place);
        return [.. path];
    }

    /// <summary>The columns that the last call sewed.</summary>
    internal IReadOnlyList<int> Sewn => sewn;

    private void Begin(int column)
    {
        begun[column] = true;
        sewn.Add(column);
    }

    private bool IsAlone(int column) => joints[column].IsEmpty;

    private void Visit(int index, double place)
    {
        Begin(index);
        if (columns[index].IsClosed)
            Round(index, place);
        else
            Sides(index, place);
        finished[index] = true;
    }

    /// <summary>
    /// Both sides of a column, one after the other. A short one has no way out of its own: what touches it is visited
    /// on the way out to the other end, whose satin just goes on over it. Where many columns meet, as in the middle of
    /// a star, that saves a way for each.
    /// </summary>
    private void Sides(int index, double place)
    {
        var length = columns[index].Length;
        var (near, far) = place <= length / 2 ? (0, length) : (length, 0.0);
        if (Math.Abs(near - place) < ShortestOut)
        {
            Side(index, place, far, near);
            return;
        }
        Side(index, place, 0, place);
        Side(index, place, length, place);
    }

    /// <summary>
    /// Once round from the entry unless nothing needs it, then the satin once round and a little more.
    /// </summary>
    private void Round(int index, double place)
    {
        var column = columns[index];
        if (!style.Underlay.IsEmpty || !IsAlone(index))
        {
            Out(index, place, column.Length);
            Out(index, 0, place);
        }
        Add(Zigzag.Over(column, place, column.Length, style.RowSpacing, style.Pull));
        Add(Zigzag.Over(column, 0, Math.Min(column.Length, place + ClosingOverlap), style.RowSpacing, style.Pull));
    }

    /// <summary>Out to one end of a column and back over it, up to a place.</summary>
    private void Side(int index, double place, double end, double upTo)
    {
        var column = columns[index];
        var length = Math.Abs(end - place);
        if (length <= 0)
            return;
        if (length >= ShortestOut)
        {
            var turn = end + (Math.Sign(place - end) * InsetAt(index, end, length));
            Add(ColumnUnderlay.Edges(column, place, turn, style.Underlay));
            Out(index, place, turn, upTo);
        }
        else if (Branches(index, place, end, upTo).Any(b => !begun[b.Joint.Other]))
            Out(index, place, end, upTo);
        Add(Zigzag.Over(column, end, upTo, style.RowSpacing, style.Pull));
    }

    /// <summary>Short of an overlap, where another part sews as well, if nothing there is to be visited.</summary>
    private double InsetAt(int index, double end, double length) =>
        isCut
        && length > BesideSeam
        && !columns[index].IsOpenEnd(end)
        && joints[index].All(j => Math.Abs(j.Place - end) > BesideSeam)
            ? EndInset + Overlap
            : EndInset;

    /// <summary>The way along a column, with a visit to each column that touches it and has not been begun.</summary>
    private void Out(int index, double from, double to, double? upTo = null)
    {
        var column = columns[index];
        var at = from;
        foreach (var (place, joint) in Branches(index, from, to, upTo ?? from))
        {
            if (begun[joint.Other] || depth == Deepest)
                continue;
            if (at != place || path.Count == 0)
                Add(ColumnUnderlay.Out(column, at, place, style.Underlay));
            // Over the joint itself both times: that way, and no shorter one, is known to be covered.
            var (here, there) = (column.At(joint.Place).Middle, columns[joint.Other].At(joint.OtherPlace).Middle);
            ahead.AddRange((index, here), (joint.Other, there));
            depth++;
            Visit(joint.Other, joint.OtherPlace);
            depth--;
            ahead.AddRange((joint.Other, there), (index, here));
            at = place;
        }
        if (at != to)
            Add(ColumnUnderlay.Out(column, at, to, style.Underlay));
    }

    /// <summary>The joints on the way, and where the way is left for each.</summary>
    /// <param name="upTo">So far behind the start of the way the satin goes on over what it comes back along.</param>
    private IEnumerable<(double Place, Joint Joint)> Branches(int index, double from, double to, double upTo)
    {
        // The way out stops short of the end, yet a column that touches the end belongs to it.
        var (low, high) = (
            Math.Min(Math.Min(from, to), upTo) - EndInset,
            Math.Max(Math.Max(from, to), upTo) + EndInset
        );
        var own = joints[index]
            .Where(j => j.Place >= low && j.Place <= high)
            .Select(j => (Place: Math.Clamp(j.Place, Math.Min(from, to), Math.Max(from, to)), Joint: j));
        return from <= to
            ? own.OrderBy(b => b.Place).ThenBy(b => b.Joint.Other)
            : own.OrderByDescending(b => b.Place).ThenBy(b => b.Joint.Other);
    }

    /// <summary>Sews on, from where the needle is to go before.</summary>
    private void Add(IEnumerable<Stitch> stitches)
    {
        ImmutableArray<Stitch> next = [.. stitches];
        if (next.IsEmpty)
            return;
        if (path.Count > 0)
            foreach (var corner in ways.Straight([path[^1].At, .. ahead.Select(a => a.To)], IsHidden))
                path.AddRange(
                    EvenRun
                        .Along([path[^1].At, corner], TravelStitch)
                        .Skip(1)
                        .Select(p => new Stitch(p, StitchUse.Travel))
                );
        ahead.Clear();
        path.AddRange(next);

        bool IsHidden(Point p) => ahead.Any(a => !finished[a.Column] && columns[a.Column].Holds(p));
    }
}
