using System.Text;
using Splitter.Cutting;
using Splitter.Parts;
using Splitter.Stitching;
using Splitter.Stitching.Density;
using Xunit.Abstractions;

namespace Splitter.Tests.EndToEnd;

/// <summary>
/// Every part is decoded from its tape by a second reader, laid back on the drawing by the manifest alone, and drawn
/// 0.4 mm wide; <c>rsvg-convert</c> (librsvg), an independent renderer, draws both the thread and the artwork.
/// </summary>
public sealed class CoverageTests(ITestOutputHelper output)
{
    private const double Covered = 0.97;
    private const double Spilled = 0.03;
    private const double Coloured = 0.95;

    /// <summary>More than the usual limit, on this share of square millimetres at most.</summary>
    private const double TooThick = 3,
        Thick = 0.005;

    public static TheoryData<string, string> Recipes
    {
        get
        {
            var all = new TheoryData<string, string>();
            foreach (var (recipe, hoop) in StitchSubject.Recipes)
                all.Add(recipe, hoop);
            return all;
        }
    }

    public static TheoryData<string> Icons =>
        new(
            Directory
                .GetFiles(Repository.Path("tests", "Splitter.Tests", "Icons"), "*.svg")
                .Select(f => Path.GetFileName(f)!)
                .Order(StringComparer.Ordinal)
        );

    [SkippableTheory]
    [MemberData(nameof(Recipes))]
    public void TheRecipesAreCoveredAndNotTooThick(string recipe, string hoop)
    {
        var layers = Layers(Check(StitchSubject.OfRecipe(recipe, hoop), () => Examples.Made(recipe, hoop)));
        var thick = layers.Count(l => l > TooThick) / (double)layers.Count;
        output.WriteLine(FormattableString.Invariant($"above {TooThick} layers {thick:P2}, most {layers.Max():0.0}"));
        Assert.InRange(thick, 0, Thick);
    }

    /// <summary>On every square millimetre that has thread, counted as the warning counts them.</summary>
    private static List<double> Layers(Production made)
    {
        var shapes = made.Job.Drawing.Shapes.ToDictionary(s => s.Id);
        var grid = ClothLayers.Of([
            .. from part in made.Sets.Single().Parts
            from step in part.Steps
            where step.Kind == StepKind.Body
            from move in step.Moves
            let piece = new RunPiece
            {
                Shape = shapes[move.Block.Of],
                Hooping = 0,
                Lines = [],
            }
            select new SewnPiece(piece, [move.Block]),
        ]);
        return [.. grid.Squares.Select(grid.LayersOn).Where(l => l > 0)];
    }

    public static TheoryData<string, string> Drawings
    {
        get
        {
            var all = new TheoryData<string, string>();
            foreach (var (folder, name) in StitchSubject.Drawings)
                all.Add(folder, name);
            return all;
        }
    }

    [SkippableTheory]
    [MemberData(nameof(Drawings))]
    public void OpenDrawingsAreCovered(string folder, string name) => Check(StitchSubject.OfDrawing(folder, name));

    [SkippableTheory]
    [MemberData(nameof(Icons))]
    public void OpenIconsAt200MillimetresAreCovered(string icon)
    {
        var file = Repository.Path("tests", "Splitter.Tests", "Icons", icon);
        var recipe = $$"""
            splitter: 1
            artwork: { file: {{icon}}, width: 200 mm }
            hoops: [{ name: small, field: 130 x 180 mm }]
            output: { folder: parts, files: [tape] }
            """;
        var request = new Request("icon.yaml", Encoding.UTF8.GetBytes(recipe), _ => new(File.ReadAllBytes(file), null));
        Check(new(icon, request, File.ReadAllText(file)));
    }

    /// <summary>A leaf along its curved rib and a sail along a line of three points, in one part and in several.</summary>
    [SkippableTheory]
    [InlineData("200 x 300 mm")]
    [InlineData("100 x 130 mm")]
    public void RowsAlongGuidesCoverTheirShapes(string field)
    {
        const string Artwork = """
            <svg xmlns="http://www.w3.org/2000/svg" width="140mm" height="210mm" viewBox="0 0 140 210">
              <path id="leaf" fill="#2f6b3a" d="M10 100 C 16 60 52 22 120 12 C 128 62 92 108 44 112 C 28 113 16 108 10 100 Z"/>
              <path id="sail" fill="#c23b2e" d="M10 204 C 26 176 34 150 32 118 C 70 128 112 158 128 196 C 90 188 50 190 10 204 Z
                M 62 160 a 6 6 0 1 0 12 0 a 6 6 0 1 0 -12 0 Z"/>
              <path id="rib" fill="none" stroke="#c8d8a0" stroke-width="1.6" d="M10 100 C 30 62 70 36 120 12"/>
            </svg>
            """;
        var recipe = $$"""
            splitter: 1
            artwork:
              file: bay.svg
              sew:
                - { match: { id: leaf }, guide: rib }
                - { match: { id: sail }, guide: "LINESTRING (24 150, 76 156, 104 194)" }
            hoops: [{ name: a, field: {{field}} }]
            output: { folder: parts, files: [tape] }
            """;
        var svg = Encoding.UTF8.GetBytes(Artwork);
        Check(new(field, new("guides.yaml", Encoding.UTF8.GetBytes(recipe), _ => new(svg, null)), Artwork));
    }

    private Production Check(StitchSubject subject) =>
        Check(
            subject,
            () =>
            {
                var made = Pipeline.Make(subject.Request);
                Assert.True(made.Succeeded, string.Join("\n", made.Diagnostics));
                return made.Value;
            }
        );

    private Production Check(StitchSubject subject, Func<Production> make)
    {
        Skip.IfNot(Renderer.IsThere, "rsvg-convert is not installed (Debian package librsvg2-bin).");
        var made = make();
        var (covered, spilled, coloured) = Agreement.Of(SewnCloth.Of(made.Sets.Single()), subject.Artwork);
        var figures = FormattableString.Invariant(
            $"{subject.Name}: covered {covered:P2}, spilled {spilled:P2}, colour {coloured:P2}"
        );
        output.WriteLine(figures);
        Assert.True(covered >= Covered, figures);
        Assert.True(spilled <= Spilled, figures);
        Assert.True(coloured >= Coloured, figures);
        return made;
    }
}
