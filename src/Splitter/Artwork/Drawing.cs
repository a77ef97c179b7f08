using System.Collections.Immutable;
using Splitter.Artwork.Tapes;
using Splitter.Diagnostics;
using Splitter.Geometry;
using Splitter.Recipes;

namespace Splitter.Artwork;

/// <summary>The artwork at its finished size: what is sewn, in sewing order. Origin at its top left corner.</summary>
/// <param name="Width">Micrometres.</param>
/// <param name="Height">Micrometres.</param>
/// <param name="Shapes">
/// Later ones lie over earlier ones, which have been cut away below them unless they came as stitches.
/// </param>
internal sealed record Drawing(int Width, int Height, ImmutableArray<SewThread> Threads, ImmutableArray<Shape> Shapes)
{
    /// <summary>The box around all that is sewn.</summary>
    internal Box Bounds { get; } = Box.Around(Shapes.Select(s => s.Footprint.Bounds));

    /// <summary>It came as stitches, which every shape keeps, in their order.</summary>
    internal bool IsStitched => Shapes is [{ Original.IsEmpty: false }, ..];
}

/// <summary>A thread that the drawing uses: the recipe's name for its colour, or the colour itself as a name.</summary>
/// <param name="Color"><c>#rrggbb</c>, lower case.</param>
internal sealed record SewThread(string Name, string Color);

/// <summary>How a shape is sewn, every default filled in. Micrometres and degrees.</summary>
internal sealed record SewStyle
{
    /// <summary>Direction of fill rows, degrees clockwise from x.</summary>
    public double Angle { get; init; }

    /// <summary>The line that fill rows follow; null for straight rows.</summary>
    internal Guide? Guide { get; init; }

    /// <summary>Coordinates along and across fill rows.</summary>
    internal Frame Rows => Guide ?? (Frame)new StraightFrame(Angle);

    /// <summary>Distance of fill rows, or of satin stitches along their column.</summary>
    public int RowSpacing { get; init; }

    /// <summary>Longest stitch of a fill row or a run.</summary>
    public int StitchLength { get; init; }

    /// <summary>How far the penetrations of a fill row are moved against those of the row before.</summary>
    public Stagger Stagger { get; init; } = Stagger.Usual;

    /// <summary>How often a run goes over its lines.</summary>
    public Passes Passes { get; init; } = Passes.Single;

    /// <summary>In sewing order.</summary>
    public ImmutableArray<UnderlayKind> Underlay { get; init; } = [];

    /// <summary>How far a stitch reaches past the edge on each side.</summary>
    public int Pull { get; init; }

    /// <summary>How far a fill is held back across its rows; its footprint is already.</summary>
    public int Push { get; init; }
}

/// <summary>One thing that is sewn with one thread. Its kind says what geometry the stitches follow.</summary>
internal abstract record Shape
{
    /// <summary>Unique in the drawing; the artwork's own id where it has one.</summary>
    public required string Id { get; init; }

    /// <summary>Where the artwork draws it.</summary>
    public required Place Place { get; init; }

    /// <summary>Index into <see cref="Drawing.Threads"/>.</summary>
    public required int Thread { get; init; }

    /// <summary>How it is sewn.</summary>
    public required SewStyle Style { get; init; }

    /// <summary>It must lie in one field, whole.</summary>
    public bool KeepWhole { get; init; }

    /// <summary>Where a rule says so, if that tells more than where the artwork draws it.</summary>
    public Place? KeptWholeAt { get; init; }

    /// <summary>It is to lie in one field, if that asks for no hooping more.</summary>
    public bool WantsWhole { get; init; }

    /// <summary>
    /// The ground that its stitches cover, as far as it is seen; all of it where they came with it, later shapes over
    /// it or not.
    /// </summary>
    public required Region Footprint { get; init; }

    /// <summary>The stitches that it came with, in sewing order; none for what is still to be stitched.</summary>
    internal ImmutableArray<OriginalThread> Original { get; init; } = [];
}

/// <summary>An area filled with rows; its footprint is what the rows fill.</summary>
internal sealed record FillShape : Shape
{
    /// <summary>Of the footprint, what reaches under later shapes along edges that show, and ends there.</summary>
    internal Region Rims { get; init; } = Region.Empty;

    /// <summary>
    /// Of the footprint, what lies further under later shapes than a rim, and is sewn since it is narrow.
    /// </summary>
    internal Region Deep { get; init; } = Region.Empty;

    /// <summary>Of the footprint, what lies on thread of earlier shapes.</summary>
    internal Region Laid { get; init; } = Region.Empty;
}

/// <summary>One or more columns sewn across.</summary>
internal sealed record SatinShape : Shape
{
    /// <summary>In sewing order.</summary>
    public required ImmutableArray<Column> Columns { get; init; }
}

/// <summary>One or more lines of stitches.</summary>
internal sealed record RunShape : Shape
{
    /// <summary>In sewing order.</summary>
    public required ImmutableArray<Polyline> Lines { get; init; }
}

/// <summary>
/// A satin column: rungs along its length, each from its left to its right edge as one walks along it. Between
/// neighbouring rungs both edges run straight. At least two rungs; a closed column's last rung repeats its first.
/// </summary>
internal sealed record Column(ImmutableArray<Rung> Rungs)
{
    /// <summary>Along the edge that is longer, µm.</summary>
    internal double Length =>
        Math.Max(
            new Polyline([.. Rungs.Select(r => r.Left)]).Length,
            new Polyline([.. Rungs.Select(r => r.Right)]).Length
        );

    internal Column Moved(Point by) => new([.. Rungs.Select(r => new Rung(r.Left + by, r.Right + by))]);

    /// <summary>
    /// Mean width of columns by their length, µm: a round end or a bend has many rungs, and does not count for more.
    /// </summary>
    internal static double MeanWidth(ImmutableArray<Column> columns)
    {
        var (area, length) = (0.0, 0.0);
        foreach (var column in columns)
            for (var i = 1; i < column.Rungs.Length; i++)
            {
                var (from, to) = (column.Rungs[i - 1], column.Rungs[i]);
                var on = from.Middle.DistanceTo(to.Middle);
                (area, length) = (area + (on * (from.Width + to.Width) / 2), length + on);
            }
        return length > 0 ? area / length : columns.SelectMany(c => c.Rungs).Average(r => r.Width);
    }
}

/// <summary>One rung of a column.</summary>
internal readonly record struct Rung(Point Left, Point Right)
{
    /// <summary>Its middle.</summary>
    public Point Middle => Left.Towards(Right, 0.5);

    /// <summary>Its length in micrometres.</summary>
    public double Width => Left.DistanceTo(Right);

    /// <summary>The stretch between two shares of it, counted from its left end.</summary>
    internal Rung Part(double from, double to) => new(Left.Towards(Right, from), Left.Towards(Right, to));
}
