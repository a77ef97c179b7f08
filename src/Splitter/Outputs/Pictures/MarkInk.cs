namespace Splitter.Outputs.Pictures;

/// <summary>Colours of what is drawn over the artwork: none that thread often has, each apart from the others.</summary>
internal static class MarkInk
{
    internal static readonly Colour Corner = Colour.Of("#c2185b");
    internal static readonly Colour Alignment = Colour.Of("#6a1b9a");
    internal static readonly Colour Placement = Colour.Of("#00796b");
    internal static readonly Colour Frame = Colour.Of("#8a939b");

    /// <summary>Outlines of fields, one after the other, and again from the first.</summary>
    private static readonly Colour[] Fields =
    [
        Colour.Of("#d1495b"),
        Colour.Of("#00798c"),
        Colour.Of("#8e5aa8"),
        Colour.Of("#d98e04"),
        Colour.Of("#30638e"),
        Colour.Of("#5b8c2a"),
        Colour.Of("#a0522d"),
        Colour.Of("#2a9d8f"),
    ];

    internal static Colour Field(int index) => Fields[index % Fields.Length];
}
