using System.Collections.Immutable;
using System.Text;
using Splitter.Artwork;
using Splitter.Diagnostics;
using Splitter.Geometry;
using Splitter.Recipes;
using Splitter.Recipes.Keys;
using Splitter.Recipes.Language;
using Splitter.Recipes.Yaml;
using static System.FormattableString;

namespace Splitter.Starting;

/// <summary>
/// A first recipe for a drawing: it says what it found and why it chose what it says, and makes parts without another
/// word. What is right for cloth, thread and taste is for the person to change.
/// </summary>
internal static class StarterRecipe
{
    /// <summary>The nominal fields of the 5 x 7 in and the 8 x 12 in hoop, mm.</summary>
    private static readonly ImmutableArray<(string Name, int Width, int Height)> UsualHoops =
    [
        ("small", 130, 180),
        ("large", 200, 300),
    ];

    /// <param name="name">The recipe's file name without its extension.</param>
    /// <param name="artwork">Its path is the one that the recipe gives it.</param>
    /// <param name="width">Of the finished work, µm; null for the one that the drawing states.</param>
    internal static Result<string> Write(string name, SourceFile artwork, int? width) =>
        from survey in Survey.Of(artwork, width)
        from text in Result.Of(
            Checked(Text(YamlText.IsPlain(name) ? name : "recipe", artwork.Path, survey)),
            Guessed(artwork, survey)
        )
        select text;

    /// <summary>A finger's width or a bedspread may come of a drawing without units.</summary>
    private static ImmutableArray<Diagnostic> Guessed(SourceFile artwork, Survey survey) =>
        survey.WidthFrom switch
        {
            WidthSource.Pixels or WidthSource.Nothing =>
            [
                ArtworkProblems.WidthGuessed(
                    Place.Whole(artwork.Path),
                    survey.Width,
                    survey.WidthFrom == WidthSource.Pixels
                        ? "the drawing states no unit, and each of its units is taken for 1/96 inch"
                        : "the drawing states no width that can be sewn"
                ),
            ],
            _ => [],
        };

    private static string Text(string name, string artwork, Survey survey)
    {
        var text = new StringBuilder();
        var threads = survey.IsStitched
            ? [.. survey.Colours.Select((_, i) => Invariant($"block {i + 1}"))]
            : ColourNames.Of(survey.Colours);
        Head(text, name, artwork, survey);
        Artwork(text, artwork, survey, threads);
        Threads(text, survey, threads);
        text.Append(Cloth.ReplaceLineEndings("\n"));
        Hoops(text, survey);
        text.Append(Rest.ReplaceLineEndings("\n"));
        text.Append($"output:\n  folder: {YamlText.Quoted(Folder(name))} # a folder for each hoop in it\n");
        text.Append(
            "  # Machine files, pictures and the work sheet; add template for a pattern in true scale to print.\n"
        );
        text.Append("  files: [tape, svg, png, thread, worksheet]\n");
        return text.ToString();
    }

    private static string Folder(string name) =>
        PortablePath.Fault($"parts/{name}") is null ? $"parts/{name}" : "parts";

    private static void Head(StringBuilder text, string name, string artwork, Survey survey)
    {
        text.Append(
            Invariant(
                    $"""
                    # {name}: started from {artwork}, which has {Contents(survey)}.
                    # It can be made as it is; look at the plan first, then change what does not suit you.
                    #
                    #   splitter plan RECIPE    fields, joins and how well they will fit, before anything is stitched
                    #   splitter make RECIPE    machine files, pictures and the work sheet
                    #
                    # 'splitter schema --as page' lists all keys. Lengths may be mm, cm or in.

                    splitter: 1
                    title: {YamlText.Quoted(name)}


                    """
                )
                .ReplaceLineEndings("\n")
        );
    }

    private static string Contents(Survey survey)
    {
        var colours = survey.Colours.Length;
        if (!survey.IsStitched)
            return $"{Drawn<DrawnArea>("area")} and {Drawn<DrawnLine>("line")} in "
                + $"{SewProposals.Count(colours, "colour")}";
        var stitches = SewProposals.Count(survey.Stitches, "stitch", "stitches");
        var sewn = $"{Sewn(SewAs.Fill, "fill")}, {Sewn(SewAs.Satin, "satin")} and {Sewn(SewAs.Run, "line")}";
        return $"{stitches} in {SewProposals.Count(colours, "colour block")}: {sewn}";

        string Drawn<T>(string what) => SewProposals.Count(survey.Elements.Count(e => e.Element is T), what);
        string Sewn(SewAs sewn, string what) => SewProposals.Count(survey.Elements.Count(e => e.Sewn == sewn), what);
    }

