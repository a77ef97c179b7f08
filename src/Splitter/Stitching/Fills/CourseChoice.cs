using System.Collections.Immutable;
using Splitter.Geometry;

namespace Splitter.Stitching.Fills;

/// <summary>Rows of a section that are sewn one after the other.</summary>
/// <param name="From">The first of them, an index of the section's spans.</param>
/// <param name="To">The last.</param>
/// <param name="Right">The first is sewn to the right.</param>
internal readonly record struct Course(int From, int To, bool Right);

/// <summary>From which end the rows of a section are sewn, and whether in one go or two.</summary>
internal sealed class CourseChoice(FillGround ground, SewnRows rows, Lattice lattice, Router router, SectionOrder order)
{
    /// <summary>How much worse a way over sewn ground is than one under stitches to come: it shows.</summary>
    private const double Shows = 3;

    /// <summary>The way out of a section that has been sewn, µm.</summary>
    /// <param name="Along">The last row, which then hides it.</param>
    /// <param name="Over">Rows before it, on top of them.</param>
    private readonly record struct Exit(double Along, double Over)
    {
        internal double Cost => Along + (Shows * Over);
    }

    /// <summary>A shorter way over sewn ground, µm, is no reason to sew a section in two: two to three rows.</summary>
    private const double LeastToDivide = Units.Millimetre;

    /// <summary>
    /// Of the four corners to begin at the one that makes the ways to it and on from the other end short. Where the way
    /// on leaves the section between its ends, it may be better to sew up to there from one end, go on to the other one
    /// under rows to come, and come back: then no way lies over rows.
    /// </summary>
    internal ImmutableArray<Course> Of(int section, Stand? from)
    {
        var spans = ground.SpansOf(section);
        var (first, last) = (Next(spans, 0, 1)!.Value, Next(spans, spans.Length - 1, -1)!.Value);
        var best = (Cost: double.PositiveInfinity, Courses: ImmutableArray<Course>.Empty);
        foreach (var up in (ReadOnlySpan<bool>)[true, false])
        foreach (var right in (ReadOnlySpan<bool>)[true, false])
        {
            var course = new Course(up ? first : last, up ? last : first, right);
            var exit = ExitOf(section, End(spans, course));
            var entry = Entry(section, from, Begin(spans, course));
            if (entry + exit.Cost is var cost && cost < best.Cost)
                best = (cost, [course]);
        }
        if (ExitOf(section, End(spans, best.Courses[0])).Over < LeastToDivide)
            return best.Courses;
        foreach (var link in ground.LinksOf(section))
            if (
                order.IsOpen(link)
                && Next(spans, ground.IndexIn[link.FromSpan], -1) is { } below
                && Next(spans, ground.IndexIn[link.FromSpan] + 1, 1) is { } above
            )
                foreach (var up in (ReadOnlySpan<bool>)[true, false])
                foreach (var right in (ReadOnlySpan<bool>)[true, false])
                foreach (var back in (ReadOnlySpan<bool>)[true, false])
                {
                    var one = up ? new Course(first, below, right) : new Course(last, above, right);
                    var two = up ? new Course(last, above, back) : new Course(first, below, back);
                    var cost =
                        Entry(section, from, Begin(spans, one))
                        + Length(End(spans, one), Begin(spans, two))
                        + WayOut(link, End(spans, two)).Cost;
                    if (cost < best.Cost)
                        best = (cost, [one, two]);
                }
        return best.Courses;
    }

    /// <summary>The first row that is sewn at an index of the spans or beyond it; null for none.</summary>
    internal int? Next(ReadOnlySpan<int> spans, int index, int step)
    {
        for (var i = index; i >= 0 && i < spans.Length; i += step)
            if (!rows.On(spans[i]).IsEmpty)
                return i;
        return null;
    }

    internal Stand Begin(ReadOnlySpan<int> spans, Course course) => Corner(spans[course.From], left: course.Right);

    private Stand End(ReadOnlySpan<int> spans, Course course)
    {
        var turns = 0;
        for (var i = Math.Min(course.From, course.To); i <= Math.Max(course.From, course.To); i++)
            turns += rows.On(spans[i]).IsEmpty ? 0 : 1;
        return Corner(spans[course.To], left: course.Right != (turns % 2 == 1));
    }

    /// <summary>
    /// The left or right end of what is sewn on a span; inside the ground, pull compensation left aside.
    /// </summary>
    internal Stand Corner(int span, bool left)
    {
        var s = ground.Scan.Spans[span];
        var sewn = rows.On(span);
        return new(span, Math.Clamp(left ? sewn[0].From : sewn[^1].To, s.From, s.To));
    }

    private double Entry(int section, Stand? coming, Stand start)
    {
        if (coming is not { } from)
            return 0;
        if (ground.SectionOf[from.Span] == section || router.Via(section) is not { } via)
            return Length(from, start);
        var to = ground.Scan.Spans[via.ToSpan];
        return Length(new(via.ToSpan, Math.Clamp(from.U, to.From, to.To)), start);
    }

    /// <summary>
    /// From where a section ends to the next link out of it; nothing when there is nowhere left to go.
    /// </summary>
    private Exit ExitOf(int section, Stand end)
    {
        var best = (Exit?)null;
        foreach (var link in ground.LinksOf(section))
            if (order.IsOpen(link) && WayOut(link, end) is var way && (best is not { } least || way.Cost < least.Cost))
                best = way;
        return best ?? default;
    }

    private Exit WayOut(Link link, Stand end)
    {
        var (from, to) = (ground.Scan.Spans[link.FromSpan], ground.Scan.Spans[link.ToSpan]);
        var leaves = new Stand(link.FromSpan, Math.Clamp(Math.Clamp(end.U, to.From, to.To), from.From, from.To));
        var last = ground.Scan.Spans[end.Span];
        var beside = end with { U = Math.Clamp(leaves.U, last.From, last.To) };
        return new(Math.Abs(beside.U - end.U), Length(beside, leaves));
    }

    private double Length(Stand a, Stand b) =>
        lattice.Distance(new(ground.Scan.Spans[a.Span].Row, a.U), new(ground.Scan.Spans[b.Span].Row, b.U));
}
