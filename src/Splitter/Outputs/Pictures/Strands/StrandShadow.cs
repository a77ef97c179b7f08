using System.Runtime.InteropServices;
using System.Runtime.Intrinsics;

namespace Splitter.Outputs.Pictures.Strands;

/// <summary>
/// Where thread casts its shadow, seen when all of it lies: on what is away from the light and lies lower.
/// </summary>
internal static class StrandShadow
{
    /// <param name="row">Dots that may be in shadow.</param>
    /// <param name="towardsLight">Those that would cast it, one for each.</param>
    internal static void Cast(Span<Dot> row, ReadOnlySpan<Dot> towardsLight, StrandInks inks)
    {
        var lower = MemoryMarshal.Cast<Dot, uint>(row);
        var higher = MemoryMarshal.Cast<Dot, uint>(towardsLight);
        var at = 0;
        // Mostly none of them does.
        for (; at + Vector128<uint>.Count <= row.Length; at += Vector128<uint>.Count)
            if (Vector128.GreaterThanAny(LayersAt(higher, at), LayersAt(lower, at)))
                Cast(row, towardsLight, at, at + Vector128<uint>.Count, inks);
        Cast(row, towardsLight, at, row.Length, inks);
    }

    private static Vector128<uint> LayersAt(ReadOnlySpan<uint> dots, int at) =>
        Vector128.Create(dots[at..]) >>> Dot.Layer;

    private static void Cast(Span<Dot> row, ReadOnlySpan<Dot> towardsLight, int first, int end, StrandInks inks)
    {
        for (var i = first; i < end; i++)
            if (inks.Shades(towardsLight[i], row[i]))
                row[i] = new(row[i].Bits | Dot.InShadow);
    }
}
