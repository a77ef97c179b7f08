using System.Collections.Immutable;
using Splitter.Artwork;
using Splitter.Geometry;

namespace Splitter.Cutting;

/// <summary>What one hooping sews of one shape.</summary>
internal abstract record Piece
{
    /// <summary>The shape it is cut from.</summary>
    public required Shape Shape { get; init; }

    /// <summary>Index of the hooping.</summary>
    public required int Hooping { get; init; }

    /// <summary>Seams run through it: it is not the whole shape.</summary>
    public bool IsCut { get; init; }

    /// <summary>The box around what it sews, pull aside.</summary>
    internal abstract Box Bounds { get; }
}

/// <summary>
/// A fill's piece. Rows lie on one lattice over the whole artwork; with interleaved edges those with even numbers reach
/// further past some seams, those with odd numbers past the others.
/// </summary>
internal sealed record FillPiece : Piece
{
    /// <summary>Ground of this hooping alone, without any overlap.</summary>
    public required Region Core { get; init; }

    /// <summary>Of this, where underlay lies; all of it if nothing else is said.</summary>
    internal Region Bare
    {
        get => field ?? Core;
        init;
    }

    /// <summary>Ground of rows with even lattice numbers.</summary>
    public required Region EvenRows { get; init; }

    /// <summary>
    /// Ground of rows with odd lattice numbers; the same as the even ones where edges are plain or whole.
    /// </summary>
    public required Region OddRows { get; init; }

    internal override Box Bounds => EvenRows.Bounds.Joined(OddRows.Bounds);
}

/// <summary>A satin shape's piece: columns cut across, past the seam by the overlap.</summary>
internal sealed record SatinPiece : Piece
{
    /// <summary>In sewing order.</summary>
    public required ImmutableArray<Column> Columns { get; init; }

    internal override Box Bounds =>
        Box.Around(Columns.SelectMany(c => c.Rungs).SelectMany(r => new[] { r.Left, r.Right }));
}

/// <summary>A run shape's piece: lines past the seam by the overlap.</summary>
internal sealed record RunPiece : Piece
{
    /// <summary>In sewing order.</summary>
    public required ImmutableArray<Polyline> Lines { get; init; }

    internal override Box Bounds => Box.Around(Lines.SelectMany(l => l.Points));
}
