using Splitter.Benchmarks.Figures;

namespace Splitter.Benchmarks.Catalogue;

/// <summary>How long a catalogue takes when several agents make a share each: simulated from what its parts take.</summary>
internal static class CatalogueFigures
{
    private const int Designs = 10_000;

    /// <summary>Processors of an agent, each of which makes one recipe after another.</summary>
    private const int Processors = 2;

    private static readonly int[] Agents = [1, 2, 4, 8, 16, 32, 64];

    internal static int Write()
    {
        using var shop = new Shop();
        var costs = Costs.Measure(shop);
        FigureTable.Write(
            "catalogue",
            [
                FormattableString.Invariant(
                    $"Seconds of a processor, the least of three runs: a motif {costs.Make[DesignKind.Motif]:0.0}, a panel {costs.Make[DesignKind.Panel]:0.0}, a hanging {costs.Make[DesignKind.Hanging]:0.0}; a build's start {costs.Start:0.00}; milliseconds: a recipe of another agent {1000 * costs.Skipped:0.0}, one that nobody touched {1000 * costs.Unchanged:0.0}."
                ),
                "",
                "| agents | recipes, most | all made, minutes | against equal shares | of it for others' recipes, % | nothing touched, minutes | speed-up |",
                "| ---: | ---: | ---: | ---: | ---: | ---: | ---: |",
                .. Agents.Select(agents => Row(costs, agents)),
            ]
        );
        return 0;
    }

    private static string Row(Costs costs, int agents)
    {
        var shares = Design.Catalogue(Designs).GroupBy(design => design.Share(agents)).Select(s => s.ToList()).ToList();
        var slowest = shares.Max(share => Overhead(costs, share.Count) + Working(costs, share));
        var equal = Overhead(costs, Designs / agents) + (Work(costs, Design.Catalogue(Designs)) / agents / Processors);
        var alone = Overhead(costs, Designs) + Working(costs, [.. Design.Catalogue(Designs)]);
        var untouched = shares.Max(share => Overhead(costs, share.Count) + (share.Count * costs.Unchanged));
        return FormattableString.Invariant(
            $"| {agents} | {shares.Max(s => s.Count)} | {slowest / 60:0.0} | {slowest / equal:0.00} | {100 * Overhead(costs, Designs / agents) / slowest:0} | {untouched / 60:0.0} | {alone / slowest:0.0} |"
        );
    }

    /// <summary>Before the first recipe is made: the build itself, and a look at each recipe of other agents.</summary>
    private static double Overhead(Costs costs, int own) => costs.Start + ((Designs - own) * costs.Skipped);

    /// <summary>As MSBuild has it: whichever processor is free takes the next recipe.</summary>
    private static double Working(Costs costs, List<Design> share)
    {
        var free = new double[Processors];
        foreach (var design in share)
        {
            Array.Sort(free);
            free[0] += Cost(costs, design);
        }
        return free.Max();
    }

    private static double Work(Costs costs, IEnumerable<Design> designs) => designs.Sum(design => Cost(costs, design));

    private static double Cost(Costs costs, Design design) => costs.Make[design.Kind] + costs.Unchanged;
}
