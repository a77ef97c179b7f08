using System.Collections.Immutable;
using System.Text;
using System.Xml.Linq;
using Splitter.Cutting;
using Splitter.Outputs;
using Splitter.Parts;
using Splitter.Recipes;

namespace Splitter.Tests.Outputs.Sheets;

/// <summary>
/// Work sheets to look at: one of the parts made by hand, one of a small recipe from beginning to end.
/// </summary>
internal static class SheetSamples
{
    private const string Recipe = """
        splitter: 1
        title: "Two sails & a <mast>"
        artwork:
          shapes:
            - { wkt: "POLYGON ((10 190, 100 10, 100 190, 10 190))", id: mainsail, fill: "#14304f" }
            - { wkt: "POLYGON ((108 190, 108 120, 250 190, 108 190))", id: jib, fill: "#c23b2e" }
            - { wkt: "LINESTRING (104 4, 104 200)", id: mast, stroke: "#76584a", stroke-width: 2 mm }
            - { wkt: "POLYGON ((0 195, 260 195, 260 205, 0 205, 0 195))", id: sea, fill: "#2c6591" }
        threads: [{ name: "night & day", color: "#14304f" }]
        cloth: { size: 300 x 280 mm, artwork-at: [20 mm, 40 mm], folds: { upright: centre, level: 1 in from bottom } }
        hoops: [{ name: small, field: 130 x 180 mm, throat: { side: right } }]
        """;

    internal static Production Sails { get; } = MadeOf(Recipe + "\noutput: { files: [tape, worksheet] }\n");

    /// <summary>All of it in one hooping, and nothing said of the cloth.</summary>
    internal static Production One { get; } =
        MadeOf(
            """
            splitter: 1
            artwork: { shapes: [{ wkt: "POLYGON ((10 90, 60 10, 60 90, 10 90))", fill: "#14304f" }] }
            hoops: [{ name: small, field: 130 x 180 mm }]
            output: { files: [worksheet] }
            """
        );

    /// <summary>A cloth that is narrower than its hoop.</summary>
    internal static Production Strip { get; } = MadeOf(StripRecipe);

    /// <summary>Its parts overlap by more than a step across a line may be.</summary>
    internal static Production OverlappingStrip { get; } = MadeOf(StripRecipe + "\noverlap: { width: 2.5 mm }\n");

    private const string StripRecipe = """
        splitter: 1
        artwork: { shapes: [{ wkt: "LINESTRING (45 5, 45 300)", id: stem, stroke: "#c23b2e", stroke-width: 2 mm }] }
        cloth: { size: 100 x 320 mm, artwork-at: [5 mm, 8 mm], folds: { upright: centre, level: 1 in from bottom } }
        hoops: [{ name: small, field: 130 x 180 mm }]
        output: { files: [worksheet] }
        """;

    /// <summary>Many small fields on a large cloth, and little to sew in each.</summary>
    internal static Production Bedspread { get; } =
        MadeOf(
            """
            splitter: 1
            artwork:
              shapes:
                - { wkt: "LINESTRING (5 5, 595 5, 595 475, 5 475, 5 5)", stroke: "#14304f", stroke-width: 0.6 mm }
                - { wkt: "LINESTRING (5 5, 595 475, 5 475, 595 5)", stroke: "#14304f", stroke-width: 0.6 mm }
                - { wkt: "LINESTRING (5 240, 595 240)", stroke: "#14304f", stroke-width: 0.6 mm }
                - { wkt: "LINESTRING (300 5, 300 475)", stroke: "#14304f", stroke-width: 0.6 mm }
            hoops: [{ name: small, field: 110 x 110 mm }]
            output: { files: [worksheet] }
            """
        );

    internal static Production Segel { get; } =
        MadeOf(Recipe + "\noutput: { files: [tape, worksheet], language: de, lengths: in, paper: Letter }\n");

    /// <summary>Of the parts made by hand, so that what planning changes does not change it.</summary>
    internal static byte[] HandMadeIn(SheetLanguage language)
    {
        var recipe = HandMade.Recipe with
        {
            Output = HandMade.Recipe.Output with { Files = [OutputKind.WorkSheet], Language = language },
        };
        ImmutableArray<ImmutableArray<BodyStep>> bodies =
        [
            .. HandMade.Parts.Select(
                (part, i) => part.Steps.Where(s => s.Kind == StepKind.Body).Select(s => Body(s, i)).ToImmutableArray()
            ),
        ];
        var parts = PartBuilder.Build(recipe, HandMade.Drawing, HandMade.Plan, bodies);
        var files = OutputRenderer.Render(
            HandMade.Request,
            HandMade.Job with
            {
                Recipe = recipe,
            },
            HandMade.Plan,
            parts,
            []
        );
        return FileOf(files);
    }

    internal static byte[] FileOf(PartSet set) => FileOf(set.Files);

    internal static XElement PageOf(PartSet set) =>
        XDocument.Parse(Encoding.UTF8.GetString(FileOf(set)), LoadOptions.PreserveWhitespace).Root!;

    private static byte[] FileOf(IEnumerable<OutputFile> files) =>
        files.Single(f => f.Path.EndsWith("/worksheet.html", StringComparison.Ordinal)).Bytes.ToArray();

    private static Production MadeOf(string recipe)
    {
        var made = Pipeline.Make(new("sails.yaml", Encoding.UTF8.GetBytes(recipe), _ => default));
        Assert.True(made.Succeeded, string.Join("\n", made.Diagnostics));
        return made.Value;
    }

    private static BodyStep Body(Step step, int hooping)
    {
        var shape = HandMade.Drawing.Shapes[step.Thread == HandMade.Blue ? 0 : 1];
        var lines = step.Moves.Select(m => new Splitter.Geometry.Polyline([.. m.Block.Stitches.Select(s => s.At)]));
        Piece piece = new RunPiece
        {
            Shape = shape,
            Hooping = hooping,
            Lines = [.. lines],
        };
        return new(shape.Thread, [.. step.Moves.Select(m => (piece, m.Block))]);
    }
}
