using System.Collections.Immutable;
using Splitter.Diagnostics;
using Splitter.Geometry;

namespace Splitter.Artwork;

/// <summary>
/// One paint of one element of the artwork, at its finished size, before it is decided how it is sewn. An element with
/// fill and stroke is two of these, the fill first.
/// </summary>
internal abstract record DrawnElement
{
    /// <summary>
    /// The element's own id, or that of the <c>use</c> which draws it as a copy; null when it has none.
    /// </summary>
    public required string? Id { get; init; }

    /// <summary>Its own id and those of the groups (and <c>use</c> elements) it is in.</summary>
    public required ImmutableArray<string> Ids { get; init; }

    /// <summary>Its own classes and those of the groups it is in.</summary>
    public required ImmutableArray<string> Classes { get; init; }

    /// <summary>Where the artwork draws it; for a copy, where the <c>use</c> stands.</summary>
    public required Place Place { get; init; }

    /// <summary><c>#rrggbb</c>, lower case.</summary>
    public required string Color { get; init; }
}

/// <summary>
/// A painted area: fill rule, clip paths and, for a stroke that a transform makes uneven, its outline applied.
/// </summary>
internal sealed record DrawnArea : DrawnElement
{
    public required Region Ground { get; init; }
}

/// <summary>A painted line: curves flattened, dashes applied.</summary>
internal sealed record DrawnLine : DrawnElement
{
    /// <summary>In drawing order; a closed path's last point repeats its first.</summary>
    public required ImmutableArray<Polyline> Paths { get; init; }

    /// <summary>Finished width, micrometres.</summary>
    public required int Width { get; init; }

    public required Cap Cap { get; init; }

    public required Join Join { get; init; }

    /// <summary>SVG's <c>stroke-miterlimit</c>.</summary>
    public double MitreLimit { get; init; } = 4;

    /// <summary>Only what lies inside is painted; null for everything.</summary>
    public Region? Clip { get; init; }
}

/// <summary>Artwork as it was read: its finished size in micrometres and what is painted, in drawing order.</summary>
internal sealed record Sheet(int Width, int Height, ImmutableArray<DrawnElement> Elements)
{
    /// <summary>
    /// False where its size is a bare number, so that a unit of the drawing is taken for a CSS pixel.
    /// </summary>
    internal bool StatesUnit { get; init; } = true;

    /// <summary>The width that a drawing states with its unit, µm; null where it has none.</summary>
    internal int? StatedWidth { get; init; }
}
