namespace Splitter.Recipes;

/// <summary>A hoop: a name and the field that a machine can sew in it.</summary>
internal sealed record Hoop(string Name, int Width, int Height)
{
    /// <summary>Where cloth passes under the machine's arm; null when the recipe does not say.</summary>
    public Throat? Throat { get; init; }
}

/// <summary>
/// The space between the needle and the column of the machine's arm: cloth beyond the field's edge on that side is
/// rolled up there.
/// </summary>
/// <param name="Side">Where it is, as the machine holds the hoop.</param>
/// <param name="Room">How much cloth goes in, from the field's edge; null for any amount.</param>
internal sealed record Throat(HoopSide Side, int? Room);

/// <summary>A side of the hoop as the machine holds it: u to the right, v to the top.</summary>
internal enum HoopSide
{
    /// <summary>Where u grows.</summary>
    Right,

    /// <summary>Where v grows.</summary>
    Top,

    /// <summary>Where u lessens.</summary>
    Left,

    /// <summary>Where v lessens.</summary>
    Bottom,
}
