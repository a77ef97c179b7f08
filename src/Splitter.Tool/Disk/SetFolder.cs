namespace Splitter.Tool.Disk;

/// <summary>
/// Where one set lives, and the two siblings on the same volume through which it is replaced. The siblings exist only
/// while a run is at work, or after one that was cut short.
/// </summary>
/// <param name="Output">The recipe's output folder.</param>
/// <param name="Hoop">The hoop's name.</param>
/// <param name="Recipe">The full path of the recipe that it is made of; null where that is not asked.</param>
internal sealed record SetFolder(string Output, string Hoop, string? Recipe = null)
{
    /// <summary>The set itself.</summary>
    internal string Path { get; } = System.IO.Path.Combine(Output, Hoop);

    /// <summary>A new set that is still being written: of no worth when a run was cut short.</summary>
    internal string Unfinished { get; } = Sibling(Output, Hoop, "unfinished");

    /// <summary>A whole set: the new one before the exchange, the old one after it.</summary>
    internal string Exchanged { get; } = Sibling(Output, Hoop, "exchange");

    /// <summary>The old set, where a system cannot exchange in one step.</summary>
    internal string Aside { get; } = Sibling(Output, Hoop, "aside");

    /// <summary>Held by the run that is at work.</summary>
    internal string Lock { get; } = Sibling(Output, Hoop, "lock");

    private static string Sibling(string output, string hoop, string purpose) =>
        System.IO.Path.Combine(output, $".{hoop}.splitter-{purpose}");
}
