using System.Collections.Immutable;
using Splitter.Artwork;
using Splitter.Geometry;

namespace Splitter.Planning.Seams;

/// <summary>
/// What a seam shows, in millimetres of plain fill: one price for straight seams and for others. Common practice, no
/// source: a misfit is noticed at 0.5 mm in line work and at 1 mm between fills; none is where two colours part anyway,
/// and none under what is sewn over it later.
/// </summary>
internal sealed class SeamPrice
{
    /// <summary>
    /// A cut through a satin column or a line shows as a break of the whole stroke, however narrow: square across it
    /// counts as this much of a cut through plain fill, mm.
    /// </summary>
    internal const double LineCrossing = 10;

    /// <summary>A seam along the edge of a fill, where colours part, as a share of one through its middle.</summary>
    internal const double AlongEdge = 0.2;

    /// <summary>
    /// A seam inside a satin column, as a multiple of one through a fill: square across it comes on top of the
    /// crossing, and lengthwise it cuts every single stitch of it.
    /// </summary>
    internal const double InColumn = 3;

    /// <summary>
    /// What a square millimetre costs where a shape is sewn before what lies under it: along an edge with its usual
    /// trap of 0.8 mm a little more than a seam through the middle of a fill.
    /// </summary>
    internal const double Turned = 2;

    /// <summary>
    /// What a seam costs where nothing shows, as a share of one through a fill: enough to keep it short and plain. It
    /// guides seams and is not part of what they show.
    /// </summary>
    internal const double Length = 0.05;

    /// <summary>
    /// A line crossed at an angle with a smaller sine (15 degrees) costs no more: such a seam runs along the line.
    /// </summary>
    private const double LeastSine = 0.25;

    /// <summary>Distance between places that are looked at, µm: as fine as the map.</summary>
    private const double Step = 250;

    /// <summary>
    /// A seam as near as this to the edge of a fill, on either side, runs along it, µm: about one row of the fill.
    /// </summary>
    internal const double EdgeDistance = 350;

    private readonly Drawing drawing;
    private readonly Wholeness wholeness;
    private readonly CoverMap map;
    private readonly SegmentBins<int> lines = new();

    internal SeamPrice(Drawing drawing, Wholeness wholeness, CoverMap map)
    {
        (this.drawing, this.wholeness, this.map) = (drawing, wholeness, map);
        for (var shape = 0; shape < drawing.Shapes.Length; shape++)
            if (wholeness.IsCut(shape))
                foreach (var line in Lines.Of(drawing.Shapes[shape]))
                    for (var i = 1; i < line.Points.Length; i++)
                        lines.Add(line.Points[i - 1], line.Points[i], shape);
    }

    /// <summary>What a line shows as the seam of two fields.</summary>
    /// <param name="later">The field that is sewn later.</param>
    /// <param name="owners">For each shape that stays whole the field that sews it.</param>
    internal double Of(Polyline line, int later, ImmutableArray<int?> owners)
    {
        var sum = 0.0;
        for (var i = 1; i < line.Points.Length; i++)
            sum += Of(line.Points[i - 1], line.Points[i], later, owners);
        return sum;
    }

    private double Of(Point from, Point to, int later, ImmutableArray<int?> owners) =>
        OfGround(from, to, later, owners, AlongEdge) + OfCrossings(from, to);

    /// <summary>What a straight line shows of the ground that it runs through.</summary>
    /// <param name="alongEdge">
    /// What running along an edge costs, as a share of running through the middle of a fill.
    /// </param>
    /// <param name="enough">From here on it need not be priced to the end: it shows this much or more.</param>
    internal double OfGround(
        Point from,
        Point to,
        int later,
        ImmutableArray<int?> owners,
        double alongEdge,
        double enough = double.PositiveInfinity
    )
    {
        var length = from.DistanceTo(to);
        if (length == 0)
            return 0;
        var along = Vector.Between(from, to).Unit;
        var aside = along.Left * EdgeDistance;
        var count = (int)Math.Ceiling(length / Step);
        var (shown, most) = (0.0, enough / length * count * Units.Millimetre);
        for (var k = 0; k < count && shown < most; k++)
        {
            var way = length * (k + 0.5) / count;
            shown += Share(from.X + (along.X * way), from.Y + (along.Y * way), aside, later, owners, alongEdge);
        }
        return shown * length / count / Units.Millimetre;
    }

    /// <summary>
    /// What a seam through the middle of a shape that is cut costs, as a share of one through a fill.
    /// </summary>
    internal static double Inside(Shape shape) => shape is SatinShape ? InColumn : 1;

    /// <summary>How much shows at one place: 1 in the middle of a fill.</summary>
    private double Share(double x, double y, Vector aside, int later, ImmutableArray<int?> owners, double alongEdge)
    {
        var shape = map.Top(x, y);
        if (shape == CoverMap.Bare)
            return 0;
        if (wholeness.IsCut(shape))
            return map.Top(x + aside.X, y + aside.Y) != shape || map.Top(x - aside.X, y - aside.Y) != shape
                ? alongEdge
                : Inside(drawing.Shapes[shape]);
        // A shape that is sewn last hides the seam below it; one that is sewn earlier is sewn over.
        return owners[shape] >= later || map.TopCut(x, y) == CoverMap.Bare ? 0 : 1;
    }

    /// <summary>What a straight line shows of the lines that it crosses.</summary>
    internal double OfCrossings(Point from, Point to)
    {
        HashSet<SegmentBins<int>.Segment>? crossed = null;
        var sum = 0.0;
        foreach (var segment in lines.Near(from, to))
        {
            var (seam, line) = (Vector.Between(from, to), Vector.Between(segment.A, segment.B));
            var cross = Vector.Cross(seam, line);
            if (cross == 0)
                continue;
            var between = Vector.Between(from, segment.A);
            var share = Vector.Cross(between, line) / cross;
            // Half open, so that a seam through a vertex of a line crosses it once.
            if (share is < 0 or >= 1 || Vector.Cross(between, seam) / cross is < 0 or >= 1)
                continue;
            var hides = map.Top(from.X + (seam.X * share), from.Y + (seam.Y * share)) > segment.Tag;
            if (hides || !(crossed ??= []).Add(segment))
                continue;
            var sine = Math.Abs(cross) / (seam.Length * line.Length);
            sum += LineCrossing / Math.Max(sine, LeastSine);
        }
        return sum;
    }
}
