using Splitter.Geometry;

namespace Splitter.Artwork.Columns;

/// <summary>
/// Rungs square to a heading, one after the other from a first one on, as far as the ground goes on from it.
/// </summary>
internal sealed class March
{
    /// <summary>Rungs are this share of the first one's width apart, but not outside the two bounds, µm.</summary>
    private const double StepShare = 0.08;

    private const double LeastStep = 50;
    private const double LargestStep = 250;

    /// <summary>
    /// A rung this share longer than the column still reaches out to the outline: no sliver is left beside it.
    /// </summary>
    private const double Stretch = 0.12;

    /// <summary>Halvings of the last step, down to a micrometre.</summary>
    private const int Halvings = 8;

    private readonly CrossLines lines;
    private readonly Point from;
    private readonly Vector heading;
    private readonly Vector across;
    private readonly (double Low, double High) limit;
    private (double Low, double High) before;
    private double gone;

    /// <param name="keepsWidth">No rung is longer than the first, measured square to the heading.</param>
    internal March(CrossLines lines, Rung first, Vector heading, bool keepsWidth)
    {
        (this.lines, this.heading) = (lines, heading);
        (from, across) = (first.Middle, heading.Left);
        var (left, right) = (Vector.Between(from, first.Left), Vector.Between(from, first.Right));
        before = (Vector.Dot(right, across), Vector.Dot(left, across));
        limit = keepsWidth ? before : (double.NegativeInfinity, double.PositiveInfinity);
        gone = Math.Max(0, Math.Max(Vector.Dot(left, heading), Vector.Dot(right, heading)));
        Step = Math.Clamp(StepShare * first.Width, LeastStep, LargestStep);
    }

    /// <summary>Distance of rungs, µm.</summary>
    internal double Step { get; }

    internal IEnumerable<Rung> Rungs(double furthest)
    {
        while (gone + Step <= furthest)
        {
            if (Span(gone + Step) is not { } span)
            {
                // The end lies within this step.
                double near = gone,
                    far = gone + Step;
                for (var i = 0; i < Halvings; i++)
                    (near, far) = Span((near + far) / 2) is null ? (near, (near + far) / 2) : ((near + far) / 2, far);
                if (near > gone && Span(near) is { } end)
                    yield return At(near, end);
                yield break;
            }
            gone += Step;
            before = span;
            yield return At(gone, span);
        }
    }

    private Rung At(double far, (double Low, double High) span) =>
        new(((heading * far) + (across * span.High)).From(from), ((heading * far) + (across * span.Low)).From(from));

    private (double Low, double High)? Span(double far)
    {
        var found = lines.Spans((heading * far).From(from), across).DefaultIfEmpty().MaxBy(s => Common(s, before));
        if (Common(found, before) <= 0)
            return null;
        var low = found.Low < limit.Low * (1 + Stretch) ? limit.Low : found.Low;
        var high = found.High > limit.High * (1 + Stretch) ? limit.High : found.High;
        // A rung that has come down to one point is none: a tip's last one stands right before it.
        return high > low && At(far, (low, high)) is var rung && rung.Left != rung.Right ? (low, high) : null;
    }

    private static double Common((double Low, double High) a, (double Low, double High) b) =>
        Math.Min(a.High, b.High) - Math.Max(a.Low, b.Low);
}
