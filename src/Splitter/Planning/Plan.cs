using System.Collections.Immutable;
using Splitter.Geometry;
using Splitter.Recipes;

namespace Splitter.Planning;

/// <summary>How one artwork is sewn with one hoop.</summary>
internal sealed record Plan
{
    /// <summary>The hoop.</summary>
    public required Hoop Hoop { get; init; }

    /// <summary>One hooping a field, in sewing order: the first is part A.</summary>
    public required ImmutableArray<Hooping> Hoopings { get; init; }

    /// <summary>No plan has fewer fields than this.</summary>
    public required int LowerBound { get; init; }

    /// <summary>A person has listed the fields, or asked for a grid.</summary>
    public bool IsPlacedByHand { get; init; }

    /// <summary>No plan has fewer fields; null where nothing is claimed, since a person has placed them.</summary>
    public bool? IsProven => IsPlacedByHand ? null : LowerBound == Hoopings.Length;

    /// <summary>For each shape of the drawing the hooping that sews it whole, or null when seams cut it.</summary>
    public required ImmutableArray<int?> Owners { get; init; }

    /// <summary>The lines along which territories meet.</summary>
    public required ImmutableArray<Seam> SeamLines { get; init; }

    /// <summary>Where parts meet, by the letters of both.</summary>
    public required ImmutableArray<PartJoin> Joins { get; init; }

    /// <summary>Registration corners, by the part that sews them and their number.</summary>
    public required ImmutableArray<Corner> Corners { get; init; }

    /// <summary>Fold lines that the first hooping sews on the bare stabilizer.</summary>
    public required ImmutableArray<PlacementLine> PlacementLines { get; init; }

    /// <summary>Where a shape is sewn before what lies under it.</summary>
    public ImmutableArray<TurnedLayer> TurnedLayers { get; init; } = [];

    /// <summary>What the seams show, and what straight ones would.</summary>
    public required SeamCost Seams { get; init; }
}

/// <summary>One mounting of the cloth and what it sews.</summary>
internal sealed record Hooping
{
    /// <summary>A, B, … Z, AA, …</summary>
    public required string Letter { get; init; }

    /// <summary>Where the hoop lies.</summary>
    public required Field Field { get; init; }

    /// <summary>
    /// Cloth beyond the field's edge that lies in the machine's throat, micrometres; null where nothing is known of it.
    /// </summary>
    public int? InThroat { get; init; }

    /// <summary>The ground whose artwork the field can sew: overlaps past a seam end at its edge.</summary>
    public required Box Ground { get; init; }

    /// <summary>The ground whose cut shapes this hooping sews. Territories of a plan do not overlap.</summary>
    public required Region Territory { get; init; }

    /// <summary>Indexes into <see cref="Plan.Corners"/> that this hooping is set by; empty for the first.</summary>
    public required ImmutableArray<int> Takes { get; init; }

    /// <summary>What those give; null for the first.</summary>
    public CornerSetting? Setting { get; init; }

    /// <summary>Indexes into <see cref="Plan.Corners"/> that it sews last, for later hoopings.</summary>
    public required ImmutableArray<int> Gives { get; init; }

    /// <summary>Stitches on the cloth that show the fit before the part's own stitching.</summary>
    public required ImmutableArray<AlignmentStitch> Alignments { get; init; }
}

/// <summary>
/// A registration corner: two loose arms that meet at a point. The donor sews it last of all; each receiver sews it
/// first, on the stabilizer, and the cloth's corner is set over it.
/// </summary>
/// <param name="Id">The donor's letter and a number.</param>
/// <param name="At">Where the arms meet, on the tape's grid.</param>
/// <param name="ArmX">The end of the level arm.</param>
/// <param name="ArmY">The end of the upright arm.</param>
/// <param name="Donor">Index of the hooping that sews it last.</param>
/// <param name="Receivers">Indexes of the hoopings that are set by it.</param>
internal sealed record Corner(string Id, Point At, Point ArmX, Point ArmY, int Donor, ImmutableArray<int> Receivers);

/// <summary>
/// A small cross sewn where the new part meets sewn work: its middle should meet the middle of what is there.
/// </summary>
/// <param name="At">Its middle, on the tape's grid.</param>
/// <param name="With">Index of the hooping whose work is there.</param>
/// <param name="On">Id of the shape or corner it should meet.</param>
internal sealed record AlignmentStitch(Point At, int With, string On)
{
    /// <summary>
    /// Half the length of each stroke of the cross, µm: long enough to see its middle, short enough to unpick.
    /// </summary>
    internal const int Arm = 3 * Units.Millimetre;

