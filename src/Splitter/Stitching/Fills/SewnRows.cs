using Splitter.Cutting;

namespace Splitter.Stitching.Fills;

/// <summary>What is sewn of a row: where the needle turns, pull compensation included, µm along the row.</summary>
internal readonly record struct Stretch(int Row, double From, double To);

/// <summary>
/// The stretches that a piece sews on each span of its ground: the whole span, or, past a seam, what even or odd rows
/// reach of it. Ends on the shape's own edge are moved outwards by the pull compensation; ends at a seam stay, since
/// the neighbouring part sews on from there.
/// </summary>
internal sealed class SewnRows
{
    /// <summary>
    /// A row end this near to the shape's edge lies on it, µm: cutting rounds the outline to whole micrometres, which
    /// shows twentyfold along a row that meets the edge at 3 degrees.
    /// </summary>
    private const double OnEdge = 20;

    /// <summary>
    /// How far past a seam a row reaches beyond those beside it, µm. Its thread goes there and back: where a seam runs
    /// almost along the rows a longer one would lie there twice.
    /// </summary>
    private const double LongestTooth = 1500;

    private readonly Stretch[] stretches;
    private readonly int[] starts;

    private SewnRows(Stretch[] stretches, int[] starts) => (this.stretches, this.starts) = (stretches, starts);

    /// <summary>
    /// The stretches on a span, in ascending order; often one, and none where only the other rows reach.
    /// </summary>
    internal ReadOnlySpan<Stretch> On(int span) => stretches.AsSpan(starts[span], starts[span + 1] - starts[span]);

    internal static SewnRows Of(FillPiece piece, Lattice lattice, RowScan ground)
    {
        var sewn = piece.IsCut ? ByParity(piece, lattice, ground) : [.. ground.Spans];
        var outline = piece.IsCut ? RowScan.Of(piece.Shape.Footprint, lattice) : ground;
        var pulled = new Stretch[sewn.Count];
        for (var i = 0; i < pulled.Length; i++)
        {
            var s = sewn[i];
            var (before, after) = (
                i > 0 && sewn[i - 1].Row == s.Row ? s.From - sewn[i - 1].To : double.PositiveInfinity,
                i + 1 < sewn.Count && sewn[i + 1].Row == s.Row ? sewn[i + 1].From - s.To : double.PositiveInfinity
            );
            var (from, to) = piece.IsCut ? OwnEnds(s, outline) : (true, true);
            pulled[i] = new(
                s.Row,
                from ? s.From - Math.Min(lattice.Along(s.Row, s.From, piece.Shape.Style.Pull), before / 2) : s.From,
                to ? s.To + Math.Min(lattice.Along(s.Row, s.To, piece.Shape.Style.Pull), after / 2) : s.To
            );
        }
        return new(pulled, Assigned(sewn, ground));
    }

    /// <summary>Spans of even rows in the even ground and of odd rows in the odd one, by row, then along it.</summary>
    private static List<Span> ByParity(FillPiece piece, Lattice lattice, RowScan ground)
    {
        var even = RowScan.Of(piece.EvenRows, lattice);
        var odd = ReferenceEquals(piece.EvenRows, piece.OddRows) ? even : RowScan.Of(piece.OddRows, lattice);
        var sewn = new List<Span>();
        for (var row = ground.FirstRow; row < ground.FirstRow + ground.Rows; row++)
        {
            var scan = (row & 1) == 0 ? even : odd;
            var (from, to) = scan.On(row);
            if (ReferenceEquals(even, odd))
                sewn.AddRange(scan.Spans.AsSpan(from, to - from));
            else
                for (var i = from; i < to; i++)
                    if (Shortened(scan.Spans[i], (row & 1) == 0 ? odd : even, lattice) is { } span)
                        sewn.Add(span);
        }
        return sewn;
    }

    /// <summary>
    /// A span without ends that reach much further than the rows beside it; nothing where those do not reach at all.
    /// </summary>
    private static Span? Shortened(Span span, RowScan beside, Lattice lattice)
    {
        var (first, end) = beside.On(span.Row);
        var (from, to) = (double.PositiveInfinity, double.NegativeInfinity);
        for (var i = first; i < end; i++)
            if (beside.Spans[i] is var other && other.SharedWith(span) > 0)
                (from, to) = (Math.Min(from, other.From), Math.Max(to, other.To));
        if (from > to)
            return null;
        return span with
        {
            From = from - span.From > lattice.Along(span.Row, span.From, LongestTooth) ? from : span.From,
            To = span.To - to > lattice.Along(span.Row, span.To, LongestTooth) ? to : span.To,
        };
    }

    /// <summary>Which ends of a stretch are the shape's own edge.</summary>
    private static (bool From, bool To) OwnEnds(Span sewn, RowScan outline)
    {
        var whole = outline.Spans[outline.Nearest(sewn.Row, sewn.Middle)!.Value];
        return (sewn.From - whole.From <= OnEdge, whole.To - sewn.To <= OnEdge);
    }

    /// <summary>For each span of the ground the index of its first stretch, and one more at the end.</summary>
    private static int[] Assigned(List<Span> sewn, RowScan ground)
    {
        var firsts = new int[ground.Spans.Length + 1];
        var last = 0;
        foreach (var s in sewn)
        {
            // Rounding may leave a stretch of nothing outside the ground: it then goes with the one before it.
            last = Math.Max(last, ground.Nearest(s.Row, s.Middle) ?? last);
            firsts[last + 1]++;
        }
        for (var i = 1; i < firsts.Length; i++)
            firsts[i] += firsts[i - 1];
        return firsts;
    }
}
