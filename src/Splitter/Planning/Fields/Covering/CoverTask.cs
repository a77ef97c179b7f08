using System.Collections.Immutable;
using Splitter.Artwork;
using Splitter.Geometry;
using Splitter.Recipes;

namespace Splitter.Planning.Fields.Covering;

/// <summary>What fields have to cover, and what they may not do.</summary>
/// <param name="Drawn">Ground that fields sew together, shape by shape.</param>
/// <param name="Wholes">Boxes that one ground must hold each.</param>
/// <param name="Template">The fields.</param>
/// <param name="Turns">Which ways they may lie.</param>
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

    /// <summary>The middle of the drawing.</summary>
    internal Point Middle { get; init; }

    /// <summary>
    /// Connected drawn grounds that one field can hold: where one does, no seam cuts them and they need no room at its
    /// edges. None where nothing is asked.
    /// </summary>
    internal ImmutableArray<Region> Islands { get; init; } = [];

    /// <summary>Drawn ground that is no island.</summary>
    internal ImmutableArray<Region> Mainland
    {
        get => field.IsDefault ? Drawn : field;
        init;
    }

    /// <summary>What the first field has to hold; null for nothing.</summary>
    internal Box? Held { get; init; }

    /// <summary>What seams can hide in; null where nothing is known of it.</summary>
    internal SeamRaster? Raster { get; init; }

    /// <summary>The ground on which one field can sew corners for another.</summary>
    internal Func<Field, Field, Box> Shared { get; init; } = (one, other) => one.Usable.Common(other.Usable);

    /// <summary>How much grounds of neighbours share at least on their narrower side, µm; 0 when nothing is asked.</summary>
    internal int Common =>
        Rules is null ? 0 : Math.Max(0, CommonGround.Narrowest(Rules) - (2 * Template.Reach)) + Units.TapeStep;

    /// <summary>What neighbours share at least so that both sides of a seam have room, µm; 0 when nothing is asked.</summary>
    internal int SeamShare => Rules is null ? 0 : (2 * SeamRoom) + Units.TapeStep;

    /// <summary>
    /// How far from the edge of its ground a field has what it covers, µm, where the drawing goes on; 0 when nothing is
    /// asked. Two fields that meet at a seam then share ground that holds corners, so that they can be set by each other,
    /// and both sides can reach past the seam.
    /// </summary>
    internal int SeamRoom =>
        Rules is null ? 0 : Math.Max(0, (CommonGround.Narrowest(Rules) - (2 * Template.Reach) + 1) / 2);

    /// <summary>The part of a ground that it covers: seams need room at its edges, unless the drawing ends there.</summary>
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

    /// <summary>Where the ground of a field lies, by its top left corner on the tape's grid for fields turned that way.</summary>
    internal Box GroundOf(Turn turn) => Template.Ground(Template.At(default, turn));

    /// <summary>The hoop would lie over ground where none may; edges may touch.</summary>
    internal bool Forbids(Field field) => Forbidden.Any(zone => Coverage.Overlap(field.Bounds, zone));

    /// <summary>The task of a recipe. Shapes that no field can hold whole are cut here, and reported elsewhere.</summary>
    internal static CoverTask Of(Recipe recipe, Drawing drawing, FieldTemplate template, Box? held)
    {
        var size = template.Ground(template.At(default, Turn.None));
        bool Fits(Box box) =>
            (box.Width < size.Width - Units.TapeStep && box.Height < size.Height - Units.TapeStep)
            || (box.Width < size.Height - Units.TapeStep && box.Height < size.Width - Units.TapeStep);
        bool Whole(Shape s) => s.KeepWhole && Fits(s.Footprint.Bounds);
        ImmutableArray<Box> wholes = [.. drawing.Shapes.Where(Whole).Select(s => s.Footprint.Bounds).Distinct()];
        // Folds are laid in the usable field, which is larger than the ground by the stitches' reach.
        if (held is { } box && Fits(box.Grown(-template.Reach)))
            wholes = wholes.Add(box.Grown(-template.Reach));
        ImmutableArray<Region> drawn = [.. drawing.Shapes.Where(s => !Whole(s)).Select(s => s.Footprint)];
        IEnumerable<Region> connected = recipe.Registration is null
            ? []
            : Polygons.Union(drawn).Polygons.Select(p => new Region([p]));
        var islands = connected.ToLookup(r => Fits(r.Bounds));
        return new(
            drawn,
            wholes,
            template,
            size.Width == size.Height ? [Turn.None] : [Turn.None, Turn.Quarter],
            recipe.Registration,
            [.. recipe.Fields.Fixed.Select(f => template.At(f.Centre, f.Turn))],
            recipe.Fields.Forbidden
        )
        {
            Islands = [.. islands[true]],
            Mainland = islands[true].Any() ? [.. islands[false]] : drawn,
            Middle = drawing.Bounds.Centre,
            Held = held,
            Raster = new(drawing),
            Shared = (one, other) => CommonGround.Of(recipe, one, other),
        };
    }
}