    /// <summary>The same of this cross, which is less where it would come too near to the field's edge.</summary>
    public int Stroke { get; init; } = Arm;
}

/// <summary>Which fold of the cloth a placement line is for.</summary>
internal enum Fold
{
    /// <summary>Runs up the cloth.</summary>
    Upright,

    /// <summary>Runs across the cloth.</summary>
    Level,
}

/// <summary>A stretch of a fold line inside the first field, on the tape's grid.</summary>
internal sealed record PlacementLine(Fold Fold, Point From, Point To);

/// <summary>A line along which two territories meet.</summary>
/// <param name="Earlier">Index of the hooping that is sewn first.</param>
/// <param name="Later">Index of the other.</param>
internal sealed record Seam(int Earlier, int Later, Polyline Line);

/// <summary>Where two parts meet.</summary>
internal sealed record PartJoin
{
    /// <summary>Index of the earlier hooping.</summary>
    public required int Earlier { get; init; }

    /// <summary>Index of the later hooping.</summary>
    public required int Later { get; init; }

    /// <summary>The crossing of a cut shape and the seam at which the predicted misfit is largest.</summary>
    public required Point WorstAt { get; init; }

    /// <summary>Root mean square misfit of the two sides there, micrometres: chain and stretch included.</summary>
    public required double PredictedError { get; init; }

    /// <summary>What that consists of.</summary>
    public required ErrorBudget Budget { get; init; }

    /// <summary>
    /// At no place along the seam do the two sides miss each other by more than this, micrometres, 19 times in 20.
    /// </summary>
    public required int AlongSeam { get; init; }

    /// <summary>
    /// Where others meet the two parts, and that asks most of their overlap; null where they only meet each other.
    /// </summary>
    public Junction? Junction { get; init; }

    /// <summary>How far each side runs past the seam, micrometres.</summary>
    public required int Overlap { get; init; }

    /// <summary>
    /// How far the narrower side reaches where the seam runs up to the edge of its field, micrometres; elsewhere both
    /// reach as far as <see cref="Overlap"/>.
    /// </summary>
    public required int Narrowest { get; init; }

    /// <summary>The largest misfit that the overlap covers, micrometres.</summary>
    public required int Covers { get; init; }

    /// <summary>
    /// By how much the two parts may miss each other, micrometres, 19 times in 20: along the seam or where others meet
    /// them, whichever is more. It is this that everything tells of a join.
    /// </summary>
    public int Within95 => Math.Max(AlongSeam, Junction?.Misfit ?? 0);

    /// <summary>A junction asks more of the overlap than the seam does.</summary>
    public bool IsWorstAtJunction => Within95 > AlongSeam;

    /// <summary>Where one looks for that misfit.</summary>
    public Point Weakest => IsWorstAtJunction ? Junction!.At : WorstAt;

    /// <summary>The misfit is covered, 19 times in 20.</summary>
    public bool IsCovered => Within95 <= Covers;
}

/// <summary>Where three parts or more meet.</summary>
/// <param name="Parts">Indexes of their hoopings, in order.</param>
/// <param name="Misfit">
/// The diameter of a circle, micrometres, that holds the places at which all of them come out, 19 times in 20: no hole
/// opens while the overlaps of their seams cover it.
/// </param>
internal sealed record Junction(Point At, ImmutableArray<int> Parts, int Misfit);

/// <summary>
/// A shape that is sewn before one that lies under it: the lower one, if it is a fill, is cut at the edge that one
/// sees.
/// </summary>
/// <param name="Upper">Index of the shape that lies over the other.</param>
/// <param name="Lower">Index of the other.</param>
/// <param name="First">Index of the hooping that sews the upper one there.</param>
/// <param name="Then">Index of the hooping that sews the lower one there.</param>
/// <param name="At">The middle of the place.</param>
/// <param name="Area">How much of them lies on each other there, square micrometres.</param>
internal sealed record TurnedLayer(int Upper, int Lower, int First, int Then, Point At, double Area);

/// <summary>What the seams of a plan show.</summary>
/// <param name="Cost">Exposed length weighted by what is cut, in millimetres of plain fill.</param>
/// <param name="StraightCost">The same for straight seams.</param>
/// <param name="CutShapes">How many shapes are divided.</param>
internal sealed record SeamCost(double Cost, double StraightCost, int CutShapes);
