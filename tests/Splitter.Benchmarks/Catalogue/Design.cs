namespace Splitter.Benchmarks.Catalogue;

/// <summary>A recipe of a catalogue that we invented: of a hundred, eighty motifs, nineteen panels and one hanging.</summary>
/// <param name="Name">Relative to the project, as builds number it.</param>
internal sealed record Design(string Name, DesignKind Kind)
{
    internal static IEnumerable<Design> Catalogue(int count) =>
        Enumerable
            .Range(0, count)
            .Select(i => new Design(
                FormattableString.Invariant($"recipes/design-{i:00000}.yaml"),
                (i % 100) switch
                {
                    0 => DesignKind.Hanging,
                    < 20 => DesignKind.Panel,
                    _ => DesignKind.Motif,
                }
            ));

    /// <summary>
    /// Which of several agents makes it: the rule of SplitterShard, as Splitter.MSBuild.targets has it. MSBuild's
    /// StableStringHash 'Fnv1a32bit' takes each letter's low byte, then its high one (FNV-1a: Fowler, Noll, Vo).
    /// </summary>
    internal int Share(int agents)
    {
        var hash = 2166136261u;
        foreach (var letter in Name)
        {
            hash = (hash ^ (byte)letter) * 16777619;
            hash = (hash ^ (byte)(letter >> 8)) * 16777619;
        }
        return (int)(hash & int.MaxValue) % agents;
    }
}

/// <summary>How much there is to make.</summary>
internal enum DesignKind
{
    /// <summary>Within one hoop.</summary>
    Motif,

    /// <summary>A few hoopings.</summary>
    Panel,

    /// <summary>The demo, in both of its hoops.</summary>
    Hanging,
}
