using System.Collections.Immutable;
using System.Text.Json.Nodes;
using Splitter.Recipes.Yaml;

namespace Splitter.Recipes.Language;

/// <summary>One word with a meaning of its own, or a value of another kind.</summary>
internal sealed class WordOr<T>(string word, T meaning, Kind<T> other) : Kind<T>
    where T : notnull
{
    internal string Word => word;

    internal override ImmutableArray<Kind> Parts => [other];

    internal override string Expects => $"{word} or {other.Expects}";

    internal override JsonObject ToSchema() => Schema.AnyOf(Schema.Words(word), other.ToSchema());

    internal override Maybe<T> Read(Given given) =>
        given.Node switch
        {
            ScalarNode scalar when scalar.Text.Trim(' ') == word => meaning,
            // A word that is not this one most likely meant it; a number is the other kind's affair.
            ScalarNode scalar when other is not WordOr<T> && !scalar.Text.Any(char.IsAsciiDigit) => given.RefuseForm(
                Expects
            ),
            _ => other.Read(given),
        };
}

/// <summary>Text, a list or a mapping: three ways to say one thing.</summary>
internal sealed class ByForm<T>(Kind<T> text, Kind<T> list, Kind<T> mapping) : Kind<T>
    where T : notnull
{
    internal override ImmutableArray<Kind> Parts => [text, list, mapping];

    internal override string Expects => $"{text.Expects}, {list.Expects}, or {mapping.Expects}";

    internal override JsonObject ToSchema() => Schema.AnyOf(text.ToSchema(), list.ToSchema(), mapping.ToSchema());

    internal override Maybe<T> Read(Given given) =>
        given.Node switch
        {
            ScalarNode { IsMissing: false } => text.Read(given),
            SequenceNode => list.Read(given),
            MappingNode => mapping.Read(given),
            _ => given.RefuseForm(Expects),
        };
}

/// <summary>A kind whose values are made into something else.</summary>
internal sealed class Made<TFrom, T>(Kind<TFrom> from, Func<TFrom, T> make) : Kind<T>
    where TFrom : notnull
    where T : notnull
{
    internal override ImmutableArray<Kind> Parts => [from];

    internal override string Expects => from.Expects;

    internal override JsonObject ToSchema() => from.ToSchema();

    internal override Maybe<T> Read(Given given) =>
        from.Read(given) is { Has: true, Value: var value } ? make(value) : default(Refused);
}
