using System.Collections.Immutable;
using Splitter.Geometry;
using Splitter.Recipes;

namespace Splitter.Planning.Fields;

/// <summary>
/// One hoop with the margins that a recipe and a drawing ask for: makes fields, and the ground they can sew.
/// </summary>
/// <param name="Clearance">How far stitches stay away from the field's edge, µm.</param>
/// <param name="Reach">How far stitches reach past the artwork's edge, µm.</param>
internal sealed record FieldTemplate(Hoop Hoop, int Clearance, int Reach)
{
    /// <summary>Which ways fields may lie, one of each two that cover the same.</summary>
    internal ImmutableArray<Turn> Turns { get; init; } = [Turn.None, Turn.Quarter];

    /// <summary>A field there, its centre moved to the nearest point of the tape's grid.</summary>
    internal Field At(Point centre, Turn turn) => new(Hoop, centre.OnTape(), turn, Clearance);

    /// <summary>The ground whose artwork a field can sew.</summary>
    internal Box Ground(Field field) => field.Usable.Grown(-Reach);

    /// <summary>
    /// The ground of one field, whichever way it may lie, is as large as a box, and this much larger, µm.
    /// </summary>
    internal bool Fits(Box box, int spare = 0) =>
        Turns.Any(turn =>
            Ground(At(default, turn)) is var ground
            && box.Width + spare <= ground.Width
            && box.Height + spare <= ground.Height
        );
}
