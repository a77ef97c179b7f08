using System.Collections.Immutable;
using System.Globalization;
using System.Text;
using Splitter.Cutting;
using Splitter.Diagnostics;
using Splitter.Stitching;
using Splitter.Stitching.Density;
using Splitter.Tests.Artwork.Tapes;

namespace Splitter.Tests.Stitching.Density;

public sealed class LayerCheckTests
{
    private static Result<Production> Make(string shapes, string more = "", int jobs = 1)
    {
        var recipe = $$"""
            splitter: 1
            artwork:
              shapes:
            {{shapes}}
            hoops: [{ name: small, field: 130 x 180 mm }]
            {{more}}
            output: { folder: parts, files: [tape] }
            """;
        return Pipeline.Make(new("stack.yaml", Encoding.UTF8.GetBytes(recipe), _ => default) { Jobs = jobs });
    }

    private static ImmutableArray<SewnPiece> Sewn(Production made) =>
        Stitcher.Stitch(Cutter.Cut(made.Job.Drawing, made.Sets[0].Plan, made.Job.Recipe.Overlap), 1);

    /// <summary>Lines of 20 mm over each other, all in one row of squares.</summary>
    private static string Lines(int count) =>
        string.Join(
            '\n',
            Enumerable
                .Range(1, count)
                .Select(i =>
                    $$"""    - { wkt: "LINESTRING (10 10.5, 30 10.5)", id: line-{{i}}, stroke: "#14304f", stroke-width: 0.4 mm }"""
                )
        );

    /// <summary>On cloth that bears two layers, where three parts meet: the recipe says how far they overlap there.</summary>
    [Fact]
    public void OverlapsThatAreAskedForAreToldAsTheCause()
    {
        var made = Make(
            """    - { wkt: "POLYGON ((0 0, 250 0, 250 350, 0 350, 0 0))", id: sea, fill: "#14304f" }""",
            "overlap: { width: 6 mm }\ncloth: { most-layers: 2 }"
        );
        var told = Assert.Single(made.Diagnostics, d => d.Code == "SPL3030");
        Assert.Contains("write a smaller 'overlap.width', or leave it out", told.Message, StringComparison.Ordinal);
    }

    /// <summary>
    /// A tape's fill with much underlay at both ends, and none where two parts meet: its maker wanted that.
    /// </summary>
    [Fact]
    public void HowDenselyATapeSewsByItselfIsNotTold()
    {
        var tape = new HandTape();
        foreach (var x in (ReadOnlySpan<int>)[88, 0])
            for (var i = 0; i < 8; i++)
                tape.Run(x, 40).Run(x, 0).Rows(x, 0, 12, 40, 0.9);
        var made = HandTape.Make(tape.Run(0, 40).Run(0, 0).Rows(0, 0, 100, 40).Bytes, 1, 70, 70);
        Assert.Equal(2, made.Value.Sets.Single().Parts.Length);
        Assert.Single(made.Value.Job.Drawing.Shapes);
        Assert.Empty(made.Diagnostics);
    }

    /// <summary>Rows that are more than three layers all over: that is told where parts overlap alone.</summary>
    [Fact]
    public void WhereOverlapsMakeATapeTooDenseIsTold()
    {
        var made = HandTape.Make(new HandTape().Rows(0, 0, 100, 40, 0.11).Bytes, 1, 70, 70);
        var join = Assert.Single(made.Value.Sets.Single().Plan.Joins);
        var told = Assert.Single(made.Diagnostics, d => d.Code == "SPL3030");
        Assert.Contains("(parts A, B)", told.Message, StringComparison.Ordinal);
        Assert.Contains("write a smaller 'overlap.width'", told.Message, StringComparison.Ordinal);
        var squares = int.Parse(told.Message.Split(" layers on ")[1].Split(" mm²")[0], CultureInfo.InvariantCulture);
        Assert.InRange(squares, 40, 40 * ((2 * join.Overlap / 1000) + 5));
    }

    /// <summary>However densely it is sewn, one fill or one satin column is one layer, and so is one pass of a run.</summary>
    [Theory]
    [InlineData("POLYGON ((0 0, 40 0, 40 40, 0 40, 0 0))", "fill: \"#14304f\"", "fill", "0.40 mm", 20)]
    [InlineData("POLYGON ((0 0, 40 0, 40 40, 0 40, 0 0))", "fill: \"#14304f\"", "fill", "0.55 mm", 20)]
    [InlineData("LINESTRING (0 4, 40 4)", "stroke: \"#14304f\", stroke-width: 5 mm", "satin", "0.40 mm", 4)]
    [InlineData("LINESTRING (0 4, 40 4)", "stroke: \"#14304f\", stroke-width: 5 mm", "satin", "0.55 mm", 4)]
    public void OneLayerIsOne(string wkt, string paint, string kind, string spacing, double y)
    {
        var told = Make(
            $$"""
                - { wkt: "{{wkt}}", id: one, {{paint}} }
              sew: [{ match: { id: one }, as: {{kind}}, row-spacing: {{spacing}}, underlay: none, pull: 0 mm }]
            """
        );
        var grid = ClothLayers.Of(Sewn(told.Value));
        // Twenty squares in the middle, where nothing ends: rows cross one of them two times or three.
        var middle = grid
            .Squares.Where(s => s.Column is >= 10 and < 30 && s.Row >= (int)y - 2 && s.Row < (int)y + 2)
            .ToList();
        Assert.Equal(80, middle.Count);
        Assert.Equal(1, middle.Average(grid.LayersOn), 1);
    }

