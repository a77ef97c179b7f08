using System.Runtime.InteropServices;

namespace Splitter.Outputs.Pictures.Strands;

/// <summary>
/// Colours of all dots of a picture. An ink is a thread in a light; what is sewn before the next change of colour is a
/// layer of thread.
/// </summary>
internal sealed class StrandInks
{
    /// <summary>Bits of a channel in a sum of colours: sixteen have room.</summary>
    private const int Channel = 16;

    /// <summary>Above the channels how many dots have no thread, in the light and in shadow.</summary>
    private const int Bare = 3 * Channel,
        BareInShadow = Bare + (Channel / 2);

    private readonly Dictionary<(Colour, ThreadLight), uint> inks = [];

    /// <summary>Where <see cref="Dot.Colour"/> tells, each channel beside the other, to be added up at once.</summary>
    private readonly List<ulong> colours = [1UL << Bare, 1UL << BareInShadow];

    /// <summary>The thread of each layer; of none there is no colour.</summary>
    private readonly List<Colour?> layers = [null];

    internal StrandInks() => CollectionsMarshal.SetCount(colours, 1 << Dot.Ink);

    /// <summary>Of a dot's colour.</summary>
    internal ReadOnlySpan<ulong> Colours => CollectionsMarshal.AsSpan(colours);

    /// <summary>The first shade of what is sewn next.</summary>
    internal Dot Next(Colour thread, ThreadLight light)
    {
        if (layers[^1] != thread)
            layers.Add(thread);
        if (!inks.TryGetValue((thread, light), out var ink))
        {
            inks.Add((thread, light), ink = (uint)inks.Count + 1);
            foreach (var shade in StrandShades.Of(thread, light))
                colours.AddRange([Added(shade), Added(Shaded(shade))]);
        }
        return new(((uint)(layers.Count - 1) << Dot.Layer) | (ink << Dot.Ink));
    }

    /// <summary>
    /// A higher layer casts a shadow, but not on thread of its colour: where parts meet, neither does.
    /// </summary>
    internal bool Shades(Dot higher, Dot lower)
    {
        var (by, on) = ((int)(higher.Bits >> Dot.Layer), (int)(lower.Bits >> Dot.Layer));
        return by > on && layers[by] != layers[on];
    }

    /// <summary>Whether thread lies on all dots of a sum.</summary>
    internal static bool IsThreadAlone(ulong sum) => sum >> Bare == 0;

    /// <summary>A sum with what is below where dots have no thread.</summary>
    internal static ulong With(Colour below, ulong sum) =>
        sum + (((sum >> Bare) & byte.MaxValue) * Added(below)) + ((sum >> BareInShadow) * Added(Shaded(below)));

    internal static (int Red, int Green, int Blue) Channels(ulong sum)
    {
        const int One = (1 << Channel) - 1;
        return ((int)sum & One, (int)(sum >> Channel) & One, (int)(sum >> (2 * Channel)) & One);
    }

    private static ulong Added(Colour colour) =>
        colour.Red | ((ulong)colour.Green << Channel) | ((ulong)colour.Blue << (2 * Channel));

    private static Colour Shaded(Colour colour) => colour.Mixed(default, Strand.Shadow);
}
