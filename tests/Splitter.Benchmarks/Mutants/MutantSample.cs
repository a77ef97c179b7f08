using System.Collections.Immutable;
using System.Security.Cryptography;
using System.Text;
using System.Text.Json;

namespace Splitter.Benchmarks.Mutants;

/// <summary>
/// Mutants of a group, drawn at random: those that come first by the sum of seed and place, so that anyone draws the same
/// ones from the same code.
/// </summary>
internal static class MutantSample
{
    private static readonly JsonSerializerOptions Indented = new() { WriteIndented = true };

    /// <summary>By so many the share is known to 9 points of a hundred (Wilson's interval, near 80 %).</summary>
    private const int Size = 80;

    internal static ImmutableArray<Mutant> Draw(ImmutableArray<Mutant> all, Group group, string seed) =>
        [
            .. all.Where(group.Has)
                .OrderBy(
                    m => Convert.ToHexString(SHA256.HashData(Encoding.UTF8.GetBytes($"{seed} {m.Key}"))),
                    StringComparer.Ordinal
                )
                .Take(Size),
        ];

    /// <summary>What the mutation tool is told, to try these and hardly any others.</summary>
    internal static string Config(ImmutableArray<Mutant> all, ImmutableArray<Mutant> sample, Group group) =>
        JsonSerializer.Serialize(
            new Dictionary<string, object>
            {
                ["stryker-config"] = new Dictionary<string, object>
                {
                    ["project"] = "Splitter.csproj",
                    ["configuration"] = "Release",
                    ["concurrency"] = 1,
                    ["ignore-mutations"] = new[] { "string" },
                    ["reporters"] = new[] { "json", "progress" },
                    ["additional-timeout"] = PatienceMs,
                    ["test-case-filter"] = group.Tests,
                    ["mutate"] = sample.Select(Pattern).Concat(Others(all, sample).Select(m => "!" + Pattern(m))),
                },
            },
            Indented
        );

    /// <summary>
    /// So much longer than without a mutant tests may take before they count as endless: other work on the machine must not
    /// make them so.
    /// </summary>
    private const int PatienceMs = 60_000;

    /// <summary>
    /// A pattern takes all that lies within its place. What lies within a drawn one is left out again, but for places of
    /// drawn ones, and for those that hold one.
    /// </summary>
    private static IEnumerable<Mutant> Others(ImmutableArray<Mutant> all, ImmutableArray<Mutant> sample) =>
        all.Where(m => sample.Any(m.LiesWithin) && !sample.Any(drawn => drawn.LiesWithin(m)));

    private static string Pattern(Mutant mutant) =>
        FormattableString.Invariant($"**/{mutant.File}{{{mutant.From}..{mutant.To}}}");
}
