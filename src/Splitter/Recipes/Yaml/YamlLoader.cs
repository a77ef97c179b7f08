using System.Collections.Immutable;
using Splitter.Diagnostics;
using YamlDotNet.Core.Events;

namespace Splitter.Recipes.Yaml;

/// <summary>
/// YAML to a tree of nodes that know their places. Of YAML a recipe uses mappings, sequences and text; what could
/// surprise (anchors, aliases, tags, several documents, keys that are not text) is refused.
/// </summary>
internal sealed class YamlLoader
{
    private readonly string file;
    private readonly List<Diagnostic> problems;
    private readonly ImmutableArray<ParsingEvent> events;
    private int next;

    private YamlLoader(string file, ImmutableArray<ParsingEvent> events, List<Diagnostic> problems)
    {
        this.file = file;
        this.events = events;
        this.problems = problems;
    }

    /// <summary>The tree, or null when the file cannot be understood far enough to look for further mistakes.</summary>
    internal static Node? Load(string file, ReadOnlySpan<byte> bytes, List<Diagnostic> problems)
    {
        var read = from text in RecipeText.Decode(file, bytes) from events in YamlEvents.Read(file, text) select events;
        problems.AddRange(read.Diagnostics);
        return read.TryGet(out var found) ? new YamlLoader(file, found, problems).Document() : null;
    }

    private Node? Document()
    {
        var documents = events.OfType<DocumentStart>().ToList();
        if (documents.Count == 0)
        {
            problems.Add(RecipeFileProblems.Empty(file));
            return null;
        }
        if (documents.Count > 1)
            problems.Add(RecipeFileProblems.SecondDocument(At(documents[1])));
        next = events.IndexOf(documents[0]) + 1;
        return Value(At(documents[0]));
    }

    /// <param name="owner">Where the key or the dash stands that the value belongs to.</param>
    private Node Value(Place owner)
    {
        var found = events[next++];
        if (found is AnchorAlias alias)
        {
            problems.Add(RecipeFileProblems.Alias(At(found), alias.Value.Value));
            return new RefusedNode(At(found));
        }

        if (found is NodeEvent { Anchor.IsEmpty: false } anchored)
            problems.Add(RecipeFileProblems.Anchor(At(found), anchored.Anchor.Value));
        if (found is NodeEvent { Tag.IsEmpty: false } tagged)
            problems.Add(RecipeFileProblems.Tag(At(found), tagged.Tag.ToString()));

        return found switch
        {
            Scalar scalar => Text(scalar, owner),
            SequenceStart { Style: SequenceStyle.Flow } => Sequence(At(found)),
            SequenceStart => Sequence(owner),
            MappingStart { Style: MappingStyle.Flow } => Mapping(At(found)),
            _ => Mapping(owner),
        };
    }

    private ScalarNode Text(Scalar scalar, Place owner)
    {
        var quoted = scalar.Style != YamlDotNet.Core.ScalarStyle.Plain;
        return new(scalar.Value.Length == 0 && !quoted ? owner : At(scalar), scalar.Value, quoted);
    }

    private SequenceNode Sequence(Place place)
    {
        var items = ImmutableArray.CreateBuilder<Node>();
        while (events[next] is not SequenceEnd)
            items.Add(Value(At(events[next])));
        next++;
        return new(place, items.ToImmutable());
    }

    private MappingNode Mapping(Place place)
    {
        var entries = ImmutableArray.CreateBuilder<Entry>();
        var first = new Dictionary<string, Place>(StringComparer.Ordinal);
        while (events[next] is not MappingEnd)
        {
            var at = At(events[next]);
            var key = Value(at);
            var value = Value(at);
            if (key is not ScalarNode { Text: var name })
                problems.Add(RecipeFileProblems.KeyNotText(at));
            else if (first.TryGetValue(name, out var before))
                problems.Add(RecipeFileProblems.DuplicateKey(at, name, before));
            else
            {
                first.Add(name, at);
                entries.Add(new(name, at, value));
            }
        }
        next++;
        return new(place, entries.ToImmutable());
    }

    private Place At(ParsingEvent found) => YamlEvents.At(file, found.Start);
}
