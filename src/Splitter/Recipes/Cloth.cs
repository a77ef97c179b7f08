using Splitter.Geometry;

namespace Splitter.Recipes;

/// <summary>What the work is sewn on.</summary>
internal sealed record Cloth
{
    /// <summary>Width and height; null when the recipe gives none.</summary>
    public (int Width, int Height)? Size { get; init; }

    /// <summary>The artwork's top left corner, from the cloth's.</summary>
    public Point ArtworkAt { get; init; }

    /// <summary>The cloth on the drawing; null when the recipe gives no size.</summary>
    internal Box? OnDrawing =>
        Size is var (width, height)
            ? new Box(-ArtworkAt.X, -ArtworkAt.Y, width - ArtworkAt.X, height - ArtworkAt.Y)
            : null;

    /// <summary>The upright fold's distance from the cloth's left edge; null for none.</summary>
    public int? UprightFold { get; init; }

    /// <summary>The level fold's distance from the cloth's top edge; null for none.</summary>
    public int? LevelFold { get; init; }

    /// <summary>Thickness, for thread consumption.</summary>
    public int Thickness { get; init; } = 500;

    /// <summary>Layers of thread that cloth and needle bear over any spot. Common practice, no source: about 3.</summary>
    public int MostLayers { get; init; } = 3;

    /// <summary><c>#rrggbb</c>, lower case.</summary>
    public string Color { get; init; } = "#f4efe4";

    /// <summary>How far it gives in the hoop.</summary>
    public Stretch Stretch { get; init; } = new();
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
