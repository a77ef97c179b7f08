using System.Collections.Immutable;
using System.Text.Json;
using static System.FormattableString;

namespace Splitter.Checking;

/// <summary>What a manifest says that its set was made of.</summary>
/// <param name="Recipe">The sum of its bytes.</param>
/// <param name="Inputs">Files that the recipe names, and the sum of each.</param>
/// <param name="Facts">What of the recipe or the artwork it tells beside the sums: what, and how it is.</param>
internal sealed record KnownOrigin(
    string File,
    string Recipe,
    ImmutableSortedDictionary<string, string> Inputs,
    ImmutableSortedDictionary<string, string> Facts
)
{
    internal static KnownOrigin Of(JsonElement manifest)
    {
        var recipe = manifest.GetProperty("recipe");
        var facts = ImmutableSortedDictionary.CreateBuilder<string, string>(StringComparer.Ordinal);
        facts["the title"] = $"'{manifest.GetProperty("title").GetString()}'";
        facts["the work"] = Size(manifest.GetProperty("artwork"));
        facts["the hoop's field"] = Size(manifest.GetProperty("hoop"));
        if (Overlap([.. manifest.GetProperty("joins").EnumerateArray()]) is { } overlap)
            facts["the overlap of parts"] = overlap;
        // Sets of earlier versions do not tell of it.
        if (manifest.TryGetProperty("cloth", out var cloth))
        {
            facts["the cloth's colour"] = cloth.GetProperty("color").GetString()!;
            facts["the cloth's thickness"] = Invariant($"{cloth.GetProperty("thickness_mm").GetDecimal()} mm");
        }
        foreach (var thread in manifest.GetProperty("threads").EnumerateArray())
            facts[$"thread {thread.GetProperty("name").GetString()}"] = thread.GetProperty("color").GetString()!;
        return new(
            recipe.GetProperty("file").GetString()!,
            recipe.GetProperty("sha256").GetString()!,
            manifest
                .GetProperty("inputs")
                .EnumerateArray()
                .ToImmutableSortedDictionary(
                    input => input.GetProperty("file").GetString()!,
                    input => input.GetProperty("sha256").GetString()!,
                    StringComparer.Ordinal
                ),
            facts.ToImmutable()
        );
    }

    /// <summary>
    /// What of the input is another, so that a person knows why a set differs; null where both were made of the same.
    /// </summary>
    internal string? ChangedTo(KnownOrigin now)
    {
        var changes = new List<string>();
        if (File != now.File)
            changes.Add($"the recipe is {now.File}, not {File}");
        else if (Recipe != now.Recipe)
            changes.Add($"the recipe {now.File} changed");
        changes.AddRange(now.Inputs.Where(i => Inputs.ContainsKey(i.Key) && Inputs[i.Key] != i.Value).Select(Changed));
        changes.AddRange(now.Inputs.Keys.Except(Inputs.Keys, StringComparer.Ordinal).Select(f => $"{f} is used now"));
        changes.AddRange(
            Inputs.Keys.Except(now.Inputs.Keys, StringComparer.Ordinal).Select(f => $"{f} is used no more")
        );
        changes.AddRange(
            now.Facts.Where(fact => Facts.TryGetValue(fact.Key, out var was) && was != fact.Value)
                .Select(fact => $"{fact.Key} is {fact.Value}, not {Facts[fact.Key]}")
        );
        return changes.Count == 0 ? null : string.Join("; ", changes);
    }

    private static string Changed(KeyValuePair<string, string> input) => $"the file {input.Key} changed";

    /// <summary>How far parts overlap, and which misfit that covers; null where none join.</summary>
    private static string? Overlap(IReadOnlyCollection<JsonElement> joins)
    {
        return joins.Count == 0 ? null : $"{Range("overlap_mm")} (covers {Range("covers_mm")})";

        string Range(string key)
        {
            var all = joins.Select(join => join.GetProperty(key).GetDecimal()).ToList();
            var (least, most) = (all.Min(), all.Max());
            return least == most ? Invariant($"{most} mm") : Invariant($"{least} to {most} mm");
        }
    }

    private static string Size(JsonElement sized) =>
        Invariant($"{sized.GetProperty("width_mm").GetDecimal()} x {sized.GetProperty("height_mm").GetDecimal()} mm");
}
