namespace Splitter.Outputs.Pictures;

/// <summary>
/// Colours of what is drawn over the artwork: none that thread often has, each apart from the others.
/// </summary>
internal static class MarkInk
{
    internal static readonly Colour Corner = Colour.Of("#c2185b");
    internal static readonly Colour Alignment = Colour.Of("#6a1b9a");
    internal static readonly Colour Placement = Colour.Of("#00796b");
    internal static readonly Colour Frame = Colour.Of("#8a939b");

    /// <summary>What a person must look at: seams through line work, errors that no overlap covers.</summary>
    internal static readonly Colour TooFar = Colour.Of("#d32f2f");

    /// <summary>Fields, one after the other, and again from the first: none like a seam or a corner.</summary>
    private static readonly Colour[] Fields =
    [
        Colour.Of("#1a5fb4"),
        Colour.Of("#6d3fa8"),
        Colour.Of("#00747d"),
        Colour.Of("#7a4a2b"),
        Colour.Of("#2b3a67"),
        Colour.Of("#50626e"),
    ];

    internal static Colour Field(int index) => Fields[index % Fields.Length];
}
