using YamlDotNet.Core.Events;

namespace Splitter.Recipes.Yaml;

/// <summary>
/// Checks that events nest as they should. The parser lets some broken files pass with a key that has no value
/// (<c>- ? :</c>), and whoever builds a tree must be able to trust the events.
/// </summary>
internal sealed class Nesting
{
    private readonly Stack<(Form Form, int Children)> open = new();

    private enum Form
    {
        Document,
        Sequence,
        Mapping,
    }

    /// <summary>How many sequences and mappings are open.</summary>
    internal int Depth => Math.Max(0, open.Count - 1);

    /// <summary>All that was opened has been closed.</summary>
    internal bool IsClosed => open.Count == 0;

    /// <summary>Takes the next event; false when it cannot stand here.</summary>
    internal bool Accepts(ParsingEvent found)
    {
        if (found is NodeEvent or AnchorAlias)
        {
            if (!open.TryPop(out var parent))
                return false;
            open.Push(parent with { Children = parent.Children + 1 });
        }

        switch (found)
        {
            case DocumentStart:
                open.Push((Form.Document, 0));
                return open.Count == 1;
            case SequenceStart:
                open.Push((Form.Sequence, 0));
                return true;
            case MappingStart:
                open.Push((Form.Mapping, 0));
                return true;
            case SequenceEnd:
                return open.TryPop(out var sequence) && sequence.Form == Form.Sequence;
            case MappingEnd:
                return open.TryPop(out var mapping) && mapping.Form == Form.Mapping && mapping.Children % 2 == 0;
            case DocumentEnd:
                return open.TryPop(out var document) && document is { Form: Form.Document, Children: 1 };
            default:
                return true;
        }
    }
}
