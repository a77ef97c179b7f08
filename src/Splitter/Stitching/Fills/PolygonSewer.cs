using System.Collections.Immutable;
using Splitter.Geometry;

namespace Splitter.Stitching.Fills;

/// <summary>Sews one polygon of a piece as one block: underlay, then its sections.</summary>
internal sealed class PolygonSewer(FillGround ground, SewnRows rows, Lattice lattice, Router router, SectionOrder order)
{
    /// <inheritdoc cref="Ties.HiddenStitch"/>
    internal const double TravelStitch = Ties.HiddenStitch;

    /// <summary>
    /// A penetration nearer to a row end than this, µm, is left out and the last stitch is that much longer: the shortest
    /// stitch, and what going to the tape's grid may take off it.
    /// </summary>
    internal const double RowEnd = StitchRules.Shortest + StitchRules.GridSlack;

    /// <summary>
    /// Tape steps by which a penetration may move along its row to lie on it, and a row's end inwards: no furrow comes of
    /// the one, and the other is a quarter of a thread's width at most.
    /// </summary>
    internal const int RowSteps = 3;

    private const int EndSteps = 1;

    /// <summary>
    /// How much worse a way over sewn ground is than one under stitches to come: it shows a little, even along a row.
    /// </summary>
    private const double OverSewn = 3;

    private readonly Needle needle = new(lattice);

    /// <summary>One block's path; fewer than two places when there is nothing to sew.</summary>
    internal ImmutableArray<Stitch> Sew(ReadOnlySpan<int> sections, Underlay underlay, int polygon)
    {
        Stand? at = underlay.Sew(needle, polygon);
        for (var i = 0; i < sections.Length; i++)
        {
            var section = i == 0 ? order.Begin(sections, at) : order.Next(at!.Value);
            var isCovered = HasRows(section);
            order.Done(section, isCovered);
            // Where rows are too short to be sewn the needle stays where it is.
            if (isCovered)
                at = Sew(section, needle.IsIdle ? null : at);
            else
                at ??= order.Bottom(section);
        }
        return needle.Path;
    }

    private bool HasRows(int section)
    {
        foreach (var span in ground.SpansOf(section))
            if (!rows.On(span).IsEmpty)
                return true;
        return false;
    }

    /// <summary>Sews a section that has rows, from where the needle is, and says where it ends.</summary>
    private Stand Sew(int section, Stand? from)
    {
        var spans = ground.SpansOf(section);
        var (first, last, turns) = (-1, -1, 0);
        for (var i = 0; i < spans.Length; i++)
            if (!rows.On(spans[i]).IsEmpty)
            {
                first = first < 0 ? i : first;
                (last, turns) = (i, turns + 1);
            }

        // Of the four corners the one that makes the ways to it and on from the other end short.
        var best = (Cost: double.PositiveInfinity, Up: true, Right: true);
        foreach (var up in (ReadOnlySpan<bool>)[true, false])
        foreach (var right in (ReadOnlySpan<bool>)[true, false])
        {
            var (start, end) = (
                Corner(spans[up ? first : last], left: right),
                Corner(spans[up ? last : first], left: right != (turns % 2 == 1))
            );
            var cost = (from is { } stand ? Entry(section, stand, start) : 0) + (OverSewn * Exit(section, end));
            if (cost < best.Cost)
                best = (cost, up, right);
        }

        var begin = Corner(spans[best.Up ? first : last], left: best.Right);
        if (from is { } travelling)
            needle.Along(
                Trail.Over(ground, router.Walk(travelling, begin.Span), travelling.U, begin.U),
                StitchUse.Travel,
                TravelStitch,
                ground.Scan.Outline
            );
        var (forward, use) = (best.Right, from is null ? StitchUse.Fill : StitchUse.Travel);
        Stand? before = null;
        for (var n = first; n <= last; n++)
        {
            var span = spans[best.Up ? n : last - (n - first)];
            var stretches = rows.On(span);
            if (!stretches.IsEmpty && before is { } previous)
                Turn(previous, Corner(span, forward), upper: !forward);
            for (var j = 0; j < stretches.Length; j++)
                Sew(stretches[forward ? j : stretches.Length - 1 - j], forward, j == 0 ? use : StitchUse.Travel);
            if (!stretches.IsEmpty)
                (forward, use, before) = (!forward, StitchUse.Fill, Corner(span, !forward));
        }
        return Corner(spans[best.Up ? last : first], left: forward);
    }

