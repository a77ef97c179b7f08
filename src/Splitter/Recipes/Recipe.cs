using System.Collections.Immutable;
using Splitter.Diagnostics;
using Splitter.Geometry;

namespace Splitter.Recipes;

/// <summary>
/// One recipe, read and checked, every default filled in. Lengths in whole micrometres, angles in degrees clockwise as
/// seen on the drawing.
/// </summary>
public sealed record Recipe
{
    /// <summary>The recipe's file name as it was given; the sources that it names are relative to its folder.</summary>
    public required string File { get; init; }

    /// <summary>What the work is called; the file's name when the recipe does not say.</summary>
    public required string Title { get; init; }

    /// <summary>What is sewn.</summary>
    public required ArtworkSource Artwork { get; init; }

    /// <summary>Named threads; a colour of the artwork takes the thread of exactly its colour, else a name of its own.</summary>
    public ImmutableArray<NamedThread> Threads { get; init; } = [];

    /// <summary>What it is sewn on.</summary>
    public required Cloth Cloth { get; init; }

    /// <summary>The hoops it must work for, at least one, in the recipe's order.</summary>
    public required ImmutableArray<Hoop> Hoops { get; init; }

    /// <summary>Where fields lie.</summary>
    public required FieldRules Fields { get; init; }

    /// <summary>How parts meet.</summary>
    public required OverlapRules Overlap { get; init; }

    /// <summary>How a hooping finds the last one.</summary>
    public required RegistrationRules Registration { get; init; }

    /// <summary>How long things take.</summary>
    public Machine Machine { get; init; } = new();

    /// <summary>What is written, and where to.</summary>
    public required OutputRules Output { get; init; }

    /// <summary>Where each value stands in the file, by its key path (<c>hoops[1].field</c>).</summary>
    public required ImmutableDictionary<string, Place> Places { get; init; }

    /// <summary>
    /// The place of a key path, or of the nearest key above it that the file has; else that of the next path. Artwork is
    /// in every file, so an editor always has a line to go to.
    /// </summary>
    internal Place PlaceOf(params ReadOnlySpan<string> paths)
    {
        foreach (var given in paths)
            for (var path = given; path.Length > 0; path = path[..Math.Max(0, path.LastIndexOfAny(['.', '[']))])
                if (Places.TryGetValue(path, out var place))
                    return place;
        return Places.TryGetValue("artwork", out var artwork) ? artwork : Place.Whole(File);
    }
}

/// <summary>Artwork in a file, or shapes in the recipe itself: exactly one of the two.</summary>
public sealed record ArtworkSource
{
    /// <summary>SVG or GeoJSON, relative to the recipe; null when the recipe has <see cref="Shapes"/>.</summary>
    public string? File { get; init; }

    /// <summary>Shapes written in the recipe.</summary>
    public ImmutableArray<InlineShape> Shapes { get; init; } = [];

    /// <summary>Finished width; null takes the size that the artwork itself states.</summary>
    public int? Width { get; init; }

    /// <summary>How shapes are sewn: the first rule that matches wins.</summary>
    public ImmutableArray<SewRule> Sew { get; init; } = [];
}

/// <summary>A shape written in the recipe as well-known text (OGC 06-103r4), in millimetres, x right, y down.</summary>
/// <param name="Place">Where its text stands.</param>
public sealed record InlineShape(
    string Wkt,
    string? Id,
    ImmutableArray<string> Classes,
    string? Fill,
    string? Stroke,
    int StrokeWidth,
    Place Place
);

/// <summary>How something is sewn.</summary>
public enum SewAs
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
public enum UnderlayKind
{
    /// <summary>A run along the inside of the edge.</summary>
    Edge,

    /// <summary>Wide rows across the direction of the visible ones.</summary>
    Cross,

    /// <summary>A run along the middle of a column.</summary>
    Centre,
}

/// <summary>How often a run goes over each stretch of its lines, through the same holes.</summary>
public enum Passes
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
public sealed record SewMatch(string? Id, string? Class, string? Fill, string? Stroke, LengthBound? StrokeWidth);

