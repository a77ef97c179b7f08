using System.Collections.Frozen;
using System.Text;
using Splitter.Recipes;

namespace Splitter.Texts;

/// <summary>What is said to the person at the machine, in the recipe's language and units.</summary>
internal sealed class Phrasebook
{
    private readonly FrozenDictionary<string, string> texts;

    internal Phrasebook(OutputRules rules)
    {
        texts = TextFile.Of(rules.Language);
        Language = TextFile.CodeOf(rules.Language);
        Numbers = new(rules.Language, rules.Lengths);
    }

    /// <summary>Its code.</summary>
    internal string Language { get; }

    /// <summary>Numbers as this person reads them.</summary>
    internal Numbers Numbers { get; }

    /// <summary>A text, each <c>{name}</c> in it replaced; all that are given must occur, and no other may.</summary>
    internal string Say(string key, params ReadOnlySpan<(string Name, string Value)> values)
    {
        if (!texts.TryGetValue(key, out var text))
            throw new InvalidOperationException($"No text is called {key}.");
        var said = new StringBuilder();
        var used = new HashSet<string>(StringComparer.Ordinal);
        for (var at = 0; at < text.Length; )
        {
            var open = text.IndexOf('{', at);
            if (open < 0)
                open = text.Length;
            said.Append(text, at, open - at);
            if (open == text.Length)
                break;
            var close = text.IndexOf('}', open);
            var name = text[(open + 1)..close];
            said.Append(ValueOf(name, values) ?? throw new InvalidOperationException($"{key} asks for {name}."));
            used.Add(name);
            at = close + 1;
        }
        foreach (var (name, _) in values)
            if (!used.Contains(name))
                throw new InvalidOperationException($"{key} does not say {name}.");
        return said.ToString();
    }

    /// <summary>
    /// All texts whose keys begin so, by the rest of the key; what they ask for is filled in elsewhere.
    /// </summary>
    internal IEnumerable<(string Key, string Text)> Beginning(string prefix) =>
        texts
            .Where(t => t.Key.StartsWith(prefix, StringComparison.Ordinal))
            .OrderBy(t => t.Key, StringComparer.Ordinal)
            .Select(t => (t.Key[prefix.Length..], t.Value));

    /// <summary>
    /// A text that has a form for one (<c>key.one</c>, with no number to put in) and one for all other counts
    /// (<c>key.many</c>, with its <c>{count}</c>).
    /// </summary>
    internal string Many(string key, int count) =>
        count == 1 ? Say($"{key}.one") : Say($"{key}.many", ("count", Texts.Numbers.Count(count)));

    /// <summary><c>A1, A2 and B1</c>.</summary>
    internal string Listed(IReadOnlyList<string> names) =>
        names.Count < 2
            ? string.Concat(names)
            : Say("list", ("first", string.Join(", ", names.SkipLast(1))), ("last", names[^1]));

    private static string? ValueOf(string name, ReadOnlySpan<(string Name, string Value)> values)
    {
        foreach (var (given, value) in values)
            if (given == name)
                return value;
        return null;
    }
}
