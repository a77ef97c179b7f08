using System.Collections.Immutable;
using System.Globalization;
using Splitter.Recipes;

namespace Splitter.Artwork.Tapes;

/// <summary>
/// Colours of threads that nobody has named yet, each as far as can be from cloth and from all before it: pictures
/// would show two look-alikes as one thing.
/// </summary>
internal static class DistinctColours
{
    /// <summary>Between dark and light, so that each can be told from black lines and from light cloth.</summary>
    private const int Darkest = 40,
        Lightest = 216,
        Step = 16;

    /// <summary>
    /// In the order in which they are tried; twelve to a channel, many more than a recipe has threads.
    /// </summary>
    private static readonly ImmutableArray<(string Colour, Seen At)> Choice =
    [
        .. from red in Levels()
        from green in Levels()
        from blue in Levels()
        select (FormattableString.Invariant($"#{red:x2}{green:x2}{blue:x2}"), Seen.Of(red, green, blue)),
    ];

    /// <param name="taken">By threads that are known.</param>
    internal static ImmutableArray<string> Besides(IEnumerable<string> taken, int count)
    {
        var apart = new double[Choice.Length];
        Array.Fill(apart, double.PositiveInfinity);
        foreach (var colour in taken.Prepend(new Cloth().Color))
            KeepFrom(Seen.Of(colour));
        var found = ImmutableArray.CreateBuilder<string>(count);
        while (found.Count < count)
        {
            var farthest = 0;
            for (var i = 1; i < apart.Length; i++)
                if (apart[i] > apart[farthest])
                    farthest = i;
            found.Add(Choice[farthest].Colour);
            KeepFrom(Choice[farthest].At);
        }
        return found.MoveToImmutable();

        void KeepFrom(Seen other)
        {
            for (var i = 0; i < apart.Length; i++)
                apart[i] = Math.Min(apart[i], Choice[i].At.SquareTo(other));
        }
    }

    private static IEnumerable<int> Levels() =>
        Enumerable.Range(0, 1 + ((Lightest - Darkest) / Step)).Select(i => Darkest + (i * Step));

    /// <summary>
    /// A colour as eyes tell it from others: Oklab (Ottosson 2020; figures from memory), from black, 0, to white, 100.
    /// A difference of 2 is just seen.
    /// </summary>
    internal readonly record struct Seen(double L, double A, double B)
    {
        /// <summary>Steps to a cube root of a share of one, by Newton: the darkest colour takes half as many.</summary>
        private const int RootSteps = 30;

        internal static Seen Of(string colour)
        {
            return Of(Channel(1), Channel(3), Channel(5));

            int Channel(int at) =>
                int.Parse(colour.AsSpan(at, 2), NumberStyles.HexNumber, CultureInfo.InvariantCulture);
        }

        internal static Seen Of(int red, int green, int blue)
        {
            var (r, g, b) = (Linear(red), Linear(green), Linear(blue));
            var l = CubeRoot((0.4122214708 * r) + (0.5363325363 * g) + (0.0514459929 * b));
            var m = CubeRoot((0.2119034982 * r) + (0.6806995451 * g) + (0.1073969566 * b));
            var s = CubeRoot((0.0883024619 * r) + (0.2817188376 * g) + (0.6299787005 * b));
            return new(
                100 * ((0.2104542553 * l) + (0.7936177850 * m) - (0.0040720468 * s)),
                100 * ((1.9779984951 * l) - (2.4285922050 * m) + (0.4505937099 * s)),
                100 * ((0.0259040371 * l) + (0.7827717662 * m) - (0.8086757660 * s))
            );
        }

        internal double SquareTo(Seen other) =>
            ((L - other.L) * (L - other.L)) + ((A - other.A) * (A - other.A)) + ((B - other.B) * (B - other.B));

        /// <summary>The system's own may be rounded differently from machine to machine.</summary>
        private static double CubeRoot(double value)
        {
            var root = 1.0;
            for (var i = 0; i < RootSteps; i++)
                root = ((2 * root) + (value / (root * root))) / 3;
            return root;
        }

        /// <summary>
        /// The linear value of an sRGB channel by a cubic that stays within 0.002 of the standard's curve: a power
        /// would be rounded differently from machine to machine.
        /// </summary>
        private static double Linear(int channel)
        {
            var c = channel / 255.0;
            return c * ((c * ((c * 0.305306011) + 0.682171111)) + 0.012522878);
        }
    }
}
