using System.Collections.Immutable;
using System.Text;
using Splitter.Artwork;
using Splitter.Geometry;
using Splitter.Outputs;
using Splitter.Parts;
using Splitter.Planning;
using Splitter.Recipes;
using Splitter.Stitching;

namespace Splitter.Tests.Outputs;

/// <summary>Two small parts made by hand, so that outputs are tested without the stages before them. Millimetres.</summary>
internal static class HandMade
{
    internal static readonly SewThread Blue = new("deep water", "#1b3a5c");
    internal static readonly SewThread Red = new("brick", "#b03a2e");

    private static readonly Hoop Hoop = new("small", 60_000, 80_000);

    internal static Field Field(double x, double y, Turn turn) => new(Hoop, Point.FromMillimetres(x, y), turn, 3000);

    internal static Block Block(string of, StitchUse use, params ReadOnlySpan<(double X, double Y)> points)
    {
        var stitches = ImmutableArray.CreateBuilder<Stitch>();
        foreach (var (x, y) in points)
            stitches.Add(new(Point.FromMillimetres(x, y), use));
        return new(of, stitches.ToImmutable());
    }

    internal static Part Part(Hooping hooping, params ReadOnlySpan<(StepKind, SewThread?, string?, Move[])> steps)
    {
        var all = ImmutableArray.CreateBuilder<Step>();
        foreach (var (kind, thread, stop, moves) in steps)
            all.Add(new(all.Count + 1, kind, thread, [.. moves], stop is null ? [] : [stop]));
        return new(hooping, all.ToImmutable());
    }

    internal static Hooping Hooping(string letter, Field field, int[] takes, int[] gives) =>
        new()
        {
            Letter = letter,
            Field = field,
            Ground = field.Usable,
            Territory = Region.Of(field.Usable),
            Takes = [.. takes],
            Gives = [.. gives],
            Alignments = takes.Length == 0 ? [] : [new(Point.FromMillimetres(50, 40), 0, "sea")],
        };

    internal static readonly Drawing Drawing = new(
        100_000,
        80_000,
        [Blue, Red],
        [Samples.Rectangle("sea", 5, 30, 90, 30), Samples.Run("line", 10, 20, 40, 20) with { Thread = 1 }]
    );

    internal static readonly Plan Plan = new()
    {
        Hoop = Hoop,
        Hoopings =
        [
            Hooping("A", Field(30, 40, Turn.None), [], [0, 1]),
            Hooping("B", Field(70, 40, Turn.Half), [0, 1], []),
        ],
        LowerBound = 2,
        Owners = [null, 0],
        SeamLines = [new(0, 1, new([new(50_000, 10_000), new(50_000, 70_000)]))],
        Joins =
        [
            new()
            {
                Earlier = 0,
                Later = 1,
                WorstAt = new(50_000, 60_000),
                PredictedError = 412.3456,
                Budget = new(412.3456, 0, 0, 0, 0),
                AlongSeam = 720,
                Overlap = 1600,
                Narrowest = 1600,
                Covers = 1920,
            },
        ],
        Corners =
        [
            new("A1", new(48_000, 8_000), new(52_000, 8_000), new(48_000, 12_000), 0, [1]),
            new("A2", new(52_000, 72_000), new(48_000, 72_000), new(52_000, 68_000), 0, [1]),
        ],
        PlacementLines = [new(Fold.Upright, new(30_000, 5_000), new(30_000, 75_000))],
        Seams = new(12.34, 20.5, 1),
    };

    internal static readonly ImmutableArray<Part> Parts =
    [
        Part(
            Plan.Hoopings[0],
            (
                StepKind.Placement,
                null,
                "Lay the fold on the line.",
                [new(MarkStitcher.Line(Plan.PlacementLines[0]), false)]
            ),
            (
                StepKind.Body,
                Blue,
                "Change to thread: brick.",
                [
                    new(Block("sea", StitchUse.Fill, (5, 30), (9, 30), (13, 30.4), (5, 30.8), (50.8, 31.2)), false),
                    new(Block("sea", StitchUse.Fill, (10, 50), (14, 50), (18, 50.4)), true),
                ]
            ),
            (StepKind.Body, Red, "Change.", [new(Block("line", StitchUse.Run, (10, 20), (12.5, 20), (15, 20)), false)]),
            (
                StepKind.NextCorners,
                null,
                null,
                [new(MarkStitcher.Corner(Plan.Corners[0]), false), new(MarkStitcher.Corner(Plan.Corners[1]), true)]
            )
        ),
        Part(
            Plan.Hoopings[1],
            (
                StepKind.Corners,
                null,
                "Tacks.",
                [new(MarkStitcher.Corner(Plan.Corners[0]), false), new(MarkStitcher.Corner(Plan.Corners[1]), true)]
            ),
            (StepKind.Alignment, null, "Look.", [new(MarkStitcher.Cross(Plan.Hoopings[1].Alignments[0]), false)]),
            (
                StepKind.Body,
                Blue,
                null,
                [new(Block("sea", StitchUse.Fill, (49.2, 30), (53.2, 30), (57, 30.4), (61, 30.8)), false)]
            )
        ),
    ];

    internal static Recipe Recipe { get; } =
        Samples.Recipe(Hoop) with
        {
            Title = "Two seas",
            Cloth = new() { Thickness = 600 },
        };

    internal static Request Request { get; } =
        new("recipes/two-seas.yaml", Encoding.UTF8.GetBytes("splitter: 1\n"), _ => default);

    internal static Job Job { get; } =
        new(Recipe, [Hoop], [new("../art/two-seas.svg", Encoding.UTF8.GetBytes("abc"))], Drawing);

    internal static PartSet Set { get; } = SetOf(Parts);

    internal static PartSet SetOf(ImmutableArray<Part> parts, params ReadOnlySpan<OutputKind> kinds)
    {
        var job = kinds.IsEmpty
            ? Job
            : Job with
            {
                Recipe = Recipe with { Output = Recipe.Output with { Files = [.. kinds] } },
            };
        return new(Plan, parts, OutputRenderer.Render(Request, job, Plan, parts, []));
    }
}
