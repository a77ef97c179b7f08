using System.Collections.Immutable;
using Splitter.Artwork;
using Splitter.Cutting;
using Splitter.Geometry;
using Splitter.Recipes;

namespace Splitter.Stitching.Fills;

/// <summary>
/// Underlay of a fill: a run along the inside of its edges holds the cloth to the stabilizer before rows pull at it,
/// and open rows across the visible ones keep these from sinking in. Only in the hooping's own ground, without the
/// overlap, and not where the ground is narrow. Travel between them is hidden by the rows that follow.
/// </summary>
internal sealed class Underlay
{
    /// <summary>
    /// How far underlay stays inside the edge, µm: it must not show beside it. Common practice, no source.
    /// </summary>
    private const int Inset = 600;

    /// <summary>
    /// How far cross rows stay inside the edge where a run along it holds the cloth, µm: they turn inside of that run,
    /// and not on it.
    /// </summary>
    private const int CrossInset = 1600;

    /// <summary>Distance of cross rows, µm. Common practice, no source: 2.5 to 3 mm.</summary>
    internal const int CrossSpacing = 2750;

    /// <summary>Stitch of underlay, µm. Common practice, no source: 2 to 3 mm.</summary>
    internal const int StitchLength = 2750;

    /// <summary>How far the edge run may stray from the inset edge, µm: fewer, longer stitches on curves.</summary>
    private const double Straying = 150;

    /// <summary>
    /// A shorter run around a hole holds nothing that rows and the thing in the hole do not hold, µm: some 20 mm
    /// across. Common practice, no source.
    /// </summary>
    private const double SmallHole = 60_000;

    /// <summary>Shorter runs and cross rows hold nothing, µm.</summary>
    private const double Shortest = 1500;

    private readonly FillGround ground;
    private readonly Router router;
    private readonly Lattice lattice;
    private readonly Lattice cross;
    private readonly ImmutableArray<UnderlayKind> kinds;
    private readonly ILookup<int, Ring> rings;
    private readonly FillGround crossRows;
    private readonly ILookup<int, int> crossSections;

    internal Underlay(FillPiece piece, FillGround ground, Lattice lattice, Router router)
    {
        (this.ground, this.router, this.lattice) = (ground, router, lattice);
        var style = piece.Shape.Style;
        kinds = style.Underlay;
        cross = CrossRows((FillShape)piece.Shape);
        rings = Edges(piece).ToLookup(r => PolygonAt(r.Points[0]));
        crossRows = new(RowScan.Of(CrossGround(piece), cross), throughBranches: false);
        crossSections = Enumerable
            .Range(0, crossRows.Sections)
            .ToLookup(s => PolygonAt(End(crossRows.Scan.Spans[crossRows.SpansOf(s)[0]], 0.5)));
    }

    /// <summary>What the run along the edges follows.</summary>
    internal static IEnumerable<Ring> Edges(FillPiece piece)
    {
        if (!piece.Shape.Style.Underlay.Contains(UnderlayKind.Edge))
            return [];
        return Polygons
            .Simplify(Polygons.Offset(piece.Bare, -Inset), Straying)
            .Polygons.SelectMany(p =>
                new[] { (Ring: p.Outer, Least: Shortest) }.Concat(p.Holes.Select(h => (Ring: h, Least: SmallHole)))
            )
            .Where(r => r.Ring.ToPolyline().Length >= r.Least)
            .Select(r => r.Ring);
    }

    /// <summary>Where open rows lie.</summary>
    internal static Region CrossGround(FillPiece piece)
    {
        var asked = piece.Shape.Style.Underlay;
        return !asked.Contains(UnderlayKind.Cross)
            ? Region.Empty
            : Polygons.Offset(piece.Bare, -(asked.Contains(UnderlayKind.Edge) ? CrossInset : Inset));
    }

    /// <summary>Open rows across the visible ones.</summary>
    internal static Lattice CrossRows(FillShape shape) =>
        new(shape.Style.Rows.Across, CrossSpacing, StitchLength, shape.Footprint);

    /// <summary>Sews the underlay of one polygon and says where the needle is; null when there is none.</summary>
    internal Stand? Sew(Needle needle, int polygon)
    {
        foreach (var kind in kinds)
            if (kind == UnderlayKind.Edge)
                SewEdges(needle, polygon);
            else if (kind == UnderlayKind.Cross)
                SewCross(needle, polygon);
        return needle.IsIdle ? null : StandAt(needle.At, polygon);
    }

