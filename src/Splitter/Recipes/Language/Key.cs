using Splitter.Recipes.Yaml;

namespace Splitter.Recipes.Language;

/// <summary>
/// The one definition of a key. The reader works from it; so do the descriptions of the language that people and
/// editors get.
/// </summary>
internal abstract class Key(string name, Kind kind)
{
    internal string Name => name;

    internal Kind Kind => kind;

    /// <summary>One line: what it says.</summary>
    internal required string Says { get; init; }

    /// <summary>A value as one would write it.</summary>
    internal required string Example { get; init; }

    /// <summary>The recipe must have it.</summary>
    internal bool Required { get; init; }

    /// <summary>Of the recipe itself alone: a file that it includes cannot have it.</summary>
    internal bool IsOwn { get; init; }

    /// <summary>
    /// What counts when the key is absent, as one would write it; null when absence has a meaning of its own.
    /// </summary>
    internal string? Default { get; init; }

    /// <summary>What the key's absence means, when <see cref="Default"/> cannot say it.</summary>
    internal string? Otherwise { get; init; }

    /// <summary>Set when no two items of a list may agree in this key: how they are compared.</summary>
    internal StringComparer? Unique { get; init; }

    /// <summary>The value that was read, or null after its mistakes were reported.</summary>
    internal abstract object? ReadValue(Given given);

    /// <summary>The value of <see cref="Default"/>.</summary>
    internal abstract object? DefaultValue { get; }
}

/// <inheritdoc/>
internal sealed class Key<T>(string name, Kind<T> kind) : Key(name, kind)
    where T : notnull
{
    private object? defaultValue;

    internal override object? DefaultValue => defaultValue ??= ReadDefault();

    internal override object? ReadValue(Given given) => kind.Read(given) is { Has: true } read ? read.Value : null;

    private object? ReadDefault()
    {
        if (Default is null)
            return null;
        var reading = new Reading($"default of {Name}");
        var node = YamlLoader.Load(reading.File, System.Text.Encoding.UTF8.GetBytes(Default), reading.Problems);
        return node is not null && ReadValue(new(node, Name, this, reading)) is { } value
            ? value
            : throw new InvalidOperationException(string.Join('\n', reading.Problems));
    }
}
