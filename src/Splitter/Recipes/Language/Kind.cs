using System.Collections.Immutable;
using System.Text.Json.Nodes;
using Splitter.Recipes.Yaml;

namespace Splitter.Recipes.Language;

/// <summary>A kind of value: what it may look like, for the reader and for whoever describes the language.</summary>
internal abstract class Kind
{
    /// <summary>A phrase that completes "takes …": <c>a length from 0.2 mm to 5 mm</c>.</summary>
    internal abstract string Expects { get; }

    /// <summary>The same for editors: JSON Schema 2020-12 of the value as YAML's core schema reads it.</summary>
    internal abstract JsonObject ToSchema();

    /// <summary>
    /// What counts of two values, the second one from an included file: the first, unless a kind says otherwise.
    /// </summary>
    internal virtual Node Merge(Node own, Node included) => own;

    /// <summary>The keys of a mapping.</summary>
    internal virtual ImmutableArray<Key> Keys => [];

    /// <summary>Its parts are the items of a list.</summary>
    internal virtual bool IsList => false;

    /// <summary>The kinds that it is made of: a list's item, the alternatives of a choice.</summary>
    internal virtual ImmutableArray<Kind> Parts => [];
}

/// <summary>A kind whose values become a <typeparamref name="T"/>.</summary>
internal abstract class Kind<T> : Kind
    where T : notnull
{
    /// <summary>The value, or nothing after its mistakes were reported.</summary>
    internal abstract Maybe<T> Read(Given given);
}

/// <summary>A kind that is written as text.</summary>
internal abstract class ScalarKind<T> : Kind<T>
    where T : notnull
{
    internal sealed override Maybe<T> Read(Given given) =>
        given.Node is ScalarNode { IsMissing: false } scalar
            ? ReadText(scalar.Text.Trim(' '), given)
            : given.RefuseForm(Expects);

    /// <param name="text">Never missing, though it may be empty in quotation marks.</param>
    internal abstract Maybe<T> ReadText(string text, Given given);
}
