using Splitter.Benchmarks.Speed;

namespace Splitter.Benchmarks.Catalogue;

/// <summary>
/// What a build's parts take, in seconds of one processor, which hardly depend on what else the machine does. Each is
/// measured on real processes.
/// </summary>
/// <param name="Make">A process that makes a recipe of each kind.</param>
/// <param name="Start">A build of no recipes.</param>
/// <param name="Skipped">What a recipe of another agent adds to a build.</param>
/// <param name="Unchanged">What a recipe adds that was made and not touched.</param>
internal sealed record Costs(
    IReadOnlyDictionary<DesignKind, double> Make,
    double Start,
    double Skipped,
    double Unchanged
)
{
    /// <summary>Recipes of a build whose time is measured: enough that theirs stands out from that of its start.</summary>
    private const int Many = 1000;

    /// <summary>They have to be made first.</summary>
    private const int Made = 40;

    /// <summary>The least of so many runs.</summary>
    private const int Runs = 3;

    /// <summary>Far from any share that a recipe here falls into.</summary>
    private const string NobodysShare = "-p:SplitterShard=9998/9999";

    internal static Costs Measure(Shop shop)
    {
        var make = Enum.GetValues<DesignKind>().ToDictionary(kind => kind, kind => Least(() => shop.Make(kind)));
        shop.Fill(0);
        var start = Least(() => shop.Build());
        shop.Fill(Many);
        var skipped = (Least(() => shop.Build(NobodysShare)) - start) / Many;
        shop.Fill(Made);
        _ = shop.Build();
        var unchanged = (Least(() => shop.Build()) - start) / Made;
        return new(make, start, skipped, unchanged);
    }

    private static double Least(Func<Measured> run) => Enumerable.Range(0, Runs).Min(_ => run().Processor);
}
