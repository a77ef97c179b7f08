using Splitter.Geometry;
using Splitter.Recipes;

namespace Splitter.Planning;

/// <summary>
/// A point in field space: origin at the field's centre, u right and v up as machines count; micrometres.
/// </summary>
internal readonly record struct FieldPoint(int U, int V);

/// <summary>A hoop's field laid on the drawing.</summary>
/// <param name="Centre">In design space, on the 0.1 mm grid.</param>
/// <param name="Turn">Clockwise as seen on the drawing.</param>
/// <param name="Clearance">How far stitches stay away from the field's edge, micrometres.</param>
internal sealed record Field(Hoop Hoop, Point Centre, Turn Turn, int Clearance)
{
    /// <summary>The field on the drawing.</summary>
    public Box Bounds { get; } = Around(Centre, Hoop, Turn);

    /// <summary>The ground that may be sewn: the field less its clearance.</summary>
    public Box Usable { get; } = Around(Centre, Hoop, Turn).Grown(-Clearance);

    /// <summary>From the drawing to the hoop.</summary>
    public FieldPoint ToField(Point p)
    {
        var (dx, dy) = (p.X - Centre.X, p.Y - Centre.Y);
        return Turn switch
        {
            Turn.None => new(dx, -dy),
            Turn.Quarter => new(dy, dx),
            Turn.Half => new(-dx, dy),
            _ => new(-dy, -dx),
        };
    }

    /// <summary>From the hoop to the drawing.</summary>
    public Point ToDesign(FieldPoint p) =>
        Turn switch
        {
            Turn.None => new(Centre.X + p.U, Centre.Y - p.V),
            Turn.Quarter => new(Centre.X + p.V, Centre.Y + p.U),
            Turn.Half => new(Centre.X - p.U, Centre.Y + p.V),
            _ => new(Centre.X - p.V, Centre.Y - p.U),
        };

    private static Box Around(Point centre, Hoop hoop, Turn turn)
    {
        var (w, h) = turn is Turn.None or Turn.Half ? (hoop.Width, hoop.Height) : (hoop.Height, hoop.Width);
        return new(centre.X - (w / 2), centre.Y - (h / 2), centre.X + (w / 2), centre.Y + (h / 2));
    }
}