    /// <summary>Ring after ring, the nearest next, each from where it is nearest.</summary>
    private void SewEdges(Needle needle, int polygon)
    {
        ImmutableArray<Ring> all = [.. rings[polygon]];
        var left = new Pool(all.Select(r => r.Points.AsEnumerable()));
        while (left.Left > 0)
        {
            var (ring, at) = left.Take(needle.IsIdle ? null : needle.At);
            var points = all[ring].Points;
            Go(needle, points[at], polygon, StitchUse.Travel);
            for (var i = 1; i <= points.Length; i++)
                needle.Straight(points[(at + i) % points.Length].OnTape(), StitchUse.Underlay, StitchLength);
        }
    }

    /// <summary>Section after section, the nearest next.</summary>
    private void SewCross(Needle needle, int polygon)
    {
        ImmutableArray<int> all = [.. crossSections[polygon]];
        var left = new Pool(all.Select(Corners));
        while (left.Left > 0)
        {
            var (section, corner) = left.Take(needle.IsIdle ? null : needle.At);
            SewCross(needle, polygon, all[section], up: corner < 2, right: corner % 2 == 0);
        }
    }

    /// <summary>Both ends of the first and of the last row of a section.</summary>
    private Point[] Corners(int section)
    {
        var spans = crossRows.SpansOf(section);
        var (first, last) = (crossRows.Scan.Spans[spans[0]], crossRows.Scan.Spans[spans[^1]]);
        return [End(first, 0), End(first, 1), End(last, 0), End(last, 1)];
    }

    private void SewCross(Needle needle, int polygon, int section, bool up, bool right)
    {
        var spans = crossRows.SpansOf(section);
        var use = StitchUse.Travel;
        for (var i = 0; i < spans.Length; i++)
        {
            var span = crossRows.Scan.Spans[spans[up ? i : spans.Length - 1 - i]];
            if (span.Length < Shortest)
                continue;
            Go(needle, End(span, right ? 0 : 1), polygon, use);
            var along = cross.Penetrations(span.Row, span.From + StitchLength / 4.0, span.To - StitchLength / 4.0);
            foreach (var u in right ? along : along.Reverse())
                needle.To(cross.PointAt(span.Row, u), StitchUse.Underlay);
            needle.To(End(span, right ? 1 : 0), StitchUse.Underlay, corner: true);
            (right, use) = (!right, StitchUse.Underlay);
        }
    }

    /// <summary>Goes inside the ground to a point of the polygon.</summary>
    private void Go(Needle needle, Point to, int polygon, StitchUse use)
    {
        to = to.OnTape();
        if (needle.IsIdle)
        {
            needle.To(to, StitchUse.Underlay, corner: true);
            return;
        }
        var (start, end) = (StandAt(needle.At, polygon), StandAt(to, polygon));
        var goal = ground.SectionOf[end.Span];
        if (start.Span != end.Span && router.Nearest(start, _ => true, s => s == goal) is not null)
            needle.Along(
                Trail.Over(ground, router.Walk(start, end.Span), start.U, end.U),
                use,
                StitchLength,
                ground.Scan.Outline
            );
        needle.Straight(to, use, StitchLength, corner: true);
    }

    private Point End(Span span, double share) => cross.PointAt(span.Row, span.From + (share * span.Length));

    private int PolygonAt(Point point) =>
        StandAt(point, null) is { Span: var span } && span < ground.Scan.Spans.Length ? ground.Scan.Spans[span].Of : -1;

    /// <summary>The span nearest to a point, and the place along it.</summary>
    private Stand StandAt(Point point, int? polygon)
    {
        var place = lattice.PlaceOf(point);
        var (best, nearest) = (ground.Scan.Spans.Length, double.PositiveInfinity);
        for (var row = (int)Math.Floor(place.T) - 1; row <= (int)Math.Floor(place.T) + 2; row++)
            if (
                ground.Scan.Nearest(row, place.U) is { } span
                && ground.Scan.Spans[span] is var s
                && s.Of == (polygon ?? s.Of)
                && s.Away(place.U) + (Math.Abs(row - place.T) * lattice.Spacing) is var distance
                && distance < nearest
            )
                (best, nearest) = (span, distance);
        return new(
            best,
            best < ground.Scan.Spans.Length
                ? Math.Clamp(place.U, ground.Scan.Spans[best].From, ground.Scan.Spans[best].To)
                : 0
        );
    }
}
