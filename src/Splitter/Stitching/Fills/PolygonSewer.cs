using System.Collections.Immutable;
using Splitter.Geometry;

namespace Splitter.Stitching.Fills;

/// <summary>Sews one polygon of a piece as one block: underlay, then its sections.</summary>
internal sealed class PolygonSewer(FillGround ground, SewnRows rows, Lattice lattice, Router router, SectionOrder order)
{
    private readonly CourseChoice courses = new(ground, rows, lattice, router, order);

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
        var at = from;
        foreach (var course in courses.Of(section, from))
        {
            var begin = courses.Begin(spans, course);
            if (at is { } travelling)
                needle.Along(
                    Trail.Over(ground, router.Walk(travelling, begin.Span), travelling.U, begin.U),
                    StitchUse.Travel,
                    TravelStitch,
                    ground.Scan.Outline
                );
            at = Sew(spans, course, at is null ? StitchUse.Fill : StitchUse.Travel);
        }
        return at!.Value;
    }

    /// <summary>Sews the rows of a course and says where it ends.</summary>
    /// <param name="arriving">What the stitch to its first row is for.</param>
    private Stand Sew(ReadOnlySpan<int> spans, Course course, StitchUse arriving)
    {
        var (forward, use) = (course.Right, arriving);
        Stand? before = null;
        var step = Math.Sign(course.To - course.From);
        for (var n = course.From; ; n += step)
        {
            var span = spans[n];
            var stretches = rows.On(span);
            if (!stretches.IsEmpty && before is { } previous)
                Turn(previous, courses.Corner(span, forward), upper: !forward);
            for (var j = 0; j < stretches.Length; j++)
                Sew(stretches[forward ? j : stretches.Length - 1 - j], forward, j == 0 ? use : StitchUse.Travel);
            if (!stretches.IsEmpty)
                (forward, use, before) = (!forward, StitchUse.Fill, courses.Corner(span, !forward));
            if (n == course.To)
                return courses.Corner(span, left: forward);
        }
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
}
