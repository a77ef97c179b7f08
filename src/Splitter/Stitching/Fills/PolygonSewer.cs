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
    /// A row that is left further than this from its penetrations gets one more there, µm: else its rest, and the way
    /// back to where it should have been left, would be sewn twice for nothing.
    /// </summary>
    private const double FarFromHole = TravelStitch / 2;

    /// <summary>
    /// A penetration nearer to a row end than this, µm, is left out and the last stitch is that much longer: the
    /// shortest stitch, and what going to the tape's grid may take off it.
    /// </summary>
    internal const double RowEnd = StitchRules.Shortest + StitchRules.GridSlack;

    /// <summary>
    /// Tape steps by which a penetration may move along its row to lie on it, and a row's end inwards: no furrow comes
    /// of the one, and the other is a quarter of a thread's width at most.
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
        var all = courses.Of(section, from);
        foreach (var course in all)
        {
            var begin = courses.Begin(spans, course);
            if (at is { } travelling)
                needle.Along(
                    Trail.Over(ground, router.Walk(travelling, begin.Span), travelling.U, begin.U),
                    StitchUse.Travel,
                    TravelStitch,
                    ground.Scan.Outline
                );
            at = Sew(spans, course, at is null ? StitchUse.Fill : StitchUse.Travel, isLast: course == all[^1]);
        }
        return at!.Value;
    }

    /// <summary>Sews the rows of a course and says where it ends.</summary>
    /// <param name="arriving">What the stitch to its first row is for.</param>
    /// <param name="isLast">The section is done after it.</param>
    private Stand Sew(ReadOnlySpan<int> spans, Course course, StitchUse arriving, bool isLast)
    {
        var (forward, use) = (course.Right, arriving);
        Stand? before = null;
        var step = Math.Sign(course.To - course.From);
        for (var n = course.From; ; n += step)
        {
            var span = spans[n];
            var stretches = rows.On(span);
            if (!stretches.IsEmpty)
            {
                if (before is { } previous)
                    Turn(previous, courses.Corner(span, forward), upper: !forward);
                var end = courses.Corner(span, left: !forward);
                var leaves =
                    n != course.To ? NextRow(spans, n, step, forward)
                    : isLast ? order.WayOut(end)
                    : null;
                before = end;
                for (var j = 1; j <= stretches.Length; j++)
                    if (
                        Sew(
                            stretches[forward ? j - 1 : stretches.Length - j],
                            forward,
                            j == 1 ? use : StitchUse.Travel,
                            j == stretches.Length ? leaves : null
                        ) is
                        { } left
                    )
                        before = new(span, left);
                (forward, use) = (!forward, StitchUse.Fill);
            }
            if (n == course.To)
                return before!.Value;
        }
    }

    /// <summary>Where the next row begins, if the ground divides or joins on the way.</summary>
    private double? NextRow(ReadOnlySpan<int> spans, int at, int step, bool forward) =>
        courses.Next(spans, at + step, step) is { } next && IsDivided(spans[at], spans[next])
            ? courses.Corner(spans[next], left: !forward).U
            : null;

    private bool IsDivided(int span, int next) =>
        (ground.Branches[span] || ground.Branches[next]) && ground.Scan.Spans[span].IsBeside(ground.Scan.Spans[next]);

    /// <summary>
    /// Row ends are mostly joined by one stitch. Where the outline bends between them the needle follows it; where the
    /// ground divides or joins, the next row may begin far along: the needle goes there along the row, and not
    /// straight, over what divides them.
    /// </summary>
    private void Turn(Stand from, Stand to, bool upper)
    {
        if (ground.Scan.Bends.TryGetValue((from.Span, to.Span, upper), out var bend))
            needle.Along(bend, StitchUse.Fill, TravelStitch, outline: null);
        else if (Math.Abs(from.U - to.U) > lattice.Spacing && IsDivided(from.Span, to.Span))
            needle.Along(
                Trail.Over(ground, [from.Span, to.Span], from.U, to.U),
                StitchUse.Travel,
                TravelStitch,
                ground.Scan.Outline
            );
    }

    /// <summary>
    /// Sews a row. One that is left between its ends is sewn up to there, then its rest from the far end back: the way
    /// to that lies under it. Says where such a row is left.
    /// </summary>
    /// <param name="leaves">Where the needle goes on from the row; null for its end.</param>
    private double? Sew(Stretch stretch, bool forward, StitchUse arriving, double? leaves = null)
    {
        if (stretch.To - stretch.From < lattice.Along(stretch.Row, stretch.From, StitchRules.Shortest))
        {
            // Narrower than a stitch: one penetration in the middle, so that a tip is sewn as a run.
            Arrive(lattice.PointAt(stretch.Row, (stretch.From + stretch.To) / 2), arriving);
            return null;
        }
        var (from, to) = (
            lattice.OnRow(stretch.Row, stretch.From, back: 0, EndSteps),
            lattice.OnRow(stretch.Row, stretch.To, EndSteps, ahead: 0)
        );
        var (start, end, endsAt) = forward ? (from, to, stretch.To) : (to, from, stretch.From);
        var ascending = lattice.Penetrations(
            stretch.Row,
            stretch.From + lattice.Along(stretch.Row, stretch.From, RowEnd),
            stretch.To - lattice.Along(stretch.Row, stretch.To, RowEnd)
        );
        double[] along = [.. forward ? ascending : ascending.Reverse()];
        var isAdded = leaves is { } place && IsFarFromHoles(stretch, along, place);
        if (isAdded)
            along = [.. forward ? along.Append(leaves!.Value).Order() : along.Append(leaves!.Value).OrderDescending()];
        var turn = leaves is { } u && along.Length > 0 ? Array.IndexOf(along, along.MinBy(a => Math.Abs(a - u))) : -1;
        if (turn >= 0 && !isAdded && Math.Abs(along[turn] - endsAt) < TravelStitch)
            turn = -1;
        Arrive(start, arriving);
        Holes(turn < 0 ? along : along[..(turn + 1)]);
        if (turn < 0)
        {
            needle.To(end, StitchUse.Fill, corner: true);
            return null;
        }
        needle.Along(
            [new(stretch.Row, along[turn]), new(stretch.Row, endsAt)],
            StitchUse.Travel,
            TravelStitch,
            outline: null
        );
        needle.To(end, StitchUse.Travel, corner: true);
        Holes(along[turn..].Reverse());
        return along[turn];

        void Holes(IEnumerable<double> places)
        {
            foreach (var hole in places)
                needle.To(lattice.OnRow(stretch.Row, hole, RowSteps, RowSteps), StitchUse.Fill);
        }
    }

    /// <summary>And inside the row, as far from its ends as any.</summary>
    private bool IsFarFromHoles(Stretch stretch, double[] along, double place) =>
        place >= stretch.From + lattice.Along(stretch.Row, stretch.From, RowEnd)
        && place <= stretch.To - lattice.Along(stretch.Row, stretch.To, RowEnd)
        && along.All(hole => Math.Abs(hole - place) > lattice.Along(stretch.Row, place, FarFromHole));

    private void Arrive(Point at, StitchUse use)
    {
        if (needle.IsIdle)
            needle.To(at, use, corner: true);
        else
            needle.Straight(at, use, TravelStitch, corner: true);
    }
}
