using System.Collections.Immutable;
using Splitter.Diagnostics;

namespace Splitter.Recipes;

/// <summary>Artwork in a file, or shapes in the recipe itself: exactly one of the two.</summary>
internal sealed record ArtworkSource
{
    /// <summary>
    /// SVG, GeoJSON or a tape, relative to the recipe; null when the recipe has <see cref="Shapes"/>.
    /// </summary>
    public string? File { get; init; }

    /// <summary>It is stitches already.</summary>
    internal bool IsTape => File is { } file && IsTapeName(file);

    /// <summary>Shapes written in the recipe.</summary>
    public ImmutableArray<InlineShape> Shapes { get; init; } = [];

    /// <summary>Finished width; null takes the size that the artwork itself states.</summary>
    public int? Width { get; init; }

    /// <summary>
    /// Names of the threads of a tape's colour blocks; none takes the recipe's threads in their order.
    /// </summary>
    public ImmutableArray<string> Blocks { get; init; } = [];

    /// <summary>How shapes are sewn: the first rule that matches wins.</summary>
    public ImmutableArray<SewRule> Sew { get; init; } = [];

    internal static bool IsTapeName(string file) => file.EndsWith(".dst", StringComparison.OrdinalIgnoreCase);
}

/// <summary>A shape written in the recipe as well-known text (OGC 06-103r4), in millimetres, x right, y down.</summary>
/// <param name="Place">Where its text stands.</param>
internal sealed record InlineShape(
    string Wkt,
    string? Id,
    ImmutableArray<string> Classes,
    string? Fill,
    string? Stroke,
    int StrokeWidth,
    Place Place
);
