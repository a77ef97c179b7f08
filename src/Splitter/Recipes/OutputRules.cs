using System.Collections.Immutable;

namespace Splitter.Recipes;

/// <summary>Kinds of files that an output folder may hold.</summary>
internal enum OutputKind
{
    /// <summary>Machine file.</summary>
    Tape,

    /// <summary>Pictures as SVG: every part, and the overview.</summary>
    Svg,

    /// <summary>Every stitch as text.</summary>
    Csv,

    /// <summary>The overview as PNG.</summary>
    Png,

    /// <summary>The finished piece and every part as thread, as SVG and PNG.</summary>
    Thread,

    /// <summary>The page beside the machine, for paper and screen.</summary>
    WorkSheet,

    /// <summary>The design and every field in true scale on paper, as PDF.</summary>
    Template,
}

/// <summary>Paper to print on.</summary>
internal enum Paper
{
    /// <summary>210 x 297 mm, ISO 216.</summary>
    A4,

    /// <summary>8.5 x 11 in.</summary>
    Letter,
}

/// <summary>A language of texts that people read.</summary>
internal enum SheetLanguage
{
    /// <summary>English.</summary>
    English,

    /// <summary>German.</summary>
    German,
}

/// <summary>How texts that people read write lengths.</summary>
internal enum LengthUnit
{
    /// <summary>Millimetres, thread in metres.</summary>
    Millimetres,

    /// <summary>Inches, thread in yards.</summary>
    Inches,
}

/// <summary>What is written, and where to.</summary>
internal sealed record OutputRules
{
    /// <summary>Relative to the recipe, with forward slashes.</summary>
    public required string Folder { get; init; }

    /// <summary>The kinds that are written; manifest and sums always are.</summary>
    public ImmutableArray<OutputKind> Files { get; init; } =
    [OutputKind.Tape, OutputKind.Svg, OutputKind.Csv, OutputKind.Png, OutputKind.Thread];

    /// <summary>What is printed on.</summary>
    public Paper Paper { get; init; }

    /// <summary>Of stop texts, work sheet and template.</summary>
    public SheetLanguage Language { get; init; }

    /// <summary>In stop texts, work sheet and template.</summary>
    public LengthUnit Lengths { get; init; }
}
