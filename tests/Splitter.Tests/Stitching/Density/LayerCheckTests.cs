using System.Collections.Immutable;
using System.Globalization;
using System.Text;
using System.Text.Json;
using Splitter.Cutting;
using Splitter.Diagnostics;
using Splitter.Outputs;
using Splitter.Outputs.Pictures;
using Splitter.Outputs.Sheets;
using Splitter.Stitching;
using Splitter.Stitching.Density;
using Splitter.Tests.Artwork.Tapes;

namespace Splitter.Tests.Stitching.Density;

public sealed class LayerCheckTests
{
    private static Result<Production> Make(string shapes, string more = "", int jobs = 1, string field = "130 x 180 mm")
    {
        var recipe = $$"""
            splitter: 1
            artwork:
              shapes:
            {{shapes}}
            hoops: [{ name: small, field: {{field}} }]
            {{more}}
            output: { folder: parts, files: [tape] }
            """;
        return Pipeline.Make(new("stack.yaml", Encoding.UTF8.GetBytes(recipe), _ => default) { Jobs = jobs });
    }

    private static ImmutableArray<SewnPiece> Sewn(Production made) =>
        Stitcher.Stitch(Cutter.Cut(made.Job.Drawing, made.Sets[0].Plan, made.Job.Recipe.Overlap), 1);

    /// <summary>Characters of a warning.</summary>
    private const int Longest = 300;

