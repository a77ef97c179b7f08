using System.Collections.Immutable;
using Splitter.Geometry;

namespace Splitter.Planning.Fields.Covering;

/// <summary>
/// The best of the smallest covers that a search comes by, no two of them much alike: those that cost least, the
/// one found first where two are equal.
/// </summary>
/// <param name="misfit">How well the fields of a cover meet; less is better.</param>
/// <param name="most">How many are kept.</param>
internal sealed class Shortlist(Func<ImmutableArray<Field>, double> misfit, int most)
{
    /// <summary>
    /// Two covers are alike when every field of one has a field of the other this near, µm: as far apart, seams lie on
    /// other things.
    /// </summary>
    private const int Near = 15 * Units.Millimetre;

    private readonly List<(ImmutableArray<Field> Cover, double Misfit)> kept = [];

    /// <summary>How many fields each has; none when nothing was found yet.</summary>
    internal int? Size => kept.Count == 0 ? null : kept[0].Cover.Length;

    /// <summary>Best first.</summary>
    internal ImmutableArray<ImmutableArray<Field>> Covers => [.. kept.Select(k => k.Cover)];

    /// <summary>Takes a cover in when it is smaller than those that are kept, or as small and good enough.</summary>
    internal void Add(ImmutableArray<Field> cover)
    {
        if (cover.Length > Size)
            return;
        if (cover.Length < Size)
            kept.Clear();
        var of = misfit(cover);
        if (kept.Exists(k => k.Misfit <= of && Alike(k.Cover, cover)))
            return;
        kept.RemoveAll(k => Alike(k.Cover, cover));
        var place = kept.FindIndex(k => k.Misfit > of);
        kept.Insert(place < 0 ? kept.Count : place, (cover, of));
        if (kept.Count > most)
            kept.RemoveAt(most);
    }

    private static bool Alike(ImmutableArray<Field> a, ImmutableArray<Field> b) =>
        a.All(f => b.Any(g => g.Turn == f.Turn && g.Centre.DistanceTo(f.Centre) < Near));
}
