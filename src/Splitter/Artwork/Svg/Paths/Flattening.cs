namespace Splitter.Artwork.Svg.Paths;

/// <summary>A subpath as straight pieces; when closed, the last point is not the first repeated.</summary>
internal sealed record FlatPath(List<Spot> Points, bool Closed);

/// <summary>Curves to straight pieces.</summary>
internal static class Flattening
{
    /// <summary>
    /// How far a straight piece may stray from its curve at finished size, µm (0.01 mm). Larger shows as facets beside
    /// a 0.4 mm thread; smaller only adds vertices below the tape's 0.1 mm step.
    /// </summary>
    internal const double Tolerance = 10;

    /// <summary>
    /// Taken off a count of pieces before it is rounded up, so that the last bit of a sine or a root, which differs
    /// between machines, does not decide it.
    /// </summary>
    private const double Slack = 1e-6;

    /// <summary>Pieces of one curve; only a curve far outside any sheet needs more.</summary>
    private const int MostPieces = 4096;

    /// <param name="matrix">From user space to where the tolerance counts.</param>
    internal static List<FlatPath> Flatten(Outline outline, Matrix matrix, double tolerance) =>
        [.. outline.Subpaths.Select(s => Flatten(s, matrix, tolerance))];

    /// <summary>They cross themselves and each other far too often.</summary>
    internal static bool IsTangled(List<FlatPath> paths) =>
        Tangle.IsTooMuch(paths.Select(path => path.Points.ConvertAll(p => (p.X, p.Y))));

    private static FlatPath Flatten(Subpath subpath, Matrix matrix, double tolerance)
    {
        var at = matrix.Apply(subpath.Start);
        var points = new List<Spot>(subpath.Strokes.Count + 1) { at };
        foreach (var stroke in subpath.Strokes)
        {
            var end = matrix.Apply(stroke.End);
            if (stroke is CubicTo cubic)
                AddCubic(points, at, matrix.Apply(cubic.Control1), matrix.Apply(cubic.Control2), end, tolerance);
            else if (stroke is ArcTo arc)
                AddArc(points, matrix.Apply(arc.Centre), matrix.Turn(arc.U), matrix.Turn(arc.V), arc, tolerance);
            points.Add(end);
            at = end;
        }
        if (subpath.Closed && points.Count > 1 && points[^1] == points[0])
            points.RemoveAt(points.Count - 1);
        return new(points, subpath.Closed);
    }

    /// <summary>
    /// Equal steps of the parameter: a piece strays by at most an eighth of the second derivative times the step
    /// squared, and a cubic's second derivative is at most six times its larger second difference.
    /// </summary>
    private static void AddCubic(List<Spot> points, Spot p0, Spot p1, Spot p2, Spot p3, double tolerance)
    {
        var bend = Math.Max((p0 - (2 * p1) + p2).Length, (p1 - (2 * p2) + p3).Length);
        var pieces = Pieces(Math.Sqrt(0.75 * bend / tolerance));
        for (var i = 1; i < pieces; i++)
        {
            var t = (double)i / pieces;
            var (a, b, c) = (p0.Towards(p1, t), p1.Towards(p2, t), p2.Towards(p3, t));
            points.Add(a.Towards(b, t).Towards(b.Towards(c, t), t));
        }
    }

    /// <summary>Equal steps of the angle; a step strays by radius · step² / 8 at most.</summary>
    private static void AddArc(List<Spot> points, Spot centre, Spot u, Spot v, ArcTo arc, double tolerance)
    {
        var radius = new Matrix(u.X, u.Y, v.X, v.Y, 0, 0).Stretch.Most;
        var pieces = Pieces(Math.Abs(arc.Sweep) * Math.Sqrt(radius / (8 * tolerance)));
        for (var i = 1; i < pieces; i++)
        {
            var (sin, cos) = Math.SinCos(arc.From + (arc.Sweep * i / pieces));
            points.Add(centre + (cos * u) + (sin * v));
        }
    }

    private static int Pieces(double least) =>
        double.IsFinite(least) ? Math.Clamp((int)Math.Ceiling(Math.Min(least, MostPieces) - Slack), 1, MostPieces) : 1;
}
