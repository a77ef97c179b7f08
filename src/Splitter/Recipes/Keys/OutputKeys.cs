using System.Collections.Immutable;
using Splitter.Recipes.Language;

namespace Splitter.Recipes.Keys;

/// <summary>The keys of <c>output</c>.</summary>
internal static class OutputKeys
{
    internal static readonly Key<string> Folder = new("folder", new FolderKind())
    {
        Says = "Where parts are written, relative to the recipe; each hoop has a folder in it.",
        Example = "parts/bay",
        Otherwise = "parts/ and the recipe's file name without its extension",
        IsOwn = true,
    };

    internal static readonly Key<ImmutableArray<OutputKind>> Files = new(
        "files",
        new ListKind<OutputKind>(
            new WordKind<OutputKind>([
                ("tape", OutputKind.Tape),
                ("svg", OutputKind.Svg),
                ("csv", OutputKind.Csv),
                ("png", OutputKind.Png),
                ("thread", OutputKind.Thread),
                ("worksheet", OutputKind.WorkSheet),
                ("template", OutputKind.Template),
            ]),
            1,
            7
        )
    )
    {
        Says = "Kinds of files; manifest and sums are always written. Without worksheet there is no page to sew by.",
        Example = "[tape, svg, png, thread, worksheet]",
        Default = "[tape, svg, csv, png, thread]",
    };

    internal static readonly Key<Paper> Paper = new(
        "paper",
        new WordKind<Paper>([("A4", Recipes.Paper.A4), ("Letter", Recipes.Paper.Letter)])
    )
    {
        Says = "Paper that work sheet and templates are printed on.",
        Example = "Letter",
        Default = "A4",
    };

    internal static readonly Key<SheetLanguage> Language = new(
        "language",
        new WordKind<SheetLanguage>([("en", SheetLanguage.English), ("de", SheetLanguage.German)])
    )
    {
        Says = "Language of what the person reads at the machine: English or German.",
        Example = "de",
        Default = "en",
    };

    internal static readonly Key<LengthUnit> Lengths = new(
        "lengths",
        new WordKind<LengthUnit>([("mm", LengthUnit.Millimetres), ("in", LengthUnit.Inches)])
    )
    {
        Says = "Unit of lengths that the person reads at the machine.",
        Example = "in",
        Default = "mm",
    };

    /// <summary>An empty folder stands for the default, which only the recipe's name can tell.</summary>
    internal static readonly GroupKind<OutputRules> Group = new(
        [Folder, Files, Paper, Language, Lengths],
        group =>
            new()
            {
                Folder = group.OrNull(Folder) ?? "",
                Files = group.Get(Files),
                Paper = group.Get(Paper),
                Language = group.Get(Language),
                Lengths = group.Get(Lengths),
            }
    );
}
