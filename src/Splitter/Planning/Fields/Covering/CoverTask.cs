using System.Collections.Immutable;
using Splitter.Artwork;
using Splitter.Geometry;
using Splitter.Recipes;

namespace Splitter.Planning.Fields.Covering;

/// <summary>What fields have to cover, and what they may not do.</summary>
/// <param name="Drawn">Ground that fields sew together, shape by shape.</param>
/// <param name="Wholes">Boxes that one ground must hold each.</param>
/// <param name="Template">The fields.</param>
/// <param name="Turns">Which ways they may lie, one of each two that cover the same.</param>
/// <param name="Rules">What neighbours must share; null when nothing.</param>
/// <param name="Fixed">Fields that are there in any case.</param>
/// <param name="Forbidden">Ground that no hoop may lie over.</param>
internal sealed record CoverTask(
    ImmutableArray<Region> Drawn,
    ImmutableArray<Box> Wholes,
    FieldTemplate Template,
    ImmutableArray<Turn> Turns,
    RegistrationRules? Rules,
    ImmutableArray<Field> Fixed,
    ImmutableArray<Box> Forbidden
)
{
    /// <summary>The box around all that is to be covered.</summary>
    internal Box Bounds { get; } = Box.Around(Drawn.Select(d => d.Bounds)).Joined(Box.Around(Wholes));

    /// <summary>What the machine's throat has room for; null for anything.</summary>
    internal Turning? Turning { get; init; }

    /// <summary>The cloth on the drawing; null where its size is not known.</summary>
    internal Box? Cloth { get; init; }

    /// <summary>The middle of the drawing.</summary>
    internal Point Middle { get; init; }

    /// <summary>What the first field has to hold; null for nothing.</summary>
    internal Box? Held { get; init; }

    /// <summary>What seams can hide in; null where nothing is known of it.</summary>
    internal SeamRaster? Raster { get; init; }

    /// <summary>The ground on which one field can sew corners for another.</summary>
    internal Func<Field, Field, Box> Shared { get; init; } = (one, other) => one.Usable.Common(other.Usable);

    /// <summary>
    /// How much grounds of neighbours share at least on their narrower side, µm; 0 when nothing is asked.
    /// </summary>
    internal int Common =>
        Rules is null ? 0 : Math.Max(0, CommonGround.Least(Rules) - (2 * Template.Reach)) + Units.TapeStep;

    /// <summary>
    /// What neighbours share at least so that both sides of a seam have room, µm; 0 when nothing is asked.
    /// </summary>
    internal int SeamShare => Rules is null ? 0 : (2 * SeamRoom) + Units.TapeStep;

    /// <summary>
    /// How far from the edge of its ground a field has what it covers, µm, where the drawing goes on; 0 when nothing is
    /// asked. Two fields that meet at a seam then share ground that holds corners, so that they can be set by each
    /// other, and both sides can reach past the seam.
    /// </summary>
    internal int SeamRoom =>
        Rules is null ? 0 : Math.Max(0, (CommonGround.Least(Rules) - (2 * Template.Reach) + 1) / 2);

    /// <summary>One field can hand corners on to another: its usable ground holds two at a useful distance.</summary>
    internal bool CanLink => Rules is null || CommonGround.HoldsTwo(Template.At(default, Turn.None).Usable, Rules);

    /// <summary>
    /// The part of a ground that it covers: seams need room at its edges, unless the drawing ends there.
    /// </summary>
    internal Box Inner(Box ground)
    {
        var room = SeamRoom;
        return new(
            ground.Left + (ground.Left <= Bounds.Left ? 0 : room),
            ground.Top + (ground.Top <= Bounds.Top ? 0 : room),
            ground.Right - (ground.Right >= Bounds.Right ? 0 : room),
            ground.Bottom - (ground.Bottom >= Bounds.Bottom ? 0 : room)
        );
    }

    /// <summary>Ground that a field must have to cover a place.</summary>
    internal Box Around(Box place) => Rules is null ? place : place.Grown(SeamRoom).Common(Bounds);

    /// <summary>
    /// Where the ground of a field lies, by its top left corner on the tape's grid for fields turned that way.
    /// </summary>
    internal Box GroundOf(Turn turn) => Template.Ground(Template.At(default, turn));

    /// <summary>
    /// The hoop would lie over ground where none may (edges may touch), or the throat has no room for the cloth beside
    /// it.
    /// </summary>
    internal bool Forbids(Field field) =>
        Forbidden.Any(zone => Coverage.Overlap(field.Bounds, zone))
        || (Turning is { } turning && turning.Forbids(field) && !Fixed.Contains(field));

    /// <summary>How far a field hangs over the cloth's edges, all sides together, µm.</summary>
    internal int OverEdge(Field field) => Cloth is { } cloth ? ClothEdge.Beyond(cloth, field.Bounds).Sum() : 0;

    /// <summary>The same with no fixed fields but those among these.</summary>
    internal CoverTask With(ImmutableArray<Field> fields) => this with { Fixed = [.. Fixed.Where(fields.Contains)] };

    /// <summary>
    /// The task of a recipe. Shapes that no field can hold whole are cut here, and reported elsewhere.
    /// </summary>
    /// <param name="wanted">Of those that want to stay whole, which do; none if left out.</param>
    internal static CoverTask Of(
        Recipe recipe,
        Drawing drawing,
        FieldTemplate template,
        Box? held,
        Func<Box, bool>? wanted = null
    )
    {
        var turning = Turning.Of(recipe, template.Hoop);
        // Centres move to the tape's grid.
        bool Fits(Box box) => template.Fits(box, Units.TapeStep + 1);
        bool Whole(Shape s) =>
            (s.KeepWhole || (s.WantsWhole && wanted?.Invoke(s.Footprint.Bounds) == true)) && Fits(s.Footprint.Bounds);
        ImmutableArray<Box> wholes = [.. drawing.Shapes.Where(Whole).Select(s => s.Footprint.Bounds).Distinct()];
        // Folds are laid in the usable field, which is larger than the ground by the stitches' reach.
        if (held?.Shrunk(template.Reach) is { } box && Fits(box))
            wholes = wholes.Add(box);
        return new(
            [.. drawing.Shapes.Where(s => !Whole(s)).Select(s => s.Footprint)],
            wholes,
            template,
            turning.Footprints,
            recipe.Registration,
            [.. recipe.Fields.Fixed.Select(f => template.At(f.Centre, f.Turn))],
            recipe.Fields.Forbidden
        )
        {
            Turning = turning.IsLimited ? turning : null,
            Cloth = recipe.Cloth.OnDrawing,
            Middle = drawing.Bounds.Centre,
            Held = held,
            Raster = new(drawing),
            Shared = (one, other) => CommonGround.Of(recipe, one, other),
        };
    }
}