    [Fact]
    public void RunsOverEachOtherAreCountedAndNamed()
    {
        Assert.Empty(Make(Lines(3)).Diagnostics);
        var four = Assert.Single(Make(Lines(4)).Diagnostics);
        Assert.Equal((Severity.Warning, "SPL3030"), (four.Severity, four.Code));
        Assert.Matches(
            @"^hoop small: \d\.\d layers of thread and \d+ needle holes lie on the square millimetre at x \d+\.5, y 10\.5 \(part A\), "
                + @"and more than 3 layers on \d+ mm² where shapes 'line-1', 'line-2', 'line-3', 'line-4' lie over each other; draw them apart",
            four.Message
        );
        Assert.Equal(7, four.Place.Line);
        Assert.Empty(Make(Lines(4), "cloth: { most-layers: 4 }").Diagnostics);
    }

    [Fact]
    public void OneWarningIsForASetOfShapesAndTheOthersAreCounted()
    {
        var stacks = Enumerable
            .Range(0, 5)
            .SelectMany(stack =>
                Enumerable
                    .Range(1, 5)
                    .Select(i =>
                        $$"""    - { wkt: "MULTILINESTRING ((10 {{(10 * stack) + 10}}.5, 30 {{(10 * stack) + 10}}.5), (50 {{(10 * stack) + 10}}.5, {{60 + stack}} {{(10 * stack) + 10}}.5))", id: s{{stack}}-{{i}}, stroke: "#14304f", stroke-width: 0.4 mm }"""
                    )
            );
        var told = Make(string.Join('\n', stacks)).Diagnostics;
        Assert.Equal(3, told.Length);
        // The longest lines are the worst: two places, one warning.
        Assert.Contains("'s4-1'", told[0].Message, StringComparison.Ordinal);
        Assert.Contains("(so do 2 more sets of shapes, on ", told[0].Message, StringComparison.Ordinal);
        Assert.All(told.Skip(1), d => Assert.DoesNotContain("so do", d.Message, StringComparison.Ordinal));
    }

    /// <summary>
    /// Lines over each other, each of its own thread: where one begins or ends it is tied, with three penetrations in the
    /// square. Cloth that bears any layers does not bear any holes.
    /// </summary>
    [Fact]
    public void TooManyHolesAreTold()
    {
        const string Any = "cloth: { most-layers: 20 }";
        Assert.Empty(Make(Threads(5), Any).Diagnostics);
        var told = Assert.Single(Make(Threads(6), Any).Diagnostics);
        Assert.Equal((Severity.Warning, "SPL3031"), (told.Severity, told.Code));
        Assert.Matches(
            @"^hoop small: 18 needle holes lie on the square millimetre at x \d+\.5, y 10\.5 \(part A\), and more than 16, "
                + "which may tear the cloth, on [1-4] mm² where shapes 'line-1', 'line-2', 'line-3', 'line-4', 'line-5', 'line-6' lie over each other; draw them apart",
            told.Message
        );

        static string Threads(int count) =>
            string.Join(
                '\n',
                Enumerable
                    .Range(1, count)
                    .Select(i =>
                        $$"""    - { wkt: "LINESTRING (10 10.5, 30 10.5)", id: line-{{i}}, stroke: "#{{i}}{{i}}304f", stroke-width: 0.4 mm }"""
                    )
            );
    }

    [Fact]
    public void NeitherTheOrderOfPiecesNorJobsMatter()
    {
        var made = Make(Lines(5));
        Assert.Equal(made.Diagnostics.AsEnumerable(), Make(Lines(5), jobs: 4).Diagnostics);
        var (drawing, sewn) = (made.Value.Job.Drawing, Sewn(made.Value));
        var there = Spots(sewn);
        Assert.Equal(5, Assert.Single(there).Shapes.Length);
        Assert.Equal(Print(there), Print(Spots([.. sewn.Reverse()])));

        ImmutableArray<FullSpot> Spots(ImmutableArray<SewnPiece> pieces) =>
            FullSpots.Of(drawing, pieces, ClothLayers.Of(pieces), 3);

        static string Print(ImmutableArray<FullSpot> spots) =>
            string.Join('\n', spots.Select(s => $"{s} {string.Join(' ', s.Shapes)} {string.Join(' ', s.Hoopings)}"));
    }

    /// <summary>
    /// Derived from the rows alone: 100 x 100 mm with rows 0.4 mm apart and stitches of 4 mm has 250 rows, 25 m of thread,
    /// 6,250 stitches and 62.5 penetrations a square centimetre. Ends of rows add to it, so it is counted where none are.
    /// </summary>
    [Fact]
    public void AFillHasThePenetrationsThatItsRowsGive()
    {
        var made = Make(
            """
                - { wkt: "POLYGON ((0 0, 100 0, 100 100, 0 100, 0 0))", id: square, fill: "#14304f" }
              sew: [{ match: { id: square }, as: fill, angle: 0 deg, row-spacing: 0.4 mm, stitch-length: 4 mm, underlay: none, pull: 0 mm }]
            """
        );
        var sewn = Sewn(made.Value);
        var grid = ClothLayers.Of(sewn);
        var inside = grid.Squares.Where(s => s.Column is >= 10 and < 90 && s.Row is >= 10 and < 90).ToList();
        Assert.Equal(62.5, inside.Sum(grid.HolesIn) / 64.0, 0.7);
        Assert.Equal(1, inside.Average(grid.LayersOn), 0.01);
        var rows = sewn.SelectMany(s => s.Blocks)
            .SelectMany(Stitching.Sewn.Pairs)
            .Where(p => p.B.Use == StitchUse.Fill)
            .ToList();
        Assert.Equal(25, rows.Sum(p => p.A.At.DistanceTo(p.B.At)) / 1_000_000, 0.3);
        Assert.InRange(rows.Count, 6250, 6250 * 1.1);
    }
}
