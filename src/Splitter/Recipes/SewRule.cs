using System.Collections.Immutable;

namespace Splitter.Recipes;

/// <summary>How something is sewn.</summary>
internal enum SewAs
{
    /// <summary>Rows of stitches that fill an area.</summary>
    Fill,

    /// <summary>Stitches across a narrow column.</summary>
    Satin,

    /// <summary>A line of stitches.</summary>
    Run,

    /// <summary>Not at all.</summary>
    Leave,
}

/// <summary>Stitches below the visible ones, that hold the cloth.</summary>
internal enum UnderlayKind
{
    /// <summary>A run along the inside of the edge.</summary>
    Edge,

    /// <summary>Wide rows across the direction of the visible ones.</summary>
    Cross,

    /// <summary>A run along the middle of a column.</summary>
    Centre,
}

/// <summary>How often a run goes over each stretch of its lines, through the same holes.</summary>
internal enum Passes
{
    /// <summary>Once.</summary>
    Single = 1,

    /// <summary>Out and back.</summary>
    Double = 2,

    /// <summary>Three times, stitch by stitch.</summary>
    Triple = 3,
}

/// <summary>What a rule looks for; a null asks nothing. All that is asked must hold.</summary>
/// <param name="Id">The element's id, or that of a group it is in.</param>
/// <param name="Class">A class of the element, or of a group it is in.</param>
/// <param name="Fill">Its fill colour, <c>#rrggbb</c>.</param>
/// <param name="Stroke">Its stroke colour, <c>#rrggbb</c>.</param>
/// <param name="StrokeWidth">A bound on its stroke's finished width.</param>
internal sealed record SewMatch(string? Id, string? Class, string? Fill, string? Stroke, LengthBound? StrokeWidth);

/// <summary>A comparison with a length in micrometres.</summary>
/// <param name="Operator">One of <c>&lt;</c>, <c>&lt;=</c>, <c>&gt;</c>, <c>&gt;=</c>.</param>
internal sealed record LengthBound(string Operator, int Length)
{
    /// <summary>The comparison holds for a length in micrometres.</summary>
    public bool Holds(double length) =>
        Operator switch
        {
            "<" => length < Length,
            "<=" => length <= Length,
            ">" => length > Length,
            _ => length >= Length,
        };
}

/// <summary>One rule of <c>sew:</c>. A null leaves the default for the kind of stitch.</summary>
/// <param name="Path">The rule's key path in the recipe, for messages.</param>
internal sealed record SewRule(string Path, SewMatch Match)
{
    /// <summary>Fill, satin, run or leave.</summary>
    public SewAs? As { get; init; }

    /// <summary>The shape lies in one field, whole.</summary>
    public bool? KeepWhole { get; init; }

    /// <summary>Direction of fill rows, degrees.</summary>
    public double? Angle { get; init; }

    /// <summary>The line that fill rows follow: its id in the artwork, or well-known text in millimetres.</summary>
    public string? Guide { get; init; }

    /// <summary>Distance of fill rows, or of satin stitches along their column.</summary>
    public int? RowSpacing { get; init; }

    /// <summary>Longest stitch of a fill row or a run.</summary>
    public int? StitchLength { get; init; }

    /// <summary>How far the penetrations of a fill row are moved against those of the row before.</summary>
    public Stagger? Stagger { get; init; }

    /// <summary>How often a run goes over its lines.</summary>
    public Passes? Passes { get; init; }

    /// <summary>In sewing order; empty means none.</summary>
    public ImmutableArray<UnderlayKind>? Underlay { get; init; }

    /// <summary>How far a stitch reaches past the edge on each side, against the thread's pull.</summary>
    public int? Pull { get; init; }

    /// <summary>How far a fill is held back at edges along its rows, against the rows' push.</summary>
    public int? Push { get; init; }
}
