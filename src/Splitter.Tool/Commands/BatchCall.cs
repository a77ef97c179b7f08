using System.CommandLine;
using Splitter.Tool.Commands.Watching;

namespace Splitter.Tool.Commands;

/// <summary>What make and check are called with.</summary>
/// <param name="Out">Stands for the recipe's own output folder; null for that.</param>
internal sealed record BatchCall(string[] Recipes, string? Hoop, string? Out, int Jobs)
{
    /// <summary>Hears of every file that is looked at; null where nobody asks.</summary>
    internal InputFiles? Seen { get; init; }

    /// <summary>The file that <see cref="BuildLists"/> writes of what was read; null for none.</summary>
    internal string? Inputs { get; init; }

    /// <summary>The same of what was written.</summary>
    internal string? Outputs { get; init; }
}

/// <summary>The arguments and options of make and check.</summary>
internal sealed class BatchOptions
{
    internal BatchOptions() => Hoop = SharedOptions.Hoop(Recipes);

    internal Argument<string[]> Recipes { get; } = SharedOptions.Recipes();

    internal Option<string?> Hoop { get; }

    internal Option<string?> Out { get; } = SharedOptions.Out();

    internal Option<int?> Jobs { get; } = SharedOptions.Jobs();

    /// <summary>Of make alone, as is the next: check writes nothing.</summary>
    internal Option<string?> Inputs { get; } = SharedOptions.List("--inputs", "that were read");

    internal Option<string?> Outputs { get; } = SharedOptions.List("--outputs", "that were written");

    internal BatchCall Of(ParseResult call, InputFiles? seen = null) =>
        new(
            call.GetRequiredValue(Recipes),
            call.GetValue(Hoop),
            call.GetValue(Out),
            call.GetValue(Jobs) ?? Environment.ProcessorCount
        )
        {
            Seen = seen,
            Inputs = call.GetValue(Inputs),
            Outputs = call.GetValue(Outputs),
        };
}
