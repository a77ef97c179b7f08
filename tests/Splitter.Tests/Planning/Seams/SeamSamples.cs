using CsCheck;
using Splitter.Artwork;

namespace Splitter.Tests.Planning.Seams;

/// <summary>Random artwork for seams.</summary>
internal static class SeamSamples
{
    /// <summary>Boxes, triangles and lines of any size inside a sheet, in millimetres.</summary>
    internal static Gen<Shape> Shapes(int width, int height) =>
        from x in Gen.Double[0, width].Array[3]
        from y in Gen.Double[0, height].Array[3]
        from kind in Gen.Int[0, 3]
        from name in Gen.Int[0, 1_000_000]
        select kind switch
        {
            0 => Box(name, x, y),
            1 => Samples.Fill($"t{name}", x[0], y[0], Wide(x[1], x[0], width), y[1], x[2], Wide(y[2], y[0], height)),
            2 => Box(name, x, y) with { KeepWhole = false },
            _ => (Shape)
                Samples.Run(
                    $"r{name}",
                    Inside(x[0], width),
                    Inside(y[0], height),
                    Inside(x[1], width),
                    Inside(y[1], height)
                ),
        };

    private static FillShape Box(int name, double[] x, double[] y) =>
        Samples.Rectangle(
            $"b{name}",
            Math.Min(x[0], x[1]),
            Math.Min(y[0], y[1]),
            Math.Max(0.5, Math.Abs(x[0] - x[1])),
            Math.Max(0.5, Math.Abs(y[0] - y[1]))
        );

    private static double Inside(double value, int length) => Math.Clamp(value, 0.5, length - 0.5);

    private static double Wide(double value, double from, int length) =>
        Math.Abs(value - from) < 1 ? (from < length / 2.0 ? from + 1 : from - 1) : value;
}
