using System.Collections.Immutable;
using System.Text;
using Splitter.Recipes.Keys;
using Splitter.Recipes.Language;

namespace Splitter.Recipes.Descriptions;

/// <summary>The language for people: every key in a table, a section for each mapping, as Markdown.</summary>
internal static class ReferencePage
{
    /// <summary>Keys that stand together in one mapping, and the paths at which it may stand.</summary>
    private sealed record Section(ImmutableArray<Key> Keys, ImmutableArray<string> Paths)
    {
        internal string Heading =>
            Paths is [""] ? "The recipe itself" : Words.List(Paths.Select(path => $"`{path}`"), "and");

        /// <summary>As common Markdown renderers make it of the heading: lower case, blanks as '-', no signs.</summary>
        internal string Anchor =>
            string.Concat(
                Heading
                    .ToLowerInvariant()
                    .Where(c => char.IsAsciiLetterOrDigit(c) || c is ' ' or '-')
                    .Select(c => c == ' ' ? '-' : c)
            );
    }

    internal static string Write()
    {
        var sections = Sections();
        var page = new StringBuilder(Head.ReplaceLineEndings("\n"));
        foreach (var section in sections)
        {
            page.Append($"\n## {section.Heading}\n\n");
            page.Append("| key | what it says | takes | if left out | example |\n| --- | --- | --- | --- | --- |\n");
            foreach (var key in section.Keys)
                page.Append(
                    $"| `{key.Name}` | {Cell(key.Says)} | {Cell(Takes(key.Kind, sections))} | "
                        + $"{Cell(LeftOut(key))} | {Example(key)} |\n"
                );
        }
        return page.ToString();
    }

    private const string Head = """
        # Keys of a recipe

        Made by `splitter schema --as page` from the definitions that the reader works with; a test holds it. What the
        keys do together, with an example, is in the [README](../README.md#the-recipe).

        A recipe is YAML. An unknown key is an error, and so is a value of another form, with an unknown unit, or out
        of range. Lengths have their unit, `mm`, `cm` or `in` (25.4 mm), angles `deg`, times `s` or `min`, percentages
        `%`; decimals have a point. Colours stand in quotation marks, since an open `#` begins a comment. Of YAML,
        anchors, aliases, tags and several documents in one file are refused.

        Where a recipe includes other files, what must be there may stand in one of those. Keys win over those of the
        same name in included files, mappings key by key; lists, too, except that the items of included files follow
        where a table says so, less those whose name or colour is taken.

        Editors that know JSON Schema check a recipe while it is written, with `splitter.schema.json` beside this page
        (`splitter schema` prints it). Where an editor heeds such a line, a recipe names it in a comment:
        `# yaml-language-server: $schema=splitter.schema.json`. The schema knows keys, forms, units and words;
        ranges, and what keys ask of each other, only `splitter` itself judges. It wants numbers and truth values
        without quotation marks.

        """;

    private static ImmutableArray<Section> Sections()
    {
        var found = new List<Section>();
        Collect(RecipeKeys.Group, "", found);
        return [.. found];
    }

    /// <summary>In the order of the keys; a mapping that stands at two paths is one section.</summary>
    private static void Collect(Kind kind, string path, List<Section> found)
    {
        if (!kind.Keys.IsEmpty)
        {
            var known = found.FindIndex(section => section.Keys == kind.Keys);
            if (known < 0)
                found.Add(new(kind.Keys, [path]));
            else
            {
                found[known] = found[known] with { Paths = found[known].Paths.Add(path) };
                return;
            }
        }
        foreach (var key in kind.Keys)
            Collect(key.Kind, path.Length == 0 ? key.Name : $"{path}.{key.Name}", found);
        foreach (var part in kind.Parts)
            Collect(part, part.Keys.IsEmpty || !kind.IsList ? path : $"{path}[]", found);
    }

    /// <summary>What a message says, but for mappings a link to their section.</summary>
    private static string Takes(Kind kind, ImmutableArray<Section> sections) =>
        sections.FirstOrDefault(s => s.Keys == kind.Keys) is { } own
            ? $"[keys with values](#{own.Anchor})"
            : kind.Parts.Aggregate(
                kind.Expects,
                (text, part) => text.Replace(part.Expects, Takes(part, sections), StringComparison.Ordinal)
            );

    private static string LeftOut(Key key) =>
        key.Required ? "it must be there"
        : key.Default is "{}" ? "the defaults of its keys"
        : key.Default is "[]" ? "none"
        : key.Default is { } value ? $"`{value}`"
        : key.Otherwise!;

    private static string Example(Key key) =>
        $"`{key.Name}: {key.Example.Replace("|", "\\|", StringComparison.Ordinal)}`";

    private static string Cell(string text) => text.Replace("|", "\\|", StringComparison.Ordinal);
}
