using System.Buffers;
using System.Buffers.Binary;
using System.Collections.Immutable;

namespace Splitter.Outputs.Pictures;

/// <summary>
/// The colours that stand for all of a picture's, chosen by halving boxes of colours at their median (median cut,
/// Heckbert 1982, from memory). Whole numbers, and the first of equals, so that every machine chooses alike.
/// </summary>
internal sealed class Palette
{
    private const int MostColours = 256;

    /// <summary>Bits of each channel that are told apart: 2.4 % of lightness.</summary>
    private const int Bits = 5;

    private const int Unseen = 8 - Bits;

    /// <summary>Of all channels together.</summary>
    private const int Keys = 1 << (3 * Bits);

    /// <summary>The bits of a channel that are not told apart, those that are, and all of a pixel.</summary>
    private const uint Rest = (1 << Unseen) - 1,
        Seen = byte.MaxValue - Rest,
        Pixel = (1 << 24) - 1;

    /// <summary>For each key the colour that stands for it.</summary>
    private readonly byte[] indexOf = new byte[Keys];

    /// <summary>
    /// Of pixels whose colours agree in those bits how many there are, and what their other bits add up to.
    /// </summary>
    private record struct Tally(uint Count, uint Red, uint Green, uint Blue);

    /// <summary>The same with what their whole channels add up to.</summary>
    private record struct Bin(int Key, long Count, long Red, long Green, long Blue)
    {
        internal readonly int Channel(int channel) => (Key >> (Bits * (2 - channel))) & ((1 << Bits) - 1);
    }

    /// <param name="pixels">Three bytes each.</param>
    internal Palette(ReadOnlySpan<byte> pixels)
    {
        var boxes = Boxes(Bins(pixels));
        Colours = [.. boxes.Select(b => b.Mean)];
        foreach (var (index, box) in boxes.Index())
        foreach (ref readonly var bin in box.Bins)
            indexOf[bin.Key] = (byte)index;
    }

    internal ImmutableArray<Colour> Colours { get; }

    /// <summary>Which colour stands for each pixel.</summary>
    internal void Index(ReadOnlySpan<byte> pixels, Span<byte> indices)
    {
        for (var i = 0; i < indices.Length; i++)
            indices[i] = indexOf[KeyOf(BitsOf(pixels, 3 * i))];
    }

    private static Bin[] Bins(ReadOnlySpan<byte> pixels)
    {
        var tallies = ArrayPool<Tally>.Shared.Rent(Keys);
        tallies.AsSpan(0, Keys).Clear();
        for (int first = 0, next; first < pixels.Length; first = next)
        {
            next = EndOfSame(pixels, first);
            var (bits, count) = (BitsOf(pixels, first), (uint)(next - first) / 3);
            ref var tally = ref tallies[KeyOf(bits)];
            tally.Count += count;
            tally.Red += count * (bits & Rest);
            tally.Green += count * ((bits >> 8) & Rest);
            tally.Blue += count * ((bits >> 16) & Rest);
        }
        var bins = new List<Bin>();
        for (var key = 0; key < Keys; key++)
            if (tallies[key] is { Count: > 0 } tally)
                bins.Add(BinOf(key, tally));
        ArrayPool<Tally>.Shared.Return(tallies);
        return [.. bins];
    }

    private static Bin BinOf(int key, Tally tally)
    {
        var bin = new Bin(key, tally.Count, tally.Red, tally.Green, tally.Blue);
        bin.Red += tally.Count * (long)(bin.Channel(0) << Unseen);
        bin.Green += tally.Count * (long)(bin.Channel(1) << Unseen);
        bin.Blue += tally.Count * (long)(bin.Channel(2) << Unseen);
        return bin;
    }

    /// <summary>Bare cloth and paper are long stretches of one colour.</summary>
    private static int EndOfSame(ReadOnlySpan<byte> pixels, int first)
    {
        var next = first + 3;
        // Mostly the next pixel is another.
        if (next == pixels.Length || BitsOf(pixels, first) != BitsOf(pixels, next))
            return next;
        var same = pixels[first..].CommonPrefixLength(pixels[next..]);
        return next + (same / 3 * 3);
    }

    /// <summary>A pixel's three bytes, the red one lowest.</summary>
    private static uint BitsOf(ReadOnlySpan<byte> pixels, int at) =>
        at + sizeof(uint) <= pixels.Length
            ? BinaryPrimitives.ReadUInt32LittleEndian(pixels[at..]) & Pixel
            : pixels[at] | ((uint)pixels[at + 1] << 8) | ((uint)pixels[at + 2] << 16);

    private static int KeyOf(uint pixel) =>
        (int)(
            ((pixel & Seen) << (2 * Bits) >> Unseen)
            | ((pixel >> 8 & Seen) << Bits >> Unseen)
            | (pixel >> (16 + Unseen))
        );

    private static List<PaletteBox> Boxes(Bin[] bins)
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
        private readonly ArraySegment<Bin> bins;
        private readonly Bin sum;
        private readonly int longest;

        internal PaletteBox(ArraySegment<Bin> bins)
        {
            this.bins = bins;
            foreach (ref readonly var bin in Bins)
                sum = new(Key: 0, sum.Count + bin.Count, sum.Red + bin.Red, sum.Green + bin.Green, sum.Blue + bin.Blue);
            var side = 0;
            for (var channel = 2; channel >= 0; channel--)
                if (Side(channel) is var length && length >= side)
                    (longest, side) = (channel, length);
            Weight = side * Math.Sqrt(sum.Count);
        }

        internal ReadOnlySpan<Bin> Bins => bins;

        /// <summary>
        /// How much would be gained by halving it: few pixels of a rare colour count too. 0 for a single colour.
        /// </summary>
        internal double Weight { get; }

        internal Colour Mean => new(MeanOf(sum.Red), MeanOf(sum.Green), MeanOf(sum.Blue));

        /// <summary>Two boxes of its bins, which it puts in order.</summary>
        internal PaletteBox[] Halved()
        {
            var channel = longest;
            var sorted = bins.AsSpan();
            sorted.Sort((a, b) => OrderOf(a).CompareTo(OrderOf(b)));
            var (before, half) = (0L, 0);
            while (half < sorted.Length - 1 && (half == 0 || (before + sorted[half].Count) * 2 <= sum.Count))
                before += sorted[half++].Count;
            return [new(bins[..half]), new(bins[half..])];

            int OrderOf(in Bin bin) => (bin.Channel(channel) << (3 * Bits)) | bin.Key;
        }

        private int Side(int channel)
        {
            var (least, most) = (int.MaxValue, 0);
            foreach (ref readonly var bin in Bins)
                (least, most) = (Math.Min(least, bin.Channel(channel)), Math.Max(most, bin.Channel(channel)));
            return most - least;
        }

        private byte MeanOf(long channel) => (byte)((channel + (sum.Count / 2)) / sum.Count);
    }
}
