namespace Splitter.Planning.Fit;

/// <summary>The smallest circle that holds a few places.</summary>
internal static class SmallestCircle
{
    /// <summary>Its diameter: three of the places decide it (Helly 1923), those that need the largest.</summary>
    /// <param name="places">x and y of each of them, at least three.</param>
    internal static double Diameter(ReadOnlySpan<double> places)
    {
        var most = 0.0;
        for (var a = 0; a < places.Length; a += 2)
        for (var b = a + 2; b < places.Length; b += 2)
        for (var c = b + 2; c < places.Length; c += 2)
            most = Math.Max(most, OfThree(Square(places, a, b), Square(places, b, c), Square(places, a, c)));
        return most;
    }

    /// <summary>
    /// From squared distances: the circle through all of them (a b c / 2 K, K the area by Heron's formula), or where
    /// one angle is not acute the one on the longest side.
    /// </summary>
    private static double OfThree(double aa, double bb, double cc)
    {
        var longest = Math.Max(aa, Math.Max(bb, cc));
        if (2 * longest >= aa + bb + cc)
            return Math.Sqrt(longest);
        var area = (2 * ((aa * bb) + (bb * cc) + (cc * aa))) - (aa * aa) - (bb * bb) - (cc * cc);
        return 2 * Math.Sqrt(aa * bb / area * cc);
    }

    private static double Square(ReadOnlySpan<double> places, int a, int b)
    {
        var (x, y) = (places[a] - places[b], places[a + 1] - places[b + 1]);
        return (x * x) + (y * y);
    }
}
