using System.Collections.Immutable;
using System.Text.Json;
using Splitter.Outputs.Templates;
using Splitter.Recipes;
using Drawing = Splitter.Artwork.Drawing;

namespace Splitter.Tests.Outputs.Templates;

/// <summary>A drawing like an L over several sheets, so that one of them is empty; printed once for all tests.</summary>
public sealed class HedgeTemplate : IDisposable
{
    private const string Hedge = """
        splitter: 1
        title: Long hedge (ours)
        artwork:
          shapes:
            - { wkt: "LINESTRING (20 20, 20 480, 380 480)", id: hedge, stroke: "#3f6f52", stroke-width: 3 mm }
            - { wkt: "POLYGON ((60 420, 90 400, 120 420, 90 440, 60 420))", id: leaf, fill: "#a8b557" }
        hoops: [{ name: small, field: 130 x 180 mm }]
        cloth:
          size: 440 x 560 mm
          artwork-at: [20 mm, 20 mm]
          folds: { upright: 60 mm from left, level: 1 in from bottom }
        output: { files: [tape, template] }
        """;

    private static readonly Lazy<Production> Production = new(() =>
        Pipeline.Make(new("hedge.yaml", System.Text.Encoding.UTF8.GetBytes(Hedge), _ => default) { Jobs = 2 }).Value
    );

    private readonly Lazy<PrintedPdf> a4 = new(() => new(Write(Paper.A4)));
    private readonly Lazy<PrintedPdf> letter = new(() => new(Write(Paper.Letter)));

    internal static PartSet Set => Production.Value.Sets.Single();

    internal static byte[] Write(Paper paper) => Template.Write(On(paper), new(Drawing, Set.Plan));

    internal static ImmutableArray<Tiling> Tilings(Paper paper) =>
        Template.Tilings(
            Production.Value.Job.Recipe.Cloth,
            new(Drawing, Set.Plan),
            SheetForm.Of(paper),
            new(On(paper), Set.Plan.Hoop)
        );

    internal static Drawing Drawing => Production.Value.Job.Drawing;

    internal static JsonElement Manifest { get; } =
        JsonDocument.Parse(Set.Files.Single(f => f.Path == "small/manifest.json").Bytes).RootElement;

    internal PrintedPdf Printed(Paper paper) => (paper == Paper.A4 ? a4 : letter).Value;

    /// <summary>The cover comes first.</summary>
    internal static int PageOf(Sheet sheet) => sheet.Number + 1;

    public void Dispose()
    {
        foreach (var printed in new[] { a4, letter }.Where(p => p.IsValueCreated))
            printed.Value.Dispose();
    }

    private static Recipe On(Paper paper)
    {
        var recipe = Production.Value.Job.Recipe;
        return recipe with { Output = recipe.Output with { Paper = paper } };
    }
}
