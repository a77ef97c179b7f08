using System.Collections.Immutable;
using Splitter.Geometry;
using Splitter.Outputs.Tapes;
using Splitter.Parts;
using Splitter.Recipes;
using Splitter.Stitching;
using Splitter.Tapes;

namespace Splitter.Outputs;

/// <summary>What a part amounts to, counted on its tape as a machine would.</summary>
internal sealed record PartFigures
{
    /// <summary>What a step without a thread of the artwork is sewn with.</summary>
    internal const string MarkingThread = "marking thread";

    internal required TapeCounts Counts { get; init; }

    /// <summary>
    /// Metres of needle thread by name, waste included, in the order in which threads are first sewn.
    /// </summary>
    internal required ImmutableArray<(string Thread, double Metres)> Threads { get; init; }

    /// <summary>The same of each step.</summary>
    internal required ImmutableArray<double> StepMetres { get; init; }

    /// <summary>At the machine, hooping not included.</summary>
    internal required double Minutes { get; init; }

    internal double BobbinMetres => StepMetres.Sum() * Rates.BobbinShare;

    internal static PartFigures Of(Recipe recipe, Part part, Tape tape)
    {
        var counts = TapeCounts.Of(tape);
        var metres = Metres(part, recipe.Cloth.Thickness);
        return new()
        {
            Counts = counts,
            StepMetres = metres,
            Threads =
            [
                .. part.Steps.GroupBy(NameOf).Select(steps => (steps.Key, steps.Sum(step => metres[step.Number - 1]))),
            ],
            Minutes = Rates.Minutes(recipe.Machine, counts.Stitches, counts.Stops, counts.Trims),
        };
    }

    internal static string NameOf(Step step) => step.Thread?.Name ?? MarkingThread;

    /// <summary>Sewing and trims of a step, the stop after it not included.</summary>
    internal double StepMinutes(Machine machine, Step step) =>
        Rates.Minutes(machine, Counts.Steps[step.Number - 1], 0, Counts.StepTrims[step.Number - 1]);

    private static ImmutableArray<double> Metres(Part part, int clothThickness)
    {
        var lengths = new double[part.Steps.Length];
        var last = default(Stitch);
        foreach (var needle in NeedleWalk.Of(part))
        {
            // A move that is not trimmed lays thread too.
            var lies = needle.Arrival != Arrival.Trimmed && !needle.IsFirst;
            lengths[needle.Step.Number - 1] += Rates.NeedleThread(
                lies ? last.At.DistanceTo(needle.Stitch.At) : 0,
                clothThickness
            );
            last = needle.Stitch;
        }
        return [.. lengths.Select(length => length * (1 + Rates.ThreadWaste) / (1000.0 * Units.Millimetre))];
    }
}
