using System.Collections.Concurrent;

namespace Splitter.Tests;

/// <summary>
/// The recipes of this repository, each made once for all tests that look at it: planning the demo is the longest thing
/// that a test can ask for. A production is frozen, so nobody can spoil it for another.
/// </summary>
internal static class Examples
{
    private static readonly ConcurrentDictionary<(string Recipe, string Hoop), Lazy<Production>> Productions = new();

    internal static Production Made(string recipe, string hoop) =>
        Productions
            .GetOrAdd(
                (recipe, hoop),
                asked =>
                    new(() =>
                    {
                        var file = Repository.Path("recipes", $"{asked.Recipe}.yaml");
                        var made = Pipeline.Make(Repository.Request(file, asked.Hoop));
                        Assert.True(made.Succeeded, string.Join("\n", made.Diagnostics));
                        return made.Value;
                    })
            )
            .Value;

    /// <summary>Planned for some of its hoops.</summary>
    internal static Outlook Planned(string recipe, params ReadOnlySpan<string> hoops)
    {
        var made = hoops.ToArray().Select(hoop => Made(recipe, hoop)).ToList();
        return new(made[0].Job, [.. made.Select(m => m.Sets.Single().Plan)]);
    }
}