    private static void Artwork(StringBuilder text, string artwork, Survey survey, ImmutableArray<string> threads)
    {
        text.Append($"artwork:\n  file: {YamlText.Quoted(artwork)}\n");
        if (survey is { IsStitched: true, WidthFrom: WidthSource.Drawing })
            text.Append(
                Invariant($"  # {Units.ToMillimetres(survey.Width)} x {Units.ToMillimetres(survey.Height)} mm; ")
                    + "'width' makes it up to a tenth wider or narrower, its stitches with it.\n"
            );
        else
            text.Append(
                Invariant($"  width: {Units.ToMillimetres(survey.Width)} mm # finished ")
                    + Invariant($"width{Said(survey.WidthFrom)}; the height follows: ")
                    + Invariant($"{Units.ToMillimetres(survey.Height):0.#} mm\n")
            );
        var rules = SewProposals.For(survey, threads);
        text.Append(survey.IsStitched ? StitchesStay : HowSewn);
        text.Append(rules.IsEmpty ? "  sew: []\n" : "  sew:\n");
        foreach (var rule in rules)
        {
            foreach (var line in rule.Comment)
                text.Append($"    # {line}\n");
            text.Append($"    - match: {rule.Match}\n");
            foreach (var key in rule.Keys)
                text.Append($"      {key}\n");
        }
    }

    private const string HowSewn =
        "\n  # How things are sewn: the first rule that fits a shape is the one that counts. Without a rule, areas\n"
        + "  # are filled with rows, narrow ones and strokes from 1 mm are satin, finer strokes a line of stitches.\n";

    private const string StitchesStay =
        "\n  # Every stitch stays where it is. Satin columns and what is no longer than 40 mm stay whole where that\n"
        + "  # takes no hooping more. A rule with 'keep-whole: true' has fields placed so whatever it takes, one with\n"
        + "  # 'keep-whole: false' lets seams cut: 'id: block-2' each thing of a colour block, 'class: satin' (fill,\n"
        + "  # run) each thing that is sewn so.\n";

    private const string ThreadOfColour =
        "\n# One line a spool: write what stands on yours. A colour of the drawing is sewn with the thread that has\n"
        + "# exactly that colour.\nthreads:\n";

    private const string ThreadOfBlock =
        "\n# A tape has no colours: one thread for each colour block, in sewing order. Write what stands on your\n"
        + "# spools, and their colours. One comes again? List it once, and name all in sewing order:\n"
        + "# 'blocks: [sea, sand, sea]' in 'artwork'.\nthreads:\n";

    private static string Said(WidthSource from) =>
        from switch
        {
            WidthSource.Drawing => ", as the drawing states it",
            WidthSource.Pixels => ": the drawing states no unit, so each of its units is taken for 1/96 inch",
            WidthSource.Nothing => ": the drawing states none that can be sewn, so choose yours",
            _ => "",
        };

    private static void Threads(StringBuilder text, Survey survey, ImmutableArray<string> threads)
    {
        text.Append(survey.IsStitched ? ThreadOfBlock : ThreadOfColour);
        foreach (var (colour, name) in survey.Colours.Zip(threads).Take(RecipeKeys.MostThreads))
            text.Append($"  - {{ name: {name}, color: \"{colour}\" }}\n");
    }

    private static void Hoops(StringBuilder text, Survey survey)
    {
        text.Append(
            "\n# What the machine can sew in each hoop: measure, or look it up in its manual. Each hoop gets a "
                + "set of parts;\n"
        );
        text.Append("# strike those that you do not have.\nhoops:\n");
        foreach (var (name, width, height) in UsualHoops)
        {
            bool Fits(int across, int down) =>
                survey.Width <= (across - 6) * Units.Millimetre && survey.Height <= (down - 6) * Units.Millimetre;
            var whole = Fits(width, height) || Fits(height, width) ? " # the whole drawing fits at this width" : "";
            text.Append(Invariant($"  - {{ name: {name}, field: {width} x {height} mm }}{whole}\n"));
        }
    }

    private const string Cloth = """

        cloth:
          # The artwork in the middle and 50 mm around it; the work sheet says how much that is. Yours is cut already?
          # Write its size, such as 400 x 500 mm.
          size: auto
          artwork-at: centre # or where the drawing's top left corner lies, from the cloth's: [60 mm, 80 mm]
          # Fold the cloth in half both ways, with your fingers, no iron: the first hooping sews lines for these folds.
          folds: { upright: centre, level: centre }
          color: "#f4efe4" # in pictures
          # How much it gives in the hoop: firm woven cloth with a fusible backing (common practice, no source). The
          # warp runs upright. Give soft cloth more; joins are made as wide as it needs.
          stretch: { warp: 0.1 %, weft: 0.1 %, bias: 0.3 %, warp-direction: 90 deg }

        """;

    private const string Rest = """

        fields:
          place: fewest # every hooping is a chance to be a little off
          clearance: 3 mm # stitches stay this far inside the field

        overlap:
          width: auto # as wide as the expected misfit needs
          seams: least-visible # or straight
          edges: interleaved # every other row reaches further, so that no ridge shows

        registration:
          accuracy: 0.3 mm # how closely you set a corner over its tack; measure it on a scrap
          corners: { count: 3, arm: 8 mm }
          alignment: cross # small crosses, sewn first in every later part, to look at before anything else


        """;

    /// <summary>What is started here can be read, or it is our mistake.</summary>
    private static string Checked(string text)
    {
        var read = RecipeReader.Read("started.yaml", Encoding.UTF8.GetBytes(text));
        return read.Succeeded ? text : throw new InvalidOperationException(string.Join('\n', read.Diagnostics));
    }
}
