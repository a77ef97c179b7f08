namespace Splitter.Artwork.Svg.Paths;

/// <summary>A shape's geometry in its own user space: subpaths of lines, cubic curves and arcs of ellipses.</summary>
internal sealed class Outline
{
    internal List<Subpath> Subpaths { get; } = [];

    internal Subpath Begin(Spot start)
    {
        var subpath = new Subpath(start);
        Subpaths.Add(subpath);
        return subpath;
    }
}

/// <summary>One subpath; closed when it ends with a join to its start.</summary>
internal sealed class Subpath(Spot start)
{
    internal Spot Start { get; } = start;

    internal List<Stroke> Strokes { get; } = [];

    internal bool Closed { get; private set; }

    internal Spot End => Strokes.Count > 0 ? Strokes[^1].End : Start;

    internal void Line(Spot end) => Strokes.Add(new LineTo(end));

    internal void Cubic(Spot control1, Spot control2, Spot end) => Strokes.Add(new CubicTo(control1, control2, end));

    /// <summary>A quadratic curve is a cubic one exactly, with its control points two thirds of the way.</summary>
    internal void Quadratic(Spot control, Spot end) =>
        Cubic(End.Towards(control, 2.0 / 3), end.Towards(control, 2.0 / 3), end);

    internal void Arc(ArcTo arc) => Strokes.Add(arc);

    internal void Close() => Closed = true;
}

/// <summary>One piece of a subpath, from where the piece before it ended.</summary>
internal abstract record Stroke(Spot End);

internal sealed record LineTo(Spot End) : Stroke(End);

internal sealed record CubicTo(Spot Control1, Spot Control2, Spot End) : Stroke(End);

/// <summary>
/// centre + cos t · u + sin t · v for t from a start over a sweep, radians. A transform keeps this form, so that arcs
/// need no approximation by curves.
/// </summary>
internal sealed record ArcTo(Spot Centre, Spot U, Spot V, double From, double Sweep, Spot End) : Stroke(End);
