using System.Collections.Immutable;
using Splitter.Artwork;
using Splitter.Recipes;

namespace Splitter.Outputs;

/// <summary>What one thread is used for over all parts of a hoop.</summary>
/// <param name="Thread">Null for the thread of marks.</param>
/// <param name="Metres">Needle thread, waste included.</param>
/// <param name="Minutes">Sewing and trims, stops not included.</param>
/// <param name="Letters">Parts that it sews in, in their order.</param>
internal sealed record ThreadUse(
    SewThread? Thread,
    double Metres,
    int Stitches,
    double Minutes,
    ImmutableArray<string> Letters
)
{
    internal string Name => Thread?.Name ?? PartFigures.MarkingThread;
}

/// <summary>What all parts of a hoop amount to.</summary>
internal sealed record WorkFigures
{
    /// <summary>Those of the artwork in the drawing's order, the thread of marks last.</summary>
    internal required ImmutableArray<ThreadUse> Threads { get; init; }

    internal required int Stitches { get; init; }

    internal required int Stops { get; init; }

    internal required int Trims { get; init; }

    /// <summary>At the machine.</summary>
    internal required double Minutes { get; init; }

    /// <summary>Beside it: all hoopings.</summary>
    internal required double HoopingMinutes { get; init; }

    internal double Metres => Threads.Sum(t => t.Metres);

    internal double BobbinMetres => Metres * Rates.BobbinShare;

    internal static WorkFigures Of(Recipe recipe, Drawing drawing, ImmutableArray<ListedPart> parts)
    {
        var used = parts.SelectMany(p => p.Part.Steps).Select(s => s.Thread).ToHashSet();
        var threads = drawing.Threads.Where(used.Contains).ToList<SewThread?>();
        if (used.Contains(null))
            threads.Add(null);
        return new()
        {
            Threads = [.. threads.Select(thread => Of(recipe.Machine, thread, parts))],
            Stitches = parts.Sum(p => p.Figures.Counts.Stitches),
            Stops = parts.Sum(p => p.Figures.Counts.Stops),
            Trims = parts.Sum(p => p.Figures.Counts.Trims),
            Minutes = parts.Sum(p => p.Figures.Minutes),
            HoopingMinutes = Rates.HoopingMinutes(recipe.Machine, parts.Length),
        };
    }

    private static ThreadUse Of(Machine machine, SewThread? thread, ImmutableArray<ListedPart> parts)
    {
        var steps = parts
            .SelectMany(p => p.Part.Steps.Select(s => (p.Part.Letter, Step: s, p.Figures)))
            .Where(s => s.Step.Thread == thread)
            .ToList();
        return new(
            thread,
            steps.Sum(s => s.Figures.StepMetres[s.Step.Number - 1]),
            steps.Sum(s => s.Figures.Counts.Steps[s.Step.Number - 1]),
            steps.Sum(s => s.Figures.StepMinutes(machine, s.Step)),
            [.. steps.Select(s => s.Letter).Distinct()]
        );
    }
}
