using Splitter.Geometry;

namespace Splitter.Recipes;

/// <summary>What the work is sewn on.</summary>
internal sealed record Cloth
{
    /// <summary>
    /// Around the artwork of a cloth that is cut to it, µm: to hold, to turn in, and for corners. Common practice, no
    /// source.
    /// </summary>
    private const int Margin = 50 * Units.Millimetre;

    /// <summary>
    /// Beside the hoop's field on a cloth that is cut to the artwork, µm: to hold on to. By eye, no source.
    /// </summary>
    private const int Grip = 20 * Units.Millimetre;

    /// <summary>Cloth is cut to whole centimetres.</summary>
    private const int CutTo = 10 * Units.Millimetre;

    /// <summary>Centred artwork begins at a whole millimetre, that is found with a ruler.</summary>
    private const int CentredOn = Units.Millimetre;

    /// <summary>Width and height; null when the recipe gives none, or as long as the artwork's is not known.</summary>
    public (int Width, int Height)? Size { get; init; }

    /// <summary>It is cut to the artwork, which lies in its middle.</summary>
    public bool IsCutToArtwork { get; init; }

    /// <summary>The artwork's top left corner, from the cloth's.</summary>
    public Point ArtworkAt { get; init; }

    /// <summary>The artwork lies in its middle, wherever that is.</summary>
    public bool IsArtworkCentred { get; init; }

    /// <summary>The cloth on the drawing; null when the recipe gives no size.</summary>
    internal Box? OnDrawing =>
        Size is var (width, height)
            ? new Box(-ArtworkAt.X, -ArtworkAt.Y, width - ArtworkAt.X, height - ArtworkAt.Y)
            : null;

    /// <summary>Where it is folded.</summary>
    public ClothFolds Folds { get; init; } = new(null, null);

    /// <summary>The upright fold's distance from the cloth's left edge; null for none.</summary>
    internal int? UprightFold => Size is var (width, _) ? Folds.Upright?.On(width) : null;

    /// <summary>The level fold's distance from the cloth's top edge; null for none.</summary>
    internal int? LevelFold => Size is var (_, height) ? Folds.Level?.On(height) : null;

    /// <summary>Thickness, for thread consumption.</summary>
    public int Thickness { get; init; } = 500;

    /// <summary>
    /// Layers of thread that cloth and needle bear over any spot. Common practice, no source: about 3.
    /// </summary>
    public int MostLayers { get; init; } = 3;

    /// <summary><c>#rrggbb</c>, lower case.</summary>
    public string Color { get; init; } = "#f4efe4";

    /// <summary>How far it gives in the hoop.</summary>
    public Stretch Stretch { get; init; } = new();

    /// <summary>With what depends on the artwork worked out.</summary>
    /// <param name="width">The artwork's, as is the height.</param>
    /// <param name="hoop">
    /// That is used. Parts must not depend on the others: whoever strikes one has sewn with this one perhaps.
    /// </param>
    internal Cloth Under(int width, int height, Hoop hoop)
    {
        var least = Math.Max(hoop.Width, hoop.Height) + (2 * Grip);
        int Cut(int side) => (Math.Max(side + (2 * Margin), least) + CutTo - 1) / CutTo * CutTo;
        int Before(int cloth, int side) => (cloth - side) / 2 / CentredOn * CentredOn;
        var cut = IsCutToArtwork ? (Cut(width), Cut(height)) : Size;
        return cut is var (across, down) && IsArtworkCentred
            ? this with
            {
                Size = cut,
                ArtworkAt = new(Before(across, width), Before(down, height)),
            }
            : this;
    }

    /// <summary>
    /// The least distance from the cloth's edge, no less than this, at which centred artwork may begin.
    /// </summary>
    internal static int UpToPlace(int distance) => (distance + CentredOn - 1) / CentredOn * CentredOn;
}

/// <summary>
/// How far cloth gives between hoopings: one standard deviation of the strain, as a share (0.002 is 0.2 %).
/// </summary>
internal sealed record Stretch
{
    /// <summary>Along the warp.</summary>
    public double Warp { get; init; }

    /// <summary>Along the weft.</summary>
    public double Weft { get; init; }

    /// <summary>At 45 degrees to both.</summary>
    public double Bias { get; init; }

    /// <summary>It does not give at all, or nothing is known of it.</summary>
    internal bool IsNone => this is { Warp: 0, Weft: 0, Bias: 0 };

    /// <summary>Direction of the warp on the drawing, degrees clockwise from x.</summary>
    public double WarpDirection { get; init; } = 90;
}
