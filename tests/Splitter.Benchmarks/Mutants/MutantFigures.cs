using System.Collections.Immutable;

namespace Splitter.Benchmarks.Mutants;

/// <summary>Draws mutants of a group, and counts what became of them.</summary>
internal static class MutantFigures
{
    /// <summary>The normal distribution's 97.5 %, for an interval that holds the share 95 times of 100.</summary>
    private const double Sigmas = 1.96;

    /// <summary>Writes what the mutation tool is told beside its tests.</summary>
    internal static int Draw(string name, string seed, string census)
    {
        var (all, group) = (MutationReport.Read(census), Group.All.Single(g => g.Name == name));
        var file = Repository.Find("tests", "Splitter.Tests", "StrykerOutput", $"{name}-{seed}.json");
        Directory.CreateDirectory(Path.GetDirectoryName(file)!);
        File.WriteAllText(file, MutantSample.Config(all, MutantSample.Draw(all, group, seed), group));
        Console.WriteLine(file);
        return 0;
    }

    /// <summary>Prints a row of the table, and who survived.</summary>
    internal static int Count(string name, string seed, string census, string report)
    {
        var group = Group.All.Single(g => g.Name == name);
        var drawn = MutantSample.Draw(MutationReport.Read(census), group, seed).Select(m => m.Key).ToHashSet();
        var tried = MutationReport.Read(report).Where(m => drawn.Contains(m.Key)).ToImmutableArray();
        var (timeouts, killed) = (Of(MutantStatus.Timeout), Of(MutantStatus.Killed) + Of(MutantStatus.Timeout));
        var (low, high) = Wilson(killed, tried.Length);
        Console.WriteLine(
            FormattableString.Invariant(
                $"| {name} | {seed} | {tried.Length} | {killed} | {timeouts} | {tried.Length - killed} | {100.0 * killed / tried.Length:F0} ({low:F0} to {high:F0}) |"
            )
        );
        foreach (var mutant in tried.Where(m => m.Status is not (MutantStatus.Killed or MutantStatus.Timeout)))
            Console.WriteLine(
                $"{mutant.File}({mutant.Line}): {mutant.Status}, {mutant.Kind}: {mutant.Was} → {mutant.Now}"
            );
        return 0;

        int Of(MutantStatus status) => tried.Count(m => m.Status == status);
    }

    /// <summary>
    /// Between what shares, %, the truth lies 95 times of 100 when so many are drawn: Wilson's score interval (E. B. Wilson,
    /// J. Am. Stat. Assoc. 22, 1927; formula from memory).
    /// </summary>
    private static (double Low, double High) Wilson(double killed, double tried)
    {
        var (share, square) = (killed / tried, Sigmas * Sigmas);
        var middle = share + (square / (2 * tried));
        var aside = Sigmas * Math.Sqrt((share * (1 - share) / tried) + (square / (4 * tried * tried)));
        var whole = 1 + (square / tried);
        return (100 * (middle - aside) / whole, 100 * (middle + aside) / whole);
    }
}
