using System.Collections.Immutable;

namespace Splitter.Benchmarks.Mutants;

/// <summary>A stage of which mutants are drawn, and the tests that shall notice them.</summary>
/// <param name="Folders">Of the library; those of an earlier group are its own.</param>
/// <param name="Tests">
/// A filter of those of the same folders that end in about a second: who survives has been tried by all that reach it.
/// </param>
internal sealed record Group(string Name, ImmutableArray<string> Folders, string Tests)
{
    internal static readonly ImmutableArray<Group> All =
    [
        new(
            "registration",
            ["Planning/Marks/", "Parts/MarkStitcher.cs", "Correcting/"],
            Quick(["Planning.Marks", "Correcting", "Parts.MarkStitcher"], ["WhatIsExpected", "ChanceIsTaken"])
        ),
        new(
            "planning",
            ["Planning/"],
            Quick(
                ["Planning"],
                [
                    "PredictedFitSimulation",
                    "TurningTests",
                    "LayoutsTests",
                    "LowerBoundTests",
                    "OtherHoopsTests",
                    "WantedWholeTests",
                    "GeneratedDrawings",
                    "AStripTakesAsMany",
                    "MovingOrTurning",
                    "MovingTheWholeArtwork",
                    "EveryHoopingAfterTheFirst",
                    "PlacementLinesLieOnTheFolds",
                    "AutomaticFieldsOfARectangle",
                    "AFirstFieldThatCannotHold",
                    "WhereFieldsAndSeams",
                    "AnOverlapThatSomeJoins",
                    "TheSameEveryTime",
                ]
            ) + "&DisplayName!~throat&DisplayName!~too-many&DisplayName!~fixed-in-the-middle"
        ),
        new(
            "cutting",
            ["Cutting/"],
            Quick(["Cutting"], ["CoresMakeUp", "SoDoParts", "ScrapTests", "LayerTests", "NoGap"])
        ),
    ];

    internal bool Has(Mutant mutant) =>
        All.FirstOrDefault(g => g.Folders.Any(f => mutant.File.StartsWith(f, StringComparison.Ordinal))) == this;

    private static string Quick(ImmutableArray<string> tests, ImmutableArray<string> slow) =>
        $"({string.Join('|', tests.Select(t => $"FullyQualifiedName~Tests.{t}"))})"
        + string.Concat(slow.Select(t => $"&FullyQualifiedName!~{t}"));
}
