using System.Collections.Immutable;
using Splitter.Diagnostics;

namespace Splitter.Recipes.Yaml;

/// <summary>A value as the file writes it, not yet understood. A block of lines stands where its key stands.</summary>
internal abstract record Node(Place Place);

/// <summary>Text.</summary>
/// <param name="Quoted">In quotation marks or as a block, so that even an empty text was written on purpose.</param>
internal sealed record ScalarNode(Place Place, string Text, bool Quoted) : Node(Place)
{
    /// <summary>The key has no value at all.</summary>
    internal bool IsMissing => Text.Length == 0 && !Quoted;
}

/// <summary>Values in order.</summary>
internal sealed record SequenceNode(Place Place, ImmutableArray<Node> Items) : Node(Place);

/// <summary>Keys with values, in the file's order, no key twice.</summary>
internal sealed record MappingNode(Place Place, ImmutableArray<Entry> Entries) : Node(Place);

/// <summary>A value that has been refused already; nobody complains about it again.</summary>
internal sealed record RefusedNode(Place Place) : Node(Place);

/// <summary>A key with its value.</summary>
internal sealed record Entry(string Key, Place KeyPlace, Node Value);
