using System.Collections.Immutable;
using Splitter.Geometry;
using Splitter.Recipes;

namespace Splitter.Planning.Fields;

/// <summary>
/// Which ways fields may lie, and which of them leaves least cloth in the machine's throat. A field's ground lies
/// evenly around its centre, so that upside down it covers the very same: covers and their lower bound know only one
/// turn of each two, and which of them it is is chosen afterwards. Only where the throat has too little room for all of
/// them is a place forbidden; a bound that does not know that stays one, since it looks at more places.
/// </summary>
internal sealed class Turning
{
    private static readonly ImmutableArray<Turn> All = [.. Enum.GetValues<Turn>()];

    private readonly ImmutableArray<Turn> upright;
    private readonly ImmutableArray<Turn> across;
    private readonly HoopSide side;

    /// <summary>How much cloth has room, µm; null for any amount.</summary>
    private readonly int? room;

    /// <summary>The cloth on the drawing; null where nothing is known of the throat.</summary>
    private readonly Box? cloth;

    private Turning(ImmutableArray<Turn> allowed, Hoop hoop, Box? cloth)
    {
        // Turned by a quarter, a square field covers the same, too.
        var square = hoop.Width == hoop.Height;
        (upright, across) = (
            [.. allowed.Where(t => square || IsUpright(t))],
            [.. allowed.Where(t => square || !IsUpright(t))]
        );
        if (hoop.Throat is { } throat)
            (this.cloth, side, room) = (cloth, throat.Side, throat.Room);
    }

    /// <summary>Turns that cover different ground, one of those that cover the same.</summary>
    internal ImmutableArray<Turn> Footprints =>
        upright.SequenceEqual(across) ? [upright[0]] : [.. upright.Take(1), .. across.Take(1)];

    /// <summary>There are places where fields may not lie.</summary>
    internal bool IsLimited => cloth is not null && room is not null;

    /// <summary>The field stands on the drawing as the hoop does, one way up or the other.</summary>
    internal static bool IsUpright(Turn turn) => turn is Turn.None or Turn.Half;

    /// <summary>The ways that a recipe allows for fields that are not placed by hand.</summary>
    internal static Turning Of(Recipe recipe, Hoop hoop) =>
        new(recipe.Fields.Place is FewestFields ? recipe.Fields.Turns : All, hoop, recipe.Cloth.OnDrawing);

    /// <summary>
    /// The allowed turn that covers the same ground and leaves least cloth in the throat; of equal ones the least.
    /// </summary>
    internal Turn Best(Field field)
    {
        var (best, least) = (field.Turn, int.MaxValue);
        foreach (var turn in Alike(field.Turn))
            if (InThroat(field.Bounds, turn) is var beyond && beyond < least)
                (best, least) = (turn, beyond);
        return best;
    }

    /// <summary>The throat has no room for the cloth beside the field, whichever allowed way it lies there.</summary>
    internal bool Forbids(Field field)
    {
        if (!IsLimited)
            return false;
        foreach (var turn in Alike(field.Turn))
            if (InThroat(field.Bounds, turn) <= room)
                return false;
        return true;
    }

    /// <summary>There is more cloth in the throat than has room, as the field lies.</summary>
    internal bool Overfills(Field field) => InThroat(field.Bounds, field.Turn) > room;

    /// <summary>
    /// Other ways to lie there, allowed or not, for which the throat has room: those that cover the same first.
    /// </summary>
    internal static IEnumerable<Turn> Roomier(Field field, Recipe recipe)
    {
        var every = new Turning(All, field.Hoop, recipe.Cloth.OnDrawing);
        return every
            .Alike(field.Turn)
            .Concat(All)
            .Distinct()
            .Where(turn => !every.Overfills(new(field.Hoop, field.Centre, turn, field.Clearance)));
    }

    /// <summary>
    /// Cloth beyond the field's edge on the throat's side, µm; null where nothing is known of the throat.
    /// </summary>
    internal static int? InThroat(Recipe recipe, Field field) =>
        field.Hoop.Throat is not null && recipe.Cloth.Size is not null
            ? Of(recipe, field.Hoop).InThroat(field.Bounds, field.Turn)
            : null;

    /// <summary>
    /// The outermost centres, on the tape's grid, for which the throat has room: as far right and down as may be with
    /// the cloth's left and upper edge in it, and as far left and up as may be with the others.
    /// </summary>
    internal ImmutableArray<Point> Limits(Field at)
    {
        if (cloth is not { } box || room is not { } most)
            return [];
        var (halfX, halfY) = (at.Bounds.Width / 2, at.Bounds.Height / 2);
        return
        [
            new(Units.DownOnTape(box.Left + most + halfX), Units.DownOnTape(box.Top + most + halfY)),
            new(Units.UpOnTape(box.Right - most - halfX), Units.UpOnTape(box.Bottom - most - halfY)),
        ];
    }

    private ImmutableArray<Turn> Alike(Turn turn) => IsUpright(turn) ? upright : across;

    private int InThroat(Box field, Turn turn)
    {
        if (cloth is not { } box)
            return 0;
        // Sides are counted against the clock, turns with it.
        var beyond = (((int)side - ((int)turn / (int)Turn.Quarter)) & 3) switch
        {
            (int)HoopSide.Right => box.Right - field.Right,
            (int)HoopSide.Top => field.Top - box.Top,
            (int)HoopSide.Left => field.Left - box.Left,
            _ => box.Bottom - field.Bottom,
        };
        return Math.Max(0, beyond);
    }
}
