using System.Collections.Immutable;
using Splitter.Artwork;
using Splitter.Geometry;
using Splitter.Planning;
using Splitter.Recipes;
using static System.FormattableString;

namespace Splitter.Diagnostics;

/// <summary>What planning has to say: SPL3000 to SPL3999. Lengths in the messages are millimetres.</summary>
internal static class PlanProblems
{
    /// <param name="more">How many other shapes do so less far.</param>
    internal static Diagnostic ShapeSticksOut(
        Place place,
        Shape shape,
        Point at,
        double by,
        int more,
        string advice,
        Hoop hoop
    ) =>
        Diagnostic.Error(
            3001,
            place,
            Invariant(
                $"hoop {hoop.Name}: shape '{shape.Id}' ({shape.Place}) sticks out of every field, by {Up(by)} mm at x {Mm(at.X)}, y {Mm(at.Y)}{And(more)}; {advice}"
            )
        );

    /// <param name="more">How many other such shapes stick out less far.</param>
    internal static Diagnostic WholeShapeDivided(Place place, Shape shape, int by, int more, Hoop hoop) =>
        Diagnostic.Error(
            3002,
            place,
            Invariant(
                $"hoop {hoop.Name}: shape '{shape.Id}' ({shape.Place}) is to be kept whole, but sticks out of the nearest field by {Up(by)} mm{And(more)}; lay a field under 'fields.fixed' that holds all of it, or write 'place: fewest'"
            )
        );

    /// <param name="turned">It would fit a hoop turned as the recipe does not allow.</param>
    internal static Diagnostic WholeShapeTooLarge(Shape shape, Box ground, bool turned, Hoop hoop) =>
        Diagnostic.Error(
            3003,
            shape.Place,
            Invariant(
                $"hoop {hoop.Name}: shape '{shape.Id}' is to be kept whole, but is {Mm(shape.Footprint.Bounds.Width)} x {Mm(shape.Footprint.Bounds.Height)} mm and a field sews {Mm(ground.Width)} x {Mm(ground.Height)} mm; {(turned ? "allow both 0 deg and 90 deg under 'fields.turns'" : "take a larger hoop")}, or let it be cut with 'keep-whole: false'"
            )
        );

    /// <param name="fits">A field could hold all of it.</param>
    internal static Diagnostic FoldsNotHeld(Place place, Box held, bool fits, Hoop hoop) =>
        Diagnostic.Error(
            3004,
            place,
            Invariant(
                $"hoop {hoop.Name}: no field holds the crossing of the folds with enough of both lines (x {Mm(held.Left)} to {Mm(held.Right)}, y {Mm(held.Top)} to {Mm(held.Bottom)} mm on the drawing); {(fits ? "lay a field there, or move the folds" : "no field of this hoop is large enough: take a larger hoop, or leave out 'cloth.folds'")}"
            )
        );

    internal static Diagnostic FieldOutOfReach(Place place, Field field, int narrowest, int longest) =>
        Diagnostic.Error(
            3005,
            place,
            Invariant(
                $"hoop {field.Hoop.Name}: the field at x {Mm(field.Centre.X)}, y {Mm(field.Centre.Y)} cannot be reached from the others; let it share at least {Mm(narrowest)} x {Mm(longest)} mm with one of them"
            )
        );

    /// <param name="donors">All that were sewn before and share ground with it, which is none of them enough.</param>
    /// <param name="byHand">A person has placed the fields.</param>
    internal static Diagnostic TooFewCorners(Place place, string receiver, string donors, bool byHand, Hoop hoop) =>
        Diagnostic.Error(
            3006,
            place,
            Invariant(
                $"hoop {hoop.Name}: part {receiver} finds no room for two corners on the ground that it shares with {donors}; {(byHand ? "place its field closer to theirs" : "lay a field under 'fields.fixed' that shares more ground with its neighbours")}, leave more of that ground free of what is sewn before, or shorten 'registration.corners.arm'"
            )
        );

    /// <param name="joins">The worst one first.</param>
    internal static Diagnostic FitExceedsOverlap(
        Place place,
        ImmutableArray<PartJoin> joins,
        string advice,
        Hoop hoop
    ) =>
        Diagnostic.Warning(
            3007,
            place,
            $"hoop {hoop.Name}: {Misfit(joins[0])}{(joins.Length > 1 ? $"; so it is with {Pairs(joins[1..])}" : "")}; {advice}"
        );

    private static string Misfit(PartJoin join)
    {
        var (misfit, covers) = (Hundredths(join.Within95), Hundredths(join.Covers));
        var (earlier, later) = (Letters.Of(join.Earlier), Letters.Of(join.Later));
        return join.IsWorstAtJunction
            ? $"where parts {And(join.Junction!.Parts)} meet, they may miss each other by up to {misfit} mm (19 times in 20), more than the {covers} mm that the overlap of {earlier} and {later} covers"
            : $"parts {earlier} and {later} may miss each other by up to {misfit} mm (19 times in 20), more than the {covers} mm that their overlap covers";
    }

    /// <param name="joins">The one that gets least first.</param>
    /// <param name="fits">A width that all joins have room for and that covers their misfits; null when none was found.</param>
    internal static Diagnostic OverlapTooWide(Place place, ImmutableArray<PartJoin> joins, int? fits, Hoop hoop) =>
        Diagnostic.Warning(
            3008,
            place,
            Invariant(
                $"hoop {hoop.Name}: parts {Pairs(joins)} share too little ground for this overlap and get {Range(joins[0], joins[^1])} mm instead; {Serving(fits)}"
            )
        );

