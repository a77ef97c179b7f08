using System.Collections.Immutable;
using Splitter.Artwork;
using Splitter.Geometry;

namespace Splitter.Cutting;

/// <summary>What one hooping sews of one shape.</summary>
public abstract record Piece
{
    /// <summary>The shape it is cut from.</summary>
    public required Shape Shape { get; init; }

    /// <summary>Index of the hooping.</summary>
    public required int Hooping { get; init; }

    /// <summary>Seams run through it: it is not the whole shape.</summary>
    public bool IsCut { get; init; }
}

/// <summary>
/// A fill's piece. Rows lie on one lattice over the whole artwork; with interleaved edges those with even numbers reach
/// further past some seams, those with odd numbers past the others.
/// </summary>
public sealed record FillPiece : Piece
{
    /// <summary>Ground of this hooping alone, without any overlap: where underlay lies.</summary>
    public required Region Core { get; init; }

    /// <summary>Ground of rows with even lattice numbers.</summary>
    public required Region EvenRows { get; init; }

    /// <summary>Ground of rows with odd lattice numbers; the same as the even ones where edges are plain or whole.</summary>
    public required Region OddRows { get; init; }
}

/// <summary>A satin shape's piece: columns cut across, past the seam by the overlap.</summary>
public sealed record SatinPiece : Piece
{
    /// <summary>In sewing order.</summary>
    public required ImmutableArray<Column> Columns { get; init; }
}

/// <summary>A run shape's piece: lines past the seam by the overlap.</summary>
public sealed record RunPiece : Piece
{
    /// <summary>In sewing order.</summary>
    public required ImmutableArray<Polyline> Lines { get; init; }
}