    /// <summary>
    /// Row ends are mostly joined by one stitch. Where the outline bends between them the needle follows it; where the
    /// ground divides or joins, the next row may begin far along: the needle goes there along the row, and not straight,
    /// over what divides them.
    /// </summary>
    private void Turn(Stand from, Stand to, bool upper)
    {
        if (ground.Scan.Bends.TryGetValue((from.Span, to.Span, upper), out var bend))
            needle.Along(bend, StitchUse.Fill, TravelStitch, outline: null);
        else if (
            (ground.Branches[from.Span] || ground.Branches[to.Span])
            && Math.Abs(from.U - to.U) > lattice.Spacing
            && ground.Scan.Spans[from.Span].IsBeside(ground.Scan.Spans[to.Span])
        )
            needle.Along(
                Trail.Over(ground, [from.Span, to.Span], from.U, to.U),
                StitchUse.Travel,
                TravelStitch,
                ground.Scan.Outline
            );
    }

    private void Sew(Stretch stretch, bool forward, StitchUse arriving)
    {
        if (stretch.To - stretch.From < lattice.Along(stretch.Row, stretch.From, StitchRules.Shortest))
        {
            // Narrower than a stitch: one penetration in the middle, so that a tip is sewn as a run.
            Arrive(lattice.PointAt(stretch.Row, (stretch.From + stretch.To) / 2), arriving);
            return;
        }
        var from = lattice.OnRow(stretch.Row, stretch.From, back: 0, EndSteps);
        var to = lattice.OnRow(stretch.Row, stretch.To, EndSteps, ahead: 0);
        Arrive(forward ? from : to, arriving);
        var along = lattice.Penetrations(
            stretch.Row,
            stretch.From + lattice.Along(stretch.Row, stretch.From, RowEnd),
            stretch.To - lattice.Along(stretch.Row, stretch.To, RowEnd)
        );
        foreach (var u in forward ? along : along.Reverse())
            needle.To(lattice.OnRow(stretch.Row, u, RowSteps, RowSteps), StitchUse.Fill);
        needle.To(forward ? to : from, StitchUse.Fill, corner: true);
    }

    private void Arrive(Point at, StitchUse use)
    {
        if (needle.IsIdle)
            needle.To(at, use, corner: true);
        else
            needle.Straight(at, use, TravelStitch, corner: true);
    }

    /// <summary>The left or right end of what is sewn on a span; inside the ground, pull compensation left aside.</summary>
    private Stand Corner(int span, bool left)
    {
        var s = ground.Scan.Spans[span];
        var sewn = rows.On(span);
        return new(span, Math.Clamp(left ? sewn[0].From : sewn[^1].To, s.From, s.To));
    }

    private double Entry(int section, Stand from, Stand start)
    {
        if (ground.SectionOf[from.Span] == section || router.Via(section) is not { } via)
            return Length(from, start);
        var to = ground.Scan.Spans[via.ToSpan];
        return Length(new(via.ToSpan, Math.Clamp(from.U, to.From, to.To)), start);
    }

    /// <summary>From where a section ends to the next link out of it; 0 when there is nowhere left to go.</summary>
    private double Exit(int section, Stand end)
    {
        var shortest = double.PositiveInfinity;
        foreach (var link in ground.LinksOf(section))
            if (order.IsOpen(link))
            {
                var s = ground.Scan.Spans[link.FromSpan];
                var to = ground.Scan.Spans[link.ToSpan];
                var u = Math.Clamp(Math.Clamp(end.U, to.From, to.To), s.From, s.To);
                shortest = Math.Min(shortest, Length(new(link.FromSpan, u), end));
            }
        return double.IsInfinity(shortest) ? 0 : shortest;
    }

    private double Length(Stand a, Stand b) =>
        lattice.Distance(new(ground.Scan.Spans[a.Span].Row, a.U), new(ground.Scan.Spans[b.Span].Row, b.U));
}
