using System.Collections.Immutable;
using Splitter.Geometry;
using Splitter.Outputs.Tapes;
using Splitter.Parts;
using Splitter.Recipes;
using Splitter.Stitching;

namespace Splitter.Outputs;

/// <summary>What a part amounts to, counted on its tape as a machine would.</summary>
internal sealed record PartFigures
{
    /// <summary>What a step without a thread of the artwork is sewn with.</summary>
    internal const string MarkingThread = "marking thread";

    internal required TapeCounts Counts { get; init; }

    /// <summary>Metres of needle thread by name, waste included, in the order in which threads are first sewn.</summary>
    internal required ImmutableArray<(string Thread, double Metres)> Threads { get; init; }

    /// <summary>At the machine, hooping not included.</summary>
    internal required double Minutes { get; init; }

    internal static PartFigures Of(Recipe recipe, Part part, Tape tape)
    {
        var counts = TapeCounts.Of(tape);
        return new()
        {
            Counts = counts,
            Threads = Thread(part, recipe.Cloth.Thickness),
            Minutes = Rates.Minutes(recipe.Machine, counts.Stitches, counts.Stops, counts.Trims),
        };
    }

    internal static string NameOf(Step step) => step.Thread?.Name ?? MarkingThread;

    private static ImmutableArray<(string, double)> Thread(Part part, int clothThickness)
    {
        var names = new List<string>();
        var lengths = new List<double>();
        var last = default(Stitch);
        foreach (var needle in NeedleWalk.Of(part))
        {
            var name = NameOf(needle.Step);
            var i = names.IndexOf(name);
            if (i < 0)
            {
                i = names.Count;
                names.Add(name);
                lengths.Add(0);
            }
            // A move that is not trimmed lays thread too.
            var lies = needle.Arrival != Arrival.Trimmed && !needle.IsFirst;
            lengths[i] += Rates.NeedleThread(lies ? last.At.DistanceTo(needle.Stitch.At) : 0, clothThickness);
            last = needle.Stitch;
        }
        return
        [
            .. names.Select((name, i) => (name, lengths[i] * (1 + Rates.ThreadWaste) / (1000.0 * Units.Millimetre))),
        ];
    }
}
