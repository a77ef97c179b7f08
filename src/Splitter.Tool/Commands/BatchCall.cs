using System.CommandLine;
using Splitter.Tool.Commands.Watching;

namespace Splitter.Tool.Commands;

/// <summary>What make and check are called with.</summary>
/// <param name="Out">Stands for the recipe's own output folder; null for that.</param>
/// <param name="Inputs">Hears of every file that is looked at; null where nobody asks.</param>
internal sealed record BatchCall(string[] Recipes, string? Hoop, string? Out, int Jobs, InputFiles? Inputs);

/// <summary>The arguments and options of make and check.</summary>
internal sealed class BatchOptions
{
    internal Argument<string[]> Recipes { get; } = SharedOptions.Recipes();

    internal Option<string?> Hoop { get; } = SharedOptions.Hoop();

    internal Option<string?> Out { get; } = SharedOptions.Out();

    internal Option<int?> Jobs { get; } = SharedOptions.Jobs();

    internal BatchCall Of(ParseResult call, InputFiles? inputs = null) =>
        new(
            call.GetRequiredValue(Recipes),
            call.GetValue(Hoop),
            call.GetValue(Out),
            call.GetValue(Jobs) ?? Environment.ProcessorCount,
            inputs
        );
}