/// <summary>A comparison with a length in micrometres.</summary>
/// <param name="Operator">One of <c>&lt;</c>, <c>&lt;=</c>, <c>&gt;</c>, <c>&gt;=</c>.</param>
public sealed record LengthBound(string Operator, int Length)
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
public sealed record SewRule(string Path, SewMatch Match)
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

    /// <summary>How often a run goes over its lines.</summary>
    public Passes? Passes { get; init; }

    /// <summary>In sewing order; empty means none.</summary>
    public ImmutableArray<UnderlayKind>? Underlay { get; init; }

    /// <summary>How far a stitch reaches past the edge on each side, against the thread's pull.</summary>
    public int? Pull { get; init; }

    /// <summary>How far a fill is held back at edges along its rows, against the rows' push.</summary>
    public int? Push { get; init; }
}

/// <summary>A thread of the recipe.</summary>
/// <param name="Color"><c>#rrggbb</c>, lower case.</param>
public sealed record NamedThread(string Name, string Color);

/// <summary>What the work is sewn on.</summary>
public sealed record Cloth
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
public sealed record Stretch
{
    /// <summary>Along the warp.</summary>
    public double Warp { get; init; }

    /// <summary>Along the weft.</summary>
    public double Weft { get; init; }

    /// <summary>At 45 degrees to both.</summary>
    public double Bias { get; init; }

    /// <summary>Direction of the warp on the drawing, degrees clockwise from x.</summary>
    public double WarpDirection { get; init; } = 90;
}

/// <summary>A hoop: a name and the field that a machine can sew in it.</summary>
public sealed record Hoop(string Name, int Width, int Height)
{
    /// <summary>Where cloth passes under the machine's arm; null when the recipe does not say.</summary>
    public Throat? Throat { get; init; }
}

/// <summary>
/// The space between the needle and the column of the machine's arm: cloth beyond the field's edge on that side is rolled
/// up there.
/// </summary>
/// <param name="Side">Where it is, as the machine holds the hoop.</param>
/// <param name="Room">How much cloth goes in, from the field's edge; null for any amount.</param>
public sealed record Throat(HoopSide Side, int? Room);

/// <summary>A side of the hoop as the machine holds it: u to the right, v to the top.</summary>
public enum HoopSide
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

/// <summary>Where fields lie.</summary>
public sealed record FieldRules
{
    /// <summary>One of the three ways to place fields.</summary>
    public required FieldPlacement Place { get; init; }

    /// <summary>Which ways <see cref="FewestFields"/> may lie; hand-placed fields state theirs.</summary>
    public ImmutableArray<Turn> Turns { get; init; } = UsualTurns;

    /// <summary>
    /// The turns of a recipe that names none: a hoop turned upside down covers no other ground than upright, and is a
    /// chance to lay the cloth the wrong way round.
    /// </summary>
    internal static readonly ImmutableArray<Turn> UsualTurns = [Turn.None, Turn.Quarter];

    /// <summary>How far stitches stay away from the field's edge.</summary>
    public int Clearance { get; init; } = 3 * Units.Millimetre;

    /// <summary>Fields that are there in any case.</summary>
    public ImmutableArray<ListedField> Fixed { get; init; } = [];

    /// <summary>Ground on the drawing that no field may lie over.</summary>
    public ImmutableArray<Box> Forbidden { get; init; } = [];

    /// <summary>The field that holds this point of the drawing is sewn first; null for no wish.</summary>
    public Point? First { get; init; }
}

/// <summary>A way to place fields.</summary>
public abstract record FieldPlacement;

/// <summary>As few fields as cover the artwork.</summary>
public sealed record FewestFields : FieldPlacement;

/// <summary>Fields placed by hand.</summary>
public sealed record ListedFields(ImmutableArray<ListedField> Fields) : FieldPlacement;

/// <summary>One field placed by hand: its centre in design space, on the 0.1 mm grid.</summary>
public sealed record ListedField(Point Centre, Turn Turn);

