using Splitter.Recipes.Language;

namespace Splitter.Recipes.Keys;

/// <summary>The keys of <c>throat</c> in a hoop.</summary>
internal static class ThroatKeys
{
    /// <summary>
    /// Of a flat machine, as one sits before it, the arm's column stands to the right of the needle (common practice,
    /// no source).
    /// </summary>
    internal static readonly Key<HoopSide> Side = new(
        "side",
        new WordKind<HoopSide>([
            ("right", HoopSide.Right),
            ("top", HoopSide.Top),
            ("left", HoopSide.Left),
            ("bottom", HoopSide.Bottom),
        ])
    )
    {
        Says = "The side of the hoop, as the machine holds it, on which the arm's column stands.",
        Example = "right",
        Default = "right",
    };

    internal static readonly Key<int> Room = new("room", new LengthKind("0 mm", "20000 mm"))
    {
        Says = "How much cloth, measured flat from the field's edge, can be rolled up there.",
        Example = "400 mm",
        Otherwise = "any amount, but as little as may be",
    };

    internal static readonly GroupKind<Throat> Group = new(
        [Side, Room],
        group => new(group.Get(Side), group.MaybeValue(Room))
    );
}
