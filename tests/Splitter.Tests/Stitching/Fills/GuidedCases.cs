using CsCheck;
using Splitter.Cutting;
using Splitter.Geometry;

namespace Splitter.Tests.Stitching.Fills;

/// <summary>Ground with curved lines that rows follow.</summary>
internal static class GuidedCases
{
    /// <summary>Of stretches along a guide those inside a bend are at least this long.</summary>
    private const double Closest = 0.5;

    /// <summary>
    /// The ground of <see cref="FillCases.Drawn"/>, 10 to 50 mm across, with a guide near its middle that bends to and fro:
    /// legs of a quarter of the ground turn by up to 12 degrees each.
    /// </summary>
    internal static readonly Gen<(Region Ground, Polyline Line)> Drawn =
        from c in FillCases.Drawn
        from heading in Gen.Double[0, 2 * Math.PI]
        from turns in Gen.Double[-0.2, 0.2].Array[8]
        from at in Gen.Select(Gen.Double[-0.2, 0.2], Gen.Double[-0.2, 0.2])
        let line = Line(c.Ground.Bounds.Width, heading, turns, at)
        where Fits(line, c.Ground)
        select (c.Ground, line);

    internal static Guide Guide(Polyline line) => new(new RoundedLine(line));

    internal static FillPiece Whole(Region ground, Polyline line, bool underlay = false, int pull = FillCases.Pull)
    {
        var piece = FillCases.Whole(ground, 0, underlay, pull);
        return piece with { Shape = piece.Shape with { Style = piece.Shape.Style with { Guide = Guide(line) } } };
    }

    private static Polyline Line(double size, double heading, double[] turns, (double X, double Y) at)
    {
        var (points, from) = (new List<Vector>(), new Vector(0, 0));
        foreach (var turn in turns)
        {
            points.Add(from);
            heading += turn;
            from += new Vector(Math.Cos(heading), Math.Sin(heading)) * (size / 4);
        }
        var away = points[points.Count / 2] - new Vector(at.X * size, at.Y * size);
        return new([.. points.Select(p => (p - away).From(default))]);
    }

    /// <summary>Rows neither crowd nor meet from two sides of a bend.</summary>
    private static bool Fits(Polyline line, Region ground)
    {
        var guide = Guide(line);
        return ground
            .Rings.Select(r => guide.Of(r).ToList())
            .All(places =>
                places.All(p => guide.Stretch(p.U, p.V) >= Closest)
                && places.Zip(places.Skip(1)).All(p => Math.Abs(p.First.U - p.Second.U) < 5000)
            );
    }
}
