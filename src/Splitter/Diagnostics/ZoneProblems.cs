using Splitter.Artwork;
using Splitter.Geometry;
using Splitter.Planning;
using Splitter.Recipes;
using static System.FormattableString;

namespace Splitter.Diagnostics;

/// <summary>
/// What planning has to say of ground that the recipe forbids: SPL3011 and SPL3014 to SPL3017. Lengths in the messages
/// are millimetres.
/// </summary>
internal static class ZoneProblems
{
    internal static Diagnostic FieldOverForbidden(Place place, IReadOnlyList<Field> fields, Box zone, bool grid) =>
        Diagnostic.Error(
            3011,
            place,
            Invariant($"hoop {fields[0].Hoop.Name}: the field at x {Mm(fields[0].Centre.X)}, y ")
                + Invariant($"{Mm(fields[0].Centre.Y)} lies over ")
                + Invariant($"{Zone(zone)}{(fields.Count > 1 ? Invariant($", and {fields.Count - 1} more do") : "")}; ")
                + Invariant($"{(grid ? "list the fields by hand" : "move the field")}, or make the zone smaller")
        );

    /// <param name="zones">One, or all.</param>
    /// <param name="free">
    /// How far from a hoop's edge its stitches stay: so far from a zone nothing can be drawn.
    /// </param>
    /// <param name="ground">The box around what is not covered.</param>
    internal static Diagnostic ZoneKeepsGround(
        Place place,
        IReadOnlyList<Box> zones,
        int free,
        IReadOnlyList<Shape> shapes,
        Box ground,
        Hoop hoop
    ) =>
        Diagnostic.Error(
            3014,
            place,
            Invariant($"hoop {hoop.Name}: no field that keeps clear of {Zones(zones)} can sew shape ")
                + Invariant($"'{shapes[0].Id}' ({shapes[0].Place}){And(shapes.Count - 1)} at x ")
                + Invariant($"{Mm(ground.Left)} to {Mm(ground.Right)}, y {Mm(ground.Top)} to ")
                + Invariant($"{Mm(ground.Bottom)} mm; {Move(zones)}, or take out or move what is drawn there: ")
                + Clear(zones, free)
        );

    internal static Diagnostic NoFieldAnywhere(Place place, IReadOnlyList<Box> zones, Hoop hoop) =>
        Diagnostic.Error(
            3015,
            place,
            Invariant(
                $"hoop {hoop.Name}: no field can lie anywhere on the artwork because of {Zones(zones)}; {Move(zones)}"
            )
        );

    internal static Diagnostic ZonesPartFields(Place place, Hoop hoop) =>
        Diagnostic.Error(
            3016,
            place,
            $"hoop {hoop.Name}: no fields were found that keep clear of the forbidden zones, cover the artwork "
                + "and share ground by which one is set after the other; make a zone smaller or move it, so that a "
                + "field passes its end, or write a recipe for each side"
        );

    internal static Diagnostic ZoneKeepsFirst(Place place, IReadOnlyList<Box> zones, Box held, Hoop hoop) =>
        Diagnostic.Error(
            3017,
            place,
            Invariant($"hoop {hoop.Name}: no field that keeps clear of {Zones(zones)} holds what the ")
                + "first field must hold, 'fields.first' or the crossing of the folds (x "
                + Invariant($"{Mm(held.Left)} to {Mm(held.Right)}, y {Mm(held.Top)} to {Mm(held.Bottom)} mm on ")
                + Invariant($"the drawing); {Move(zones)}, or move the point or the folds")
        );

    private static string Zone(Box zone) =>
        Invariant(
            $"the forbidden zone at x {Mm(zone.Left)} to {Mm(zone.Right)}, y {Mm(zone.Top)} to {Mm(zone.Bottom)} mm"
        );

    private static string Zones(IReadOnlyList<Box> zones) =>
        zones.Count == 1 ? Zone(zones[0]) : Invariant($"the {zones.Count} forbidden zones together");

    /// <summary>Where artwork may not be, or what it has to have beside it.</summary>
    private static string Clear(IReadOnlyList<Box> zones, int free) =>
        zones is [var zone]
            ? Invariant($"hoops stitch no nearer to the zone than {Up(free)} mm, so leave x ")
                + Invariant($"{Mm(zone.Left - free)} to {Mm(zone.Right + free)}, y {Mm(zone.Top - free)} to ")
                + Invariant($"{Mm(zone.Bottom + free)} mm free, and shapes that are kept whole on one side of it")
            : "between zones only what lies in a gap that a whole hoop has room in can be sewn";

    private static string Move(IReadOnlyList<Box> zones) =>
        zones.Count == 1 ? "make the zone smaller, or move it" : "make them smaller, or move them";

    private static string And(int more) =>
        more switch
        {
            0 => "",
            1 => ", and 1 more shape",
            _ => Invariant($", and {more} more shapes"),
        };

    private static double Mm(double micrometres) => Math.Round(micrometres / Units.Millimetre, 1);

    /// <summary>Rounded up: what sticks out sticks out by something.</summary>
    private static double Up(double micrometres) => Math.Ceiling(micrometres / Units.TapeStep) / 10;
}
