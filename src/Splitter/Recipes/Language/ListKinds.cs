using System.Collections.Immutable;
using System.Text.Json.Nodes;
using Splitter.Diagnostics;
using Splitter.Recipes.Yaml;

namespace Splitter.Recipes.Language;

/// <summary>A list of values of one kind, distinct if nothing else is said.</summary>
internal sealed class ListKind<T>(Kind<T> item, int least, int most) : Kind<ImmutableArray<T>>
    where T : notnull
{
    /// <summary>A value may come again.</summary>
    internal bool Repeats { get; init; }

    internal override ImmutableArray<Kind> Parts => [item];

    internal override bool IsList => true;

    internal override string Expects => $"a list of {item.Expects}";

    internal override JsonObject ToSchema()
    {
        var list = Schema.List(item, least, most);
        if (!Repeats)
            list["uniqueItems"] = true;
        return list;
    }

    internal override Maybe<ImmutableArray<T>> Read(Given given)
    {
        if (given.Node is not SequenceNode sequence)
            return given.RefuseForm(Expects);
        if (!ListLength.Check(given, sequence, least, most))
            return default(Refused);
        var sound = true;
        var values = ImmutableArray.CreateBuilder<T>();
        for (var i = 0; i < sequence.Items.Length; i++)
        {
            var each = given.Item(i, sequence.Items[i]);
            if (item.Read(each) is not { Has: true, Value: var value })
                sound = false;
            else if (Repeats || !values.Contains(value))
                values.Add(value);
            else
            {
                each.Report(RecipeValueProblems.ItemTwice(each.Place, given.Key.Name, TextOf(each.Node)));
                sound = false;
            }
        }
        return sound ? values.ToImmutable() : default(Refused);
    }

    private static string TextOf(Node node) => node is ScalarNode scalar ? scalar.Text : "this";
}

/// <summary>A list of mappings; keys that name an item are unique in it.</summary>
internal sealed class GroupListKind<T>(GroupKind<T> item, int least, int most) : Kind<ImmutableArray<T>>
    where T : notnull
{
    internal override ImmutableArray<Kind> Parts => [item];

    internal override bool IsList => true;

    /// <summary>The items of included files follow its own, but for those with a name that is taken.</summary>
    internal bool GoesOn { get; init; }

    internal override string Expects => $"a list of {item.Expects}";

    internal override JsonObject ToSchema() => Schema.List(item, least, most);

    internal override Node Merge(Node own, Node included)
    {
        if (!GoesOn || own is not SequenceNode mine || included is not SequenceNode theirs)
            return own;
        var naming = item.Keys.Where(key => key.Unique is not null).ToList();
        bool IsTaken(Node other) =>
            naming.Exists(key =>
                NameOf(key, other) is { } name && mine.Items.Any(i => key.Unique!.Equals(NameOf(key, i), name))
            );
        return mine with { Items = [.. mine.Items, .. theirs.Items.Where(i => !IsTaken(i))] };
    }

    /// <summary>
    /// A value as it is understood, since #FFF and #ffffff are one colour; null for none or a wrong one.
    /// </summary>
    private static string? NameOf(Key key, Node item) =>
        (item as MappingNode)?.Entries.FirstOrDefault(e => e.Key == key.Name) is { } entry
            ? key.ReadValue(new(entry.Value, key.Name, key, new Reading("name")))?.ToString()
            : null;

    internal override Maybe<ImmutableArray<T>> Read(Given given)
    {
        if (given.Node is not SequenceNode sequence)
            return given.RefuseForm(Expects);
        if (!ListLength.Check(given, sequence, least, most))
            return default(Refused);
        var groups = ImmutableArray.CreateBuilder<Group>();
        for (var i = 0; i < sequence.Items.Length; i++)
        {
            var each = given.Item(i, sequence.Items[i]);
            if (each.Node is MappingNode)
                groups.Add(item.Open(each));
            else
                each.RefuseForm(item.Expects);
        }

        foreach (var key in item.Keys)
            RefuseRepeats(key, groups);
        var sound = groups.Count == sequence.Items.Length && groups.All(g => g.IsSound);
        return sound ? groups.Select(g => item.Build(g).Value).ToImmutableArray() : default(Refused);
    }

    private static void RefuseRepeats(Key key, IEnumerable<Group> groups)
    {
        if (key.Unique is not { } comparer)
            return;
        var first = new Dictionary<string, Place>(comparer);
        foreach (var group in groups.Where(g => g.Has(key)))
        {
            if (group.Find(key)?.ToString() is { } value && !first.TryAdd(value, group.PlaceOf(key)))
                group.Report(RecipeValueProblems.NotUnique(group.PlaceOf(key), key.Name, value, first[value]));
        }
    }
}

/// <summary>How long a list may be.</summary>
internal static class ListLength
{
    internal static bool Check(Given given, SequenceNode sequence, int least, int most)
    {
        if (sequence.Items.Length >= least && sequence.Items.Length <= most)
            return true;
        given.Report(RecipeValueProblems.ListLength(given.Place, given.Key, sequence.Items.Length, least, most));
        return false;
    }
}
