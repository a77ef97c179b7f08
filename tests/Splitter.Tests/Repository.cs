namespace Splitter.Tests;

/// <summary>The checkout that the tests were built from: recipes and examples that a user would run.</summary>
internal static class Repository
{
    internal static string Root { get; } = Find();

    internal static string Path(params ReadOnlySpan<string> parts) => System.IO.Path.Combine([Root, .. parts]);

    /// <summary>A request for a recipe file, its sources read from beside it.</summary>
    internal static Request Request(string recipe, string? hoop = null)
    {
        var folder = System.IO.Path.GetDirectoryName(recipe)!;
        return new(
            System.IO.Path.GetFileName(recipe),
            File.ReadAllBytes(recipe),
            path => new(File.ReadAllBytes(System.IO.Path.Combine(folder, path)), null)
        )
        {
            Hoop = hoop,
            Jobs = 2,
        };
    }

    private static string Find()
    {
        var folder = AppContext.BaseDirectory;
        while (!File.Exists(System.IO.Path.Combine(folder, "Splitter.sln")))
            folder =
                System.IO.Path.GetDirectoryName(folder)
                ?? throw new InvalidOperationException("The tests do not run inside a checkout.");
        return folder;
    }
}