    /// <summary>What the manifest lists.</summary>
    private static List<JsonElement> Dense(Production made)
    {
        var file = made.Sets[0].Files.Single(f => f.Path.EndsWith("manifest.json", StringComparison.Ordinal));
        using var manifest = JsonDocument.Parse(file.Bytes);
        return manifest.RootElement.TryGetProperty("dense", out var dense) ? [.. dense.Clone().EnumerateArray()] : [];
    }

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
            """    - { wkt: "POLYGON ((0 0, 120 0, 120 120, 0 120, 0 0))", id: sea, fill: "#14304f" }""",
            "overlap: { width: 6 mm }\ncloth: { most-layers: 2 }",
            field: "80 x 80 mm"
        );
        Assert.Single(made.Diagnostics, d => d.Code == "SPL3030");
        Assert.Contains(Dense(made.Value), d => d.GetProperty("causes_mm2").TryGetProperty("overlap", out _));
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
        // The fill's own ends are 12 mm wide; what is told lies where the parts meet, in its middle.
        Assert.All(Dense(made.Value), spot => Assert.InRange(spot.GetProperty("at_mm")[0].GetDouble(), 40, 60));
        Assert.InRange(Dense(made.Value).Sum(spot => spot.GetProperty("area_mm2").GetDouble()), 0, 2);
    }

    /// <summary>Rows that are more than three layers all over: that is told where parts overlap alone.</summary>
    [Fact]
    public void WhereOverlapsMakeATapeTooDenseIsTold()
    {
        var made = HandTape.Make(new HandTape().Rows(0, 0, 100, 40, 0.11).Bytes, 1, 70, 70);
        var join = Assert.Single(made.Value.Sets.Single().Plan.Joins);
        var told = Assert.Single(made.Diagnostics, d => d.Code == "SPL3030");
        Assert.Contains("; parts A, B)", told.Message, StringComparison.Ordinal);
        Assert.Contains("write a smaller 'overlap.width'", told.Message, StringComparison.Ordinal);
        var squares = int.Parse(
            told.Message.Split(" layers of thread on ")[1].Split(" mm²")[0],
            CultureInfo.InvariantCulture
        );
        Assert.InRange(squares, 40, 40 * ((2 * join.Overlap / 1000) + 5));
    }

    /// <summary>
    /// One fill or one column is one layer at a spacing of 0.4 mm, the width of the thread, on every square; and as much
    /// more as it is sewn more densely.
    /// </summary>
    [Theory]
    [InlineData("POLYGON ((0 0, 40 0, 40 40, 0 40, 0 0))", "fill: \"#14304f\"", "fill", "0.40 mm", 20, 1)]
    [InlineData("POLYGON ((0 0, 40 0, 40 40, 0 40, 0 0))", "fill: \"#14304f\"", "fill", "0.25 mm", 20, 1.6)]
    [InlineData("POLYGON ((0 0, 40 0, 40 40, 0 40, 0 0))", "fill: \"#14304f\"", "fill", "0.55 mm", 20, 0.727)]
    [InlineData("LINESTRING (0 4, 40 4)", "stroke: \"#14304f\", stroke-width: 5 mm", "satin", "0.40 mm", 4, 1)]
    [InlineData("LINESTRING (0 4, 40 4)", "stroke: \"#14304f\", stroke-width: 5 mm", "satin", "0.55 mm", 4, 0.727)]
    public void OneLayerIsOne(string wkt, string paint, string kind, string spacing, double y, double layers)
    {
        var told = Make(
            $$"""
                - { wkt: "{{wkt}}", id: one, {{paint}} }
              sew: [{ match: { id: one }, as: {{kind}}, row-spacing: {{spacing}}, underlay: none, pull: 0 mm }]
            """
        );
        var grid = ClothLayers.Of(Sewn(told.Value));
        // Squares in the middle, where nothing ends.
        var middle = grid
            .Squares.Where(s => s.Column is >= 20 and < 60 && s.Row >= 2 * ((int)y - 2) && s.Row < 2 * ((int)y + 2))
            .ToList();
        Assert.Equal(320, middle.Count);
        Assert.Equal(layers, middle.Average(grid.LayersOn), 0.03);
        Assert.All(middle, square => Assert.Equal(layers, grid.LayersOn(square), 0.2));
    }

    /// <summary>Thread covers 0.4 mm: eight lines over each other are 3.2 layers on their squares, and ties more at their ends.</summary>
    [Fact]
    public void RunsOverEachOtherAreCountedAndNamed()
    {
        Assert.DoesNotContain(Make(Lines(4)).Diagnostics, d => d.Code == "SPL3030");
        var told = Assert.Single(Make(Lines(8)).Diagnostics, d => d.Code == "SPL3030");
        Assert.Equal(Severity.Warning, told.Severity);
        Assert.Matches(
            @"^hoop small: more than 3 layers of thread on \d+ mm² at one place, where shapes lie over each other; "
                + @"worst is \d\.\d at x \d+\.5, y 10\.5 mm \('line-8' and 7 more; part A\); "
                + @"draw them apart or leave one out \('as: leave'\); "
                + "all: rings on the overview, 'dense' in the manifest$",
            told.Message
        );
        Assert.Equal(11, told.Place.Line);
        Assert.DoesNotContain(Make(Lines(8), "cloth: { most-layers: 5 }").Diagnostics, d => d.Code == "SPL3030");
    }

    /// <summary>A square millimetre that is hardly above the limit is told, as large ground is.</summary>
    [Fact]
    public void TheSmallestSpotIsTold()
    {
        var made = Make(
            """
                - { wkt: "POLYGON ((10 10, 40 10, 40 40, 10 40, 10 10))", id: ground, fill: "#14304f" }
                - { wkt: "LINESTRING (20 20.5, 23 20.5)", id: one, stroke: "#c23b2e", stroke-width: 0.4 mm }
                - { wkt: "LINESTRING (20 20.5, 23 20.5)", id: two, stroke: "#fffaf0", stroke-width: 0.4 mm }
                - { wkt: "LINESTRING (20 20.5, 23 20.5)", id: three, stroke: "#c23b2e", stroke-width: 0.4 mm }
            """,
            "cloth: { most-layers: 2 }"
        );
        Assert.Single(made.Diagnostics, d => d.Code == "SPL3030");
        var spots = LayerCheck
            .Check(made.Value.Job.Drawing, made.Value.Job.Recipe, made.Value.Sets[0].Plan, Sewn(made.Value))
            .Value;
        Assert.Contains(spots, spot => spot.Quarters <= 32 && spot.Shapes.Length >= 2);
    }

    [Fact]
    public void OneWarningIsForAHoopAndTheManifestListsAllPlaces()
    {
        var stacks = Enumerable
            .Range(0, 5)
            .SelectMany(stack =>
                Enumerable
                    .Range(1, 9)
                    .Select(i =>
                        $$"""    - { wkt: "LINESTRING (10 {{(10 * stack) + 10}}.5, {{60 + stack}} {{(10 * stack) + 10}}.5)", id: s{{stack}}-{{i}}, stroke: "#14304f", stroke-width: 0.4 mm }"""
                    )
            );
        var made = Make(string.Join('\n', stacks));
        var told = Assert.Single(made.Diagnostics, d => d.Code == "SPL3030");
        var dense = Dense(made.Value);
        Assert.Contains($" at {dense.Count} places, ", told.Message, StringComparison.Ordinal);
        Assert.InRange(told.Message.Length, 1, Longest);
        Assert.Equal(
            45,
            dense
                .SelectMany(d => d.GetProperty("shapes").EnumerateArray())
                .Select(s => s.GetString())
                .Distinct()
                .Count()
        );
        Assert.All(dense, d => Assert.Equal(["A"], d.GetProperty("parts").EnumerateArray().Select(p => p.GetString())));
        // The worst comes first, and the warning tells of it.
        Assert.Equal(dense.Max(d => d.GetProperty("layers").GetDouble()), dense[0].GetProperty("layers").GetDouble());
        Assert.Contains(
            FormattableString.Invariant(
                $"at x {dense[0].GetProperty("at_mm")[0]}, y {dense[0].GetProperty("at_mm")[1]} "
            ),
            told.Message,
            StringComparison.Ordinal
        );
    }

    /// <summary>
    /// Lines over each other, each of its own thread: where one begins or ends it is tied, with three penetrations in the
    /// square, or two where that makes too many and there is room; 20 of nine lines are as counted. Cloth that bears any
    /// layers does not bear any holes.
    /// </summary>
    [Fact]
    public void TooManyHolesAreTold()
    {
        const string Any = "cloth: { most-layers: 20 }";
        Assert.Empty(Make(Threads(8), Any).Diagnostics);
        var told = Assert.Single(Make(Threads(9), Any).Diagnostics);
        Assert.Equal((Severity.Warning, "SPL3031"), (told.Severity, told.Code));
        Assert.Matches(
            "^hoop small: more than 16 needle holes, which may tear the cloth, on "
                + @"\d(\.\d+)? mm² at (one place|2 places); worst is 18 at x \d+(\.5)?, y 10(\.5)? mm \('line-9' and 8 more; part A\); draw them apart",
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

    /// <summary>Every place has a ring in the overview, and one in the picture of each part that sews there.</summary>
    [Fact]
    public void PlacesAreRinged()
    {
        var made = Make(Lines(8), "overlap: { width: 6 mm }").Value;
        var (job, set) = (made.Job, made.Sets[0]);
        var spots = LayerCheck.Check(job.Drawing, job.Recipe, set.Plan, Sewn(made)).Value;
        Assert.NotEmpty(spots);
        var ground = new ShownGround(job.Drawing, set.Plan);
        Assert.Equal(0, Rings(OverviewPicture.Of(job.Recipe, ground, []).Items));
        ground = new(job.Drawing, set.Plan) { Dense = spots };
        // And one in the key.
        Assert.Equal(spots.Length + 1, Rings(OverviewPicture.Of(job.Recipe, ground, []).Items));
        var sheet = new SheetContent(job.Recipe, job.Drawing, set.Plan, [], WorkFigures.Of(job.Recipe, job.Drawing, []))
        {
            RecipeFile = "stack.yaml",
            Ground = ground,
        };
        Assert.Equal(spots.Length, Rings(new HoopView(sheet, set.Parts[0]).Paint()));
        Assert.Contains("A ring:", SignKey.Of(sheet).Value, StringComparison.Ordinal);
        // One that reaches into another hoop, where it is worst, has its ring there.
        var far = new ShownGround(job.Drawing, set.Plan)
        {
            Dense = [.. spots.Select(s => s with { Fullest = new(-500, -500), MostPierced = new(-500, -500) })],
        };
        Assert.Equal(0, Rings(new HoopView(sheet with { Ground = far }, set.Parts[0]).Paint()));

        static int Rings(ImmutableArray<Item> items) =>
            items
                .OfType<PaintedLines>()
                .Count(l => l.Colour == MarkInk.TooFar && l.Lines is [{ Length: > 60 } ring] && ring[0] == ring[^1]);
    }

    /// <summary>One piece of advice, against what makes most of it, wherever the worst place is.</summary>
    [Fact]
    public void TheChiefCauseHasTheAdvice()
    {
        Assert.Equal(LayerCause.Travel, Chief([LayerCause.Ties], [LayerCause.Travel, LayerCause.Travel]));
        Assert.Equal(LayerCause.Overlap, Chief([LayerCause.Ties], [LayerCause.Overlap]));
        Assert.Contains("larger hoop", Advice(LayerCause.Overlap), StringComparison.Ordinal);
        Assert.DoesNotContain("underlay", Advice(LayerCause.Rows), StringComparison.Ordinal);
        Assert.Equal(
            "write a smaller 'overlap.width', or leave it out",
            LayerAdvice.Against(LayerCause.Overlap, isStitched: false, isOverlapAsked: true)
        );

        static string Advice(LayerCause cause) => LayerAdvice.Against(cause, isStitched: false, isOverlapAsked: false);

        static LayerCause Chief(params LayerCause[][] causes) => LayerCauses.Chief(causes.Select(Spot));

        static DenseSpot Spot(LayerCause[] causes) =>
            new([0], [0])
            {
                Quarters = causes.Length,
                Causes = [.. causes],
                Fullest = default,
                Layers = 4,
                Pierced = 0,
                MostPierced = default,
                Holes = 0,
            };
    }

    /// <summary>A line that is read, however long the names are that an artwork has, of whatever characters.</summary>
    [Fact]
    public void TheWarningIsShort()
    {
        // The 24th of its code units, where it is cut, is the first half of a character.
        var name = new string('x', 23) + string.Concat(Enumerable.Repeat("\U0001F9F5", 80));
        var lines = Enumerable
            .Range(0, 9)
            .Select(i =>
                $$"""    - { wkt: "LINESTRING (10 10.5, 30 10.5)", id: {{name}}{{i}}, stroke: "#14304f", stroke-width: 0.4 mm }"""
            );
        var told = Assert.Single(Make(string.Join('\n', lines)).Diagnostics, d => d.Code == "SPL3030");
        Assert.InRange(told.Message.Length, 1, Longest);
        Assert.DoesNotContain(Rune.ReplacementChar, told.Message.EnumerateRunes());
    }

    /// <summary>The artwork's own layers, and what comes to them: ties at the ends of lines, in squares beside.</summary>
    [Fact]
    public void CausesAreTold()
    {
        var made = Make(Lines(8));
        var causes = Dense(made.Value).ConvertAll(d => d.GetProperty("causes_mm2"));
        Assert.Equal(
            Dense(made.Value).Sum(d => d.GetProperty("area_mm2").GetDouble()),
            causes.SelectMany(c => c.EnumerateObject()).Sum(c => c.Value.GetDouble())
        );
        Assert.All(causes.SelectMany(c => c.EnumerateObject()), c => Assert.Equal("shapes", c.Name));
        Assert.Equal(LayerCause.Ties, Cause((1, StitchUse.Run, 2.8), (2, StitchUse.Tie, 0.4)));
        Assert.Equal(
            LayerCause.Travel,
            Cause((1, StitchUse.Fill, 2.4), (1, StitchUse.Tie, 0.3), (1, StitchUse.Travel, 0.4))
        );
        Assert.Equal(LayerCause.Underlay, Cause((1, StitchUse.Satin, 2.8), (1, StitchUse.Underlay, 0.4)));
        Assert.Equal(LayerCause.Rows, Cause((1, StitchUse.Satin, 3.1), (1, StitchUse.Travel, 0.4)));
        Assert.Equal(LayerCause.Shapes, Cause((1, StitchUse.Satin, 2.1), (2, StitchUse.Fill, 1)));

        static LayerCause Cause(params (int Shape, StitchUse Use, double Layers)[] thread) =>
            LayerCauses.Of(
                thread.ToDictionary(t => new ThreadOwner(t.Shape, 0, t.Use), t => (long)(t.Layers * 1_000_000)),
                3
            );
    }

    [Fact]
    public void WhatTwoPartsSewTogetherIsToldAsOverlap()
    {
        var thread = new Dictionary<ThreadOwner, long>
        {
            [new(0, 0, StitchUse.Fill)] = 2_000_000,
            [new(1, 1, StitchUse.Fill)] = 1_200_000,
        };
        Assert.Equal(LayerCause.Overlap, LayerCauses.Of(thread, 3));
    }

    [Fact]
    public void NeitherTheOrderOfPiecesNorJobsMatter()
    {
        var made = Make(Lines(9));
        Assert.Equal(made.Diagnostics.AsEnumerable(), Make(Lines(9), jobs: 4).Diagnostics);
        var (drawing, sewn) = (made.Value.Job.Drawing, Sewn(made.Value));
        var there = Spots(sewn);
        Assert.Contains(there, spot => spot.Shapes.Length == 9);
        Assert.Equal(Print(there), Print(Spots([.. sewn.Reverse()])));

        ImmutableArray<DenseSpot> Spots(ImmutableArray<SewnPiece> pieces) =>
            DenseSpots.Of(drawing, pieces, ClothLayers.Of(pieces), 3);

        static string Print(ImmutableArray<DenseSpot> spots) =>
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
        var inside = grid.Squares.Where(s => s.Column is >= 20 and < 180 && s.Row is >= 20 and < 180).ToList();
        Assert.Equal(62.5, inside.Average(grid.HolesIn) * 100, 0.7);
        Assert.Equal(1, inside.Average(grid.LayersOn), 0.01);
        var rows = sewn.SelectMany(s => s.Blocks)
            .SelectMany(Stitching.Sewn.Pairs)
            .Where(p => p.B.Use == StitchUse.Fill)
            .ToList();
        Assert.Equal(25, rows.Sum(p => p.A.At.DistanceTo(p.B.At)) / 1_000_000, 0.3);
        Assert.InRange(rows.Count, 6250, 6250 * 1.1);
    }
}
