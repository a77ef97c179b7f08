using System.Collections.Immutable;
using System.Text.Json.Nodes;
using Splitter.Diagnostics;
using Splitter.Recipes.Yaml;

namespace Splitter.Recipes.Language;

/// <summary>A mapping with the keys of a table.</summary>
/// <param name="check">Looks for mistakes between keys, whatever else is wrong.</param>
/// <param name="build">Makes the value of a group without mistakes.</param>
internal sealed class GroupKind<T>(ImmutableArray<Key> keys, Func<Group, T> build, Action<Group>? check = null)
    : Kind<T>
    where T : notnull
{
    internal override ImmutableArray<Key> Keys => keys;

    internal override string Expects => $"keys with values ({Words.List(keys.Select(k => k.Name), "and")})";

    internal override JsonObject ToSchema() => Schema.Mapping(keys);

    internal override Maybe<T> Read(Given given) =>
        given.Node is MappingNode ? Build(Open(given)) : given.RefuseForm(Expects);

    /// <summary>Key by key.</summary>
    internal override Node Merge(Node own, Node included)
    {
        if (own is not MappingNode mine || included is not MappingNode theirs)
            return own;
        Node? Theirs(Entry entry) => theirs.Entries.FirstOrDefault(e => e.Key == entry.Key)?.Value;
        Kind? KindOf(Entry entry) => keys.FirstOrDefault(k => k.Name == entry.Key)?.Kind;
        var names = mine.Entries.Select(e => e.Key).ToHashSet(StringComparer.Ordinal);
        return mine with
        {
            Entries =
            [
                .. mine.Entries.Select(e =>
                    Theirs(e) is { } other && KindOf(e) is { } kind ? e with { Value = kind.Merge(e.Value, other) } : e
                ),
                .. theirs.Entries.Where(e => !names.Contains(e.Key)),
            ],
        };
    }

    internal Maybe<T> Build(Group group) => group.IsSound ? build(group) : default(Refused);

    /// <summary>Reads every key and reports every mistake, so that only building remains.</summary>
    internal Group Open(Given given)
    {
        var group = new Group(given);
        var entries = ((MappingNode)given.Node).Entries;
        var there = entries.Select(entry => entry.Key).ToHashSet(StringComparer.Ordinal);
        // A key that is there already is not what another was meant to be.
        ImmutableArray<string> free = [.. keys.Select(k => k.Name).Where(name => !there.Contains(name))];
        foreach (var entry in entries)
        {
            if (given.Reading.IsFull)
                break;
            if (keys.FirstOrDefault(k => k.Name == entry.Key) is not { } key)
                RefuseUnknown(entry, group, free);
            else
                group.Set(key, key.ReadValue(given.Under(key, entry.Value)));
        }

        foreach (var key in keys.Where(k => k.Required && !group.Has(k)))
            group.Report(RecipeValueProblems.MissingKey(given.Place, key));
        check?.Invoke(group);
        return group;
    }

    private void RefuseUnknown(Entry entry, Group group, ImmutableArray<string> free)
    {
        ImmutableArray<string> names = [.. keys.Select(k => k.Name)];
        group.Report(RecipeValueProblems.UnknownKey(entry.KeyPlace, entry.Key, names, free));
        if (Words.Nearest(entry.Key, free) is { } meant)
            group.SetMeant(keys.Single(k => k.Name == meant));
    }
}
