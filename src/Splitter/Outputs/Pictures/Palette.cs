using System.Collections.Immutable;

namespace Splitter.Outputs.Pictures;

/// <summary>
/// The colours that stand for all of a picture's, chosen by halving boxes of colours at their median (median cut,
/// Heckbert 1982, from memory). Whole numbers, and the first of equals, so that every machine chooses alike.
/// </summary>
/// <param name="Indices">One for each pixel.</param>
internal sealed record Palette(ImmutableArray<Colour> Colours, byte[] Indices)
{
    private const int MostColours = 256;

    /// <summary>Bits of each channel that are told apart: 2.4 % of lightness.</summary>
    private const int Bits = 5;

    private const int Unseen = 8 - Bits;

    /// <summary>Pixels whose colours agree in those bits.</summary>
    private sealed class Bin(int key)
    {
        private long red;
        private long green;
        private long blue;

        internal int Key { get; } = key;

        internal long Count { get; private set; }

        internal long Sum(int channel) =>
            channel switch
            {
                0 => red,
                1 => green,
                _ => blue,
            };

        internal void Add(ReadOnlySpan<byte> pixel, int count)
        {
            Count += count;
            (red, green, blue) = (
                red + (pixel[0] * (long)count),
                green + (pixel[1] * (long)count),
                blue + (pixel[2] * (long)count)
            );
        }

        internal int Channel(int channel) => (Key >> (Bits * (2 - channel))) & ((1 << Bits) - 1);
    }

    /// <param name="pixels">Three bytes each.</param>
    internal static Palette Of(byte[] pixels)
    {
        var bins = new Bin?[1 << (3 * Bits)];
        for (var (i, next) = (0, 0); i < pixels.Length; i = next)
        {
            // Bare cloth and paper are long stretches of one colour.
            for (next = i + 3; next < pixels.Length && AreSame(pixels, i, next); next += 3) { }
            var key = KeyOf(pixels, i);
            (bins[key] ??= new(key)).Add(pixels.AsSpan(i, 3), (next - i) / 3);
        }
        var boxes = Boxes([.. bins.OfType<Bin>()]);
        var indexOf = new byte[bins.Length];
        foreach (var (index, box) in boxes.Index())
        foreach (var bin in box.Bins)
            indexOf[bin.Key] = (byte)index;
        var indices = new byte[pixels.Length / 3];
        for (var i = 0; i < indices.Length; i++)
            indices[i] = indexOf[KeyOf(pixels, i * 3)];
        return new([.. boxes.Select(b => b.Mean)], indices);
    }

    private static bool AreSame(byte[] pixels, int one, int other) =>
        pixels[one] == pixels[other] && pixels[one + 1] == pixels[other + 1] && pixels[one + 2] == pixels[other + 2];

    private static int KeyOf(byte[] pixels, int at) =>
        (pixels[at] >> Unseen << (2 * Bits)) | (pixels[at + 1] >> Unseen << Bits) | (pixels[at + 2] >> Unseen);

    private static List<PaletteBox> Boxes(ImmutableArray<Bin> bins)
    {
        List<PaletteBox> boxes = [new(bins)];
        while (boxes.Count < MostColours && boxes.MaxBy(b => b.Weight) is { Weight: > 0 } widest)
        {
            boxes.Remove(widest);
            boxes.AddRange(widest.Halved());
        }
        return boxes;
    }

    /// <summary>Colours that stand beside each other.</summary>
    private sealed class PaletteBox
    {
        private readonly long count;
        private readonly int longest;

        internal PaletteBox(ImmutableArray<Bin> bins)
        {
            Bins = bins;
            count = bins.Sum(b => b.Count);
            ImmutableArray<int> sides =
            [
                .. Enumerable.Range(0, 3).Select(c => bins.Max(b => b.Channel(c)) - bins.Min(b => b.Channel(c))),
            ];
            longest = sides.IndexOf(sides.Max());
            Weight = sides[longest] * Math.Sqrt(count);
        }

        internal ImmutableArray<Bin> Bins { get; }

        /// <summary>
        /// How much would be gained by halving it: few pixels of a rare colour count too. 0 for a single colour.
        /// </summary>
        internal double Weight { get; }

        internal Colour Mean => new(MeanOf(0), MeanOf(1), MeanOf(2));

        internal IEnumerable<PaletteBox> Halved()
        {
            var sorted = Bins.ToArray();
            Array.Sort([.. sorted.Select(b => (b.Channel(longest) << (3 * Bits)) | b.Key)], sorted);
            var (before, half) = (0L, 0);
            while (half < sorted.Length - 1 && (half == 0 || (before + sorted[half].Count) * 2 <= count))
                before += sorted[half++].Count;
            return [new([.. sorted[..half]]), new([.. sorted[half..]])];
        }

        private byte MeanOf(int channel) => (byte)((Bins.Sum(b => b.Sum(channel)) + (count / 2)) / count);
    }
}
