namespace Splitter.Artwork.Svg;

/// <summary>The value of <c>transform</c>, as an attribute or as a CSS property with units.</summary>
internal static class TransformReader
{
    /// <returns>Null when it is no list of transforms.</returns>
    internal static Matrix? Read(string text)
    {
        var scanner = new Scanner(text);
        var matrix = Matrix.Identity;
        scanner.SkipSpace();
        if (text.Trim() == "none")
            return matrix;
        while (!scanner.AtEnd)
        {
            var name = scanner.Word();
            scanner.SkipSpace();
            if (!scanner.TryTake('(') || Arguments(scanner) is not { } arguments || One(name, arguments) is not { } one)
                return null;
            matrix *= one;
            scanner.SkipSeparator();
        }
        return matrix.IsFinite ? matrix : null;
    }

    private static List<double>? Arguments(Scanner scanner)
    {
        var arguments = new List<double>();
        scanner.SkipSpace();
        while (!scanner.TryTake(')'))
        {
            if (!scanner.TryNumber(out var number) || Unit(scanner.Word()) is not { } unit)
                return null;
            arguments.Add(number * unit);
            scanner.SkipSeparator();
        }
        return arguments;
    }

    /// <summary>Pixels and degrees per unit of a CSS argument.</summary>
    private static double? Unit(string word) =>
        word switch
        {
            "" or "px" or "deg" => 1,
            "mm" or "cm" or "in" or "pt" or "pc" => Lengths.Read("1" + word, double.NaN),
            "rad" => 180 / Math.PI,
            "grad" => 0.9,
            "turn" => 360,
            _ => null,
        };

    private static Matrix? One(string name, List<double> n) =>
        (name, n) switch
        {
            ("matrix", [var a, var b, var c, var d, var e, var f]) => new(a, b, c, d, e, f),
            ("translate", [var x]) => Matrix.Shift(x, 0),
            ("translate", [var x, var y]) => Matrix.Shift(x, y),
            ("translateX", [var x]) => Matrix.Shift(x, 0),
            ("translateY", [var y]) => Matrix.Shift(0, y),
            ("scale", [var both]) => Matrix.Scale(both, both),
            ("scale", [var x, var y]) => Matrix.Scale(x, y),
            ("scaleX", [var x]) => Matrix.Scale(x, 1),
            ("scaleY", [var y]) => Matrix.Scale(1, y),
            ("rotate", [var angle]) => Matrix.Rotate(angle),
            ("rotate", [var angle, var x, var y]) => Matrix.Shift(x, y) * Matrix.Rotate(angle) * Matrix.Shift(-x, -y),
            ("skewX", [var angle]) => Matrix.Skew(angle, 0),
            ("skewY", [var angle]) => Matrix.Skew(0, angle),
            ("skew", [var x]) => Matrix.Skew(x, 0),
            ("skew", [var x, var y]) => Matrix.Skew(x, y),
            _ => null,
        };
}
