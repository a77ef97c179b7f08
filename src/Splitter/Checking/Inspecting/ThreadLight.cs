using Splitter.Geometry;
using Splitter.Outputs.Pictures;

namespace Splitter.Checking.Inspecting;

/// <summary>
/// How thread shines: light falls from the upper left, and a thread that lies across it throws more of it back than one
/// that lies along it, as a thin cylinder does (Kajiya and Kay 1989, SIGGRAPH 89, cited from memory). So rows of another
/// direction have another brightness.
/// </summary>
internal readonly record struct ThreadLight(double Brightness)
{
    /// <summary>How much of the light lies in the plane of the cloth, and where it comes from there: 3-4-5 triangles.</summary>
    private const double Slant = 0.8;

    private const double FromX = -0.6;
    private const double FromY = -0.8;

    /// <summary>Steps of brightness that are told apart.</summary>
    private const int Steps = 16;

    /// <summary>Of a stitch: 1 across the light, less along it.</summary>
    internal static ThreadLight Of(Point from, Point to)
    {
        var length = from.DistanceTo(to);
        if (length == 0)
            return new(1);
        var along = Slant * ((((double)to.X - from.X) * FromX) + (((double)to.Y - from.Y) * FromY)) / length;
        return new(Math.Round(Math.Sqrt(1 - (along * along)) * Steps) / Steps);
    }

    /// <summary>Towards the light at right angles to a stitch, µm.</summary>
    internal static Point Towards(Point from, Point to, double by)
    {
        var length = from.DistanceTo(to);
        var (x, y) = ((to.Y - (double)from.Y) / length, ((double)from.X - to.X) / length);
        var side = (x * FromX) + (y * FromY);
        // The ridge moves to the lit side of the thread, not at all where the light comes along it.
        return new(Units.Round(x * side * by), Units.Round(y * side * by));
    }

    /// <summary>The side that the light does not reach, and the gap to the neighbour.</summary>
    internal Colour Shade(Colour thread) => Body(thread).Mixed(Black, 38);

    internal Colour Body(Colour thread) => thread.Mixed(Black, (int)((1 - Brightness) * 50));

    /// <summary>The ridge that throws light back.</summary>
    internal Colour Ridge(Colour thread) => Body(thread).Mixed(Colour.White, (int)(6 + (Brightness * Brightness * 30)));

    private static Colour Black => new(0, 0, 0);
}
