using System.Diagnostics.CodeAnalysis;
using Splitter.Diagnostics;
using Splitter.Recipes.Yaml;

namespace Splitter.Recipes.Language;

/// <summary>The keys of one mapping with the values that were read for them.</summary>
internal sealed class Group(Given given)
{
    private readonly Dictionary<Key, object?> values = [];

    /// <summary>The mapping itself.</summary>
    internal Given Given => given;

    /// <summary>Nothing in it was refused.</summary>
    internal bool IsSound { get; private set; } = true;

    /// <summary>The file has none of its keys.</summary>
    internal bool IsEmpty => given.Node is MappingNode { Entries.IsEmpty: true };

    /// <summary>The file has the key, be its value right or wrong.</summary>
    internal bool Has(Key key) => values.ContainsKey(key);

    /// <summary>The value or its default; false when it was refused, or is absent without a default.</summary>
    internal bool TryGet<T>(Key<T> key, [MaybeNullWhen(false)] out T value)
        where T : notnull
    {
        var found = Find(key);
        value = found is null ? default : (T)found;
        return found is not null;
    }

    /// <summary>The value or its default; only where the group is sound and one of them must be there.</summary>
    internal T Get<T>(Key<T> key)
        where T : notnull =>
        TryGet(key, out var value) ? value : throw new InvalidOperationException($"'{key.Name}' has no value.");

    /// <summary>The value, or null when the key is absent.</summary>
    internal T? OrNull<T>(Key<T> key)
        where T : class => TryGet(key, out var value) ? value : null;

    /// <summary>The value, or null when the key is absent.</summary>
    internal T? MaybeValue<T>(Key<T> key)
        where T : struct => TryGet(key, out var value) ? value : null;

    internal object? Find(Key key) => values.TryGetValue(key, out var read) ? read : key.DefaultValue;

    internal Place PlaceOf(Key key) =>
        given.Reading.Places.TryGetValue(PathOf(key), out var place) ? place : given.Place;

    /// <summary>The place of a key inside the value of another one, or the nearest above it.</summary>
    internal Place PlaceOf(Key key, Key inner) =>
        given.Reading.Places.TryGetValue($"{PathOf(key)}.{inner.Name}", out var place) ? place : PlaceOf(key);

    internal void Set(Key key, object? value)
    {
        values[key] = value;
        IsSound &= value is not null;
    }

    /// <summary>A misspelt key stands for the one that was meant: nobody need say that it is missing.</summary>
    internal void SetMeant(Key key)
    {
        values.TryAdd(key, null);
        IsSound = false;
    }

    internal void Report(Diagnostic problem)
    {
        given.Report(problem);
        IsSound = false;
    }

    private string PathOf(Key key) => given.Path.Length == 0 ? key.Name : $"{given.Path}.{key.Name}";
}