    private static string Range(params ReadOnlySpan<PartJoin> joins) =>
        string.Join(" to ", joins.ToArray().Select(j => Invariant($"{Mm(j.Overlap)}")).Distinct());

    private static string Serving(int? width) =>
        width is { } fits
            ? Invariant($"write 'overlap.width: {Mm(fits)} mm': planned so, all joins have room for it and are covered")
            : "write 'overlap.width: auto', which asks for no more than there is room for";

    private static string Pairs(ImmutableArray<PartJoin> joins) =>
        string.Join(", ", joins.Select(join => $"{Letters.Of(join.Earlier)}-{Letters.Of(join.Later)}"));

    private static string And(ImmutableArray<int> parts) =>
        $"{string.Join(", ", parts[..^1].Select(Letters.Of))} and {Letters.Of(parts[^1])}";

    internal static Diagnostic ArtworkOffCloth(Place place, Box artwork, Box cloth) =>
        Diagnostic.Error(
            3009,
            place,
            Invariant(
                $"the artwork (x {Mm(artwork.Left)} to {Mm(artwork.Right)}, y {Mm(artwork.Top)} to {Mm(artwork.Bottom)} mm) does not lie on the cloth (x {Mm(cloth.Left)} to {Mm(cloth.Right)}, y {Mm(cloth.Top)} to {Mm(cloth.Bottom)} mm on the drawing); take a larger cloth, or move 'cloth.artwork-at'"
            )
        );

    internal static Diagnostic FieldOverForbidden(Place place, IReadOnlyList<Field> fields, Box zone, bool grid) =>
        Diagnostic.Error(
            3011,
            place,
            Invariant(
                $"hoop {fields[0].Hoop.Name}: the field at x {Mm(fields[0].Centre.X)}, y {Mm(fields[0].Centre.Y)} lies over {Zone(zone)}{(fields.Count > 1 ? Invariant($", and {fields.Count - 1} more do") : "")}; {(grid ? "list the fields by hand" : "move the field")}, or make the zone smaller"
            )
        );

    /// <param name="folds">The crossing of the folds, if it is to be held, too.</param>
    /// <param name="fits">A field could hold all of it.</param>
    internal static Diagnostic FirstNotHeld(Place place, Point first, Point? folds, bool fits, Hoop hoop) =>
        Diagnostic.Error(
            3012,
            place,
            Invariant(
                $"hoop {hoop.Name}: no field holds the point x {Mm(first.X)}, y {Mm(first.Y)} mm{(folds is { } at ? Invariant($" together with the crossing of the folds at x {Mm(at.X)}, y {Mm(at.Y)} mm on the drawing") : "")}; {(fits ? $"lay a field under 'fields.fixed' that holds {(folds is null ? "it" : "both")}" : "no field of this hoop is large enough: write a point nearer to the crossing")}, or leave out {(folds is null ? "'fields.first'" : "'fields.first' or 'cloth.folds'")}"
            )
        );

    internal static Diagnostic HoopTooSmallForCorners(Place place, Hoop hoop, int least, int longest) =>
        Diagnostic.Error(
            3013,
            place,
            Invariant(
                $"hoop {hoop.Name}: its field has no room for two corners at a useful distance, {Mm(least)} x {Mm(longest)} mm, and the artwork is larger than the field; take a larger hoop, shorten 'registration.corners.arm', or lessen 'fields.clearance'"
            )
        );

    /// <param name="zones">One, or all.</param>
    /// <param name="free">How far from a hoop's edge its stitches stay: so far from a zone nothing can be drawn.</param>
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
            Invariant(
                $"hoop {hoop.Name}: no field that keeps clear of {Zones(zones)} can sew shape '{shapes[0].Id}' ({shapes[0].Place}){And(shapes.Count - 1)} at x {Mm(ground.Left)} to {Mm(ground.Right)}, y {Mm(ground.Top)} to {Mm(ground.Bottom)} mm; {Move(zones)}, or take out or move what is drawn there: {Clear(zones, free)}"
            )
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
            $"hoop {hoop.Name}: no fields were found that keep clear of the forbidden zones, cover the artwork and share ground by which one is set after the other; make a zone smaller or move it, so that a field passes its end, or write a recipe for each side"
        );

    internal static Diagnostic ZoneKeepsFirst(Place place, IReadOnlyList<Box> zones, Box held, Hoop hoop) =>
        Diagnostic.Error(
            3017,
            place,
            Invariant(
                $"hoop {hoop.Name}: no field that keeps clear of {Zones(zones)} holds what the first field must hold, 'fields.first' or the crossing of the folds (x {Mm(held.Left)} to {Mm(held.Right)}, y {Mm(held.Top)} to {Mm(held.Bottom)} mm on the drawing); {Move(zones)}, or move the point or the folds"
            )
        );

    internal static Diagnostic NoCover(Place place, Hoop hoop) =>
        Diagnostic.Error(
            3018,
            place,
            $"hoop {hoop.Name}: no fields were found that cover the artwork; list fields by hand under 'fields.place', or take a larger hoop"
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
            ? Invariant(
                $"hoops stitch no nearer to the zone than {Up(free)} mm, so leave x {Mm(zone.Left - free)} to {Mm(zone.Right + free)}, y {Mm(zone.Top - free)} to {Mm(zone.Bottom + free)} mm free, and shapes that are kept whole on one side of it"
            )
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

    private static string Hundredths(int micrometres) => Invariant($"{Units.ToMillimetres(micrometres):0.00}");

    private static double Mm(double micrometres) => Math.Round(micrometres / Units.Millimetre, 1);

    /// <summary>Rounded up: what sticks out sticks out by something.</summary>
    private static double Up(double micrometres) => Math.Ceiling(micrometres / Units.TapeStep) / 10;
}
