using Splitter.Geometry;

namespace Splitter.Outputs.Pictures.Strands;

/// <summary>
/// How thread shines: light falls from the upper left, and a thread that lies across it throws more of it back than
/// one that lies along it, as a thin cylinder does (Kajiya and Kay 1989, SIGGRAPH 89, cited from memory). So rows of
/// another direction have another brightness.
/// </summary>
/// <param name="Step">Of brightness, up to <see cref="Steps"/>.</param>
internal readonly record struct ThreadLight(int Step)
{
    /// <summary>
    /// How much of the light lies in the plane of the cloth, and where it comes from there: 3-4-5 triangles.
    /// </summary>
    private const double Slant = 0.8;

    internal const double FromX = -0.6,
        FromY = -0.8;

    /// <summary>Steps of brightness that are told apart.</summary>
    internal const int Steps = 16;

    private const int Alike = 1;

    /// <summary>
    /// Percent that thread along the light is darker than thread across it, were it to throw nothing back.
    /// </summary>
    private const int Falloff = 22;

    /// <summary>Percent of black at the side that the light does not reach, where the neighbour begins.</summary>
    private const int Shadow = 20;

    /// <summary>Percent of white on the ridge: along the light, and how much more across it.</summary>
    private const int Gleam = 8,
        Sheen = 30;

    /// <summary>Of a stitch: most across the light, less along it.</summary>
    internal static ThreadLight Of(Point from, Point to, double length)
    {
        if (length == 0)
            return new(Steps);
        var along = Slant * ((((double)to.X - from.X) * FromX) + (((double)to.Y - from.Y) * FromY)) / length;
        return new(Units.Round(Math.Sqrt(1 - (along * along)) * Steps));
    }

    /// <summary>Hardly told apart.</summary>
    internal bool IsLike(ThreadLight other) => Math.Abs(Step - other.Step) <= Alike;

    internal double Brightness => Step / (double)Steps;

    /// <summary>How much of the light comes from the side of the thread: 0 where all of it comes along.</summary>
    internal double FromSide =>
        Math.Sqrt(Math.Clamp(((Brightness * Brightness) - 1 + (Slant * Slant)) / (Slant * Slant), 0, 1));

    internal Colour Body(Colour thread) => thread.Mixed(Black, (int)((1 - Brightness) * Falloff));

    internal Colour Shade(Colour thread) => Body(thread).Mixed(Black, Shadow);

    /// <summary>What throws the light back.</summary>
    internal Colour Ridge(Colour thread) =>
        Body(thread).Mixed(Colour.White, (int)(Gleam + (Brightness * Brightness * Sheen)));

    private static Colour Black => new(0, 0, 0);
}
