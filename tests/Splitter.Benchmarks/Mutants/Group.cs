using System.Collections.Immutable;

namespace Splitter.Benchmarks.Mutants;

/// <summary>A stage of which mutants are drawn, and the tests that shall notice them.</summary>
/// <param name="Folders">Of the library; those of an earlier group are its own.</param>
/// <param name="Tests">
/// A filter of tests that take a second each at most: whoever survives is run by all of them that reach it.
/// </param>
internal sealed record Group(string Name, ImmutableArray<string> Folders, string Tests)
{
    internal static readonly ImmutableArray<Group> All =
    [
        new(
            "registration",
            ["Planning/Marks/", "Parts/MarkStitcher.cs", "Correcting/"],
            Of(
                ["Planning.Marks", "Planning.Fit", "Correcting", "Tool.RealignTests", "Tool.CorrectedTape"],
                ["PredictedFitSimulation", "AnEarlierCorrectedTape", "ACorrectedTapeOfAnEarlierPart"]
            )
        ),
        new(
            "planning",
            ["Planning/"],
            Of(
                ["Planning"],
                [
                    "PredictedFitSimulation",
                    "TurningTests",
                    "LayoutsTests",
                    "LowerBoundTests",
                    "AdviceTests",
                    "OtherHoopsTests",
                    "MovingTheWholeArtwork",
                    "EveryHoopingAfterTheFirst",
                    "PlacementLinesLieOnTheFolds",
                    "MovingOrTurningTheDrawing",
                    "AFirstFieldThatCannotHold",
                ]
            ) + "&DisplayName!~throat&DisplayName!~too-many-hoopings&DisplayName!~fixed-in-the-middle"
        ),
        new(
            "cutting",
            ["Cutting/"],
            Of(["Cutting"], ["CutterTests.CoresMakeUp", "SoDoPartsAroundAnyPoint", "ScrapTests", "LayerTests", "NoGap"])
        ),
    ];

    internal bool Has(Mutant mutant) =>
        All.FirstOrDefault(g => g.Folders.Any(f => mutant.File.StartsWith(f, StringComparison.Ordinal))) == this;

    private static string Of(ImmutableArray<string> tests, ImmutableArray<string> slow) =>
        $"({string.Join('|', tests.Select(t => $"FullyQualifiedName~Tests.{t}"))})"
        + string.Concat(slow.Select(t => $"&FullyQualifiedName!~{t}"));
}