/// <summary>Fields evenly in columns and rows over the artwork, all turned the same way.</summary>
public sealed record GridFields(int Columns, int Rows, Turn Turn) : FieldPlacement;

/// <summary>How parts meet.</summary>
public sealed record OverlapRules
{
    /// <summary>No recipe asks for more than this, micrometres: an overlap is sewn twice, and gets thick.</summary>
    internal const int Widest = 20 * Units.Millimetre;

    /// <summary>How far a cut edge runs past the seam; null sizes it from the predicted fit.</summary>
    public int? Width { get; init; }

    /// <summary>Where seams run.</summary>
    public SeamRule Seams { get; init; }

    /// <summary>How the rows of a fill end at a seam.</summary>
    public EdgeRule Edges { get; init; }
}

/// <summary>Where seams run.</summary>
public enum SeamRule
{
    /// <summary>Where they show least.</summary>
    LeastVisible,

    /// <summary>Straight, in the middle of the common ground.</summary>
    Straight,
}

/// <summary>How the rows of a fill end at a seam.</summary>
public enum EdgeRule
{
    /// <summary>Alternate rows reach further, so that no straight line shows.</summary>
    Interleaved,

    /// <summary>All rows reach equally far.</summary>
    Plain,
}

/// <summary>How a hooping finds the last one.</summary>
public sealed record RegistrationRules
{
    /// <summary>How closely a corner is set over a tack: one standard deviation per axis.</summary>
    public int Accuracy { get; init; } = 300;

    /// <summary>No recipe asks for more corners than this: each is a tack to set and to take out at every hooping.</summary>
    internal const int MostCorners = 6;

    /// <summary>How many corners a hooping takes where there is room; at least two.</summary>
    public int CornerCount { get; init; } = 3;

    /// <summary>Length of a corner's arm.</summary>
    public int CornerArm { get; init; } = 8 * Units.Millimetre;

    /// <summary>Alignment stitches are sewn.</summary>
    public bool Alignment { get; init; } = true;
}

/// <summary>Kinds of files that an output folder may hold.</summary>
public enum OutputKind
{
    /// <summary>Machine file.</summary>
    Tape,

    /// <summary>Pictures as SVG: every part, and the overview.</summary>
    Svg,

    /// <summary>Every stitch as text.</summary>
    Csv,

    /// <summary>The overview as PNG.</summary>
    Png,

    /// <summary>The page beside the machine, for paper and screen.</summary>
    WorkSheet,

    /// <summary>The design and every field in true scale on paper, as PDF.</summary>
    Template,
}

/// <summary>Paper to print on.</summary>
public enum Paper
{
    /// <summary>210 x 297 mm, ISO 216.</summary>
    A4,

    /// <summary>8.5 x 11 in.</summary>
    Letter,
}

/// <summary>A language of texts that people read.</summary>
public enum SheetLanguage
{
    /// <summary>English.</summary>
    English,

    /// <summary>German.</summary>
    German,
}

/// <summary>How texts that people read write lengths.</summary>
public enum LengthUnit
{
    /// <summary>Millimetres, thread in metres.</summary>
    Millimetres,

    /// <summary>Inches, thread in yards.</summary>
    Inches,
}

/// <summary>What is written, and where to.</summary>
public sealed record OutputRules
{
    /// <summary>Relative to the recipe, with forward slashes.</summary>
    public required string Folder { get; init; }

    /// <summary>The kinds that are written; manifest and sums always are.</summary>
    public ImmutableArray<OutputKind> Files { get; init; } =
    [OutputKind.Tape, OutputKind.Svg, OutputKind.Csv, OutputKind.Png];

    /// <summary>What is printed on.</summary>
    public Paper Paper { get; init; }

    /// <summary>Of stop texts, work sheet and template.</summary>
    public SheetLanguage Language { get; init; }

    /// <summary>In stop texts, work sheet and template.</summary>
    public LengthUnit Lengths { get; init; }
}
