namespace Splitter.Outputs.Pictures.Strands;

/// <summary>A stitch on a grid of dots, each unit a dot.</summary>
/// <param name="Thread">Its number from 1: one thread casts no shadow on itself, where parts meet neither.</param>
/// <param name="Along">Unit vector, and one across to the lit side.</param>
internal readonly record struct LaidStrand(
    int Thread,
    StrandInk Ink,
    (double X, double Y) From,
    (double X, double Y) Along,
    (double X, double Y) Across,
    double Length
)
{
    internal static LaidStrand Of(int thread, StrandInk ink, (double X, double Y) from, (double X, double Y) to)
    {
        var (x, y) = (to.X - from.X, to.Y - from.Y);
        var length = Math.Sqrt((x * x) + (y * y));
        var along = length > 0 ? (X: x / length, Y: y / length) : (1, 0);
        // The light comes from the upper left.
        var lit = (-along.Y * ThreadLight.FromX) + (along.X * ThreadLight.FromY) >= 0 ? 1 : -1;
        return new(thread, ink, from, along, (-along.Y * lit, along.X * lit), length);
    }

    /// <summary>First and last row that it or its shadow may touch.</summary>
    internal (double Top, double Bottom) Rows(double margin)
    {
        var end = From.Y + (Along.Y * Length);
        return (Math.Min(From.Y, end) - margin, Math.Max(From.Y, end) + margin);
    }
}
