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
            Invariant($"hoop {hoop.Name}: shape '{shape.Id}' ({shape.Place}) sticks out of every field, ")
                + Invariant($"by {Up(by)} mm at x {Mm(at.X)}, y {Mm(at.Y)}{And(more)}; {advice}")
        );

    /// <param name="more">How many other such shapes stick out less far.</param>
    internal static Diagnostic WholeShapeDivided(Place place, Shape shape, int by, int more, Hoop hoop) =>
        Diagnostic.Error(
            3002,
            place,
            Invariant($"hoop {hoop.Name}: shape '{shape.Id}' ({shape.Place}) is to be kept whole, but ")
                + Invariant($"sticks out of the nearest field by {Up(by)} mm{And(more)}; lay a field under ")
                + "'fields.fixed' that holds all of it, or write 'place: fewest'"
        );

    internal static Diagnostic WholeShapeTooLarge(Shape shape, Box ground, string advice, Hoop hoop) =>
        Diagnostic.Error(
            3003,
            shape.KeptWholeAt ?? shape.Place,
            Invariant($"hoop {hoop.Name}: shape '{shape.Id}' is to be kept whole, but is ")
                + Invariant($"{Up(shape.Footprint.Bounds.Width)} x {Up(shape.Footprint.Bounds.Height)} mm and a ")
                + Invariant($"field sews {Down(ground.Width)} x {Down(ground.Height)} mm; {advice}, or let it ")
                + "be cut with 'keep-whole: false'"
        );

    /// <param name="more">Of how many others it is true.</param>
    /// <param name="isPlaced">Fields are placed by us.</param>
    internal static Diagnostic WantedWholeIsCut(Shape shape, int more, bool isPlaced, Hoop hoop) =>
        Diagnostic.Warning(
            3019,
            shape.Place,
            Invariant($"hoop {hoop.Name}: '{shape.Id}' ({Up(shape.Footprint.Bounds.Width)} x ")
                + Invariant($"{Up(shape.Footprint.Bounds.Height)} mm) fits a field, but a seam cuts it{And(more)}, ")
                + (isPlaced ? "since it would take more hoopings to keep it whole" : "as the fields are laid")
                + "; if it is to be whole, write first under 'artwork.sew': "
                + $"- {{ match: {{ id: {shape.Id} }}, keep-whole: true }}"
                + (isPlaced ? "" : ", and lay a field that holds it")
                + "; if it may be cut, the same with 'keep-whole: false'"
        );

    /// <param name="fits">A field could hold all of it.</param>
    internal static Diagnostic FoldsNotHeld(Place place, Box held, bool fits, Hoop hoop) =>
        Diagnostic.Error(
            3004,
            place,
            Invariant($"hoop {hoop.Name}: no field holds the crossing of the folds with enough of both ")
                + Invariant($"lines (x {Mm(held.Left)} to {Mm(held.Right)}, y {Mm(held.Top)} to ")
                + Invariant($"{Mm(held.Bottom)} mm on the drawing); ")
                + (
                    fits
                        ? "lay a field there, or move the folds"
                        : "no field of this hoop is large enough: take a larger hoop, or leave out 'cloth.folds'"
                )
        );

    internal static Diagnostic FieldOutOfReach(Place place, Field field, int narrowest, int longest) =>
        Diagnostic.Error(
            3005,
            place,
            Invariant($"hoop {field.Hoop.Name}: the field at x {Mm(field.Centre.X)}, y ")
                + Invariant($"{Mm(field.Centre.Y)} cannot be reached from the others; let it share at least ")
                + Invariant($"{Mm(narrowest)} x {Mm(longest)} mm with one of them")
        );

    /// <param name="donors">All that were sewn before and share ground with it, which is none of them enough.</param>
    /// <param name="byHand">A person has placed the fields.</param>
    internal static Diagnostic TooFewCorners(Place place, string receiver, string donors, bool byHand, Hoop hoop) =>
        Diagnostic.Error(
            3006,
            place,
            Invariant($"hoop {hoop.Name}: part {receiver} finds no room for two corners on the ground ")
                + Invariant($"that it shares with {donors}; ")
                + (
                    byHand
                        ? "place its field closer to theirs"
                        : "lay a field under 'fields.fixed' that shares more ground with its neighbours"
                )
                + ", leave more of that ground free of what is sewn before, or shorten "
                + "'registration.corners.arm'"
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
            $"hoop {hoop.Name}: "
                + $"{Misfit(joins[0])}{(joins.Length > 1 ? $"; so it is with {Pairs(joins[1..])}" : "")}; {advice}"
        );

    private static string Misfit(PartJoin join)
    {
        var (misfit, covers) = (Hundredths(join.Within95), Hundredths(join.Covers));
        var (earlier, later) = (Letters.Of(join.Earlier), Letters.Of(join.Later));
        return join.IsWorstAtJunction
            ? $"where parts {And(join.Junction!.Parts)} meet, they may miss each other by up to {misfit} mm (19 "
                + $"times in 20), more than the {covers} mm that the overlap of {earlier} and {later} covers"
            : $"parts {earlier} and {later} may miss each other by up to {misfit} mm (19 times in 20), more than "
                + $"the {covers} mm that their overlap covers";
    }

    /// <param name="joins">The one that gets least first.</param>
    /// <param name="fits">
    /// A width that all joins have room for and that covers their misfits; null when none was found.
    /// </param>
    internal static Diagnostic OverlapTooWide(Place place, ImmutableArray<PartJoin> joins, int? fits, Hoop hoop) =>
        Diagnostic.Warning(
            3008,
            place,
            Invariant($"hoop {hoop.Name}: parts {Pairs(joins)} share too little ground for this overlap ")
                + Invariant($"and get {Range(joins[0], joins[^1])} mm instead; {Serving(fits)}")
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

    /// <param name="least">The smallest cloth on which it lies.</param>
    /// <param name="at">Where its corner must be moved to, besides.</param>
    internal static Diagnostic ArtworkOffCloth(
        Place place,
        Box artwork,
        Box cloth,
        (int Width, int Height) least,
        Point? at
    ) =>
        Diagnostic.Error(
            3009,
            place,
            Invariant($"the artwork (x {Mm(artwork.Left)} to {Mm(artwork.Right)}, y {Mm(artwork.Top)} to ")
                + Invariant($"{Mm(artwork.Bottom)} mm) does not lie on the cloth (x {Mm(cloth.Left)} to ")
                + Invariant($"{Mm(cloth.Right)}, y {Mm(cloth.Top)} to {Mm(cloth.Bottom)} mm on the drawing); ")
                + Invariant($"write 'size: {Up(least.Width)} x {Up(least.Height)} mm' or more")
                + (at is { } corner ? Invariant($" with 'artwork-at: [{Up(corner.X)} mm, {Up(corner.Y)} mm]'") : "")
                + ", or 'size: auto' with 'artwork-at: centre', which leaves 50 mm on all sides"
        );

    /// <param name="folds">The crossing of the folds, if it is to be held, too.</param>
    /// <param name="fits">A field could hold all of it.</param>
    internal static Diagnostic FirstNotHeld(Place place, Point first, Point? folds, bool fits, Hoop hoop) =>
        Diagnostic.Error(
            3012,
            place,
            Invariant($"hoop {hoop.Name}: no field holds the point x {Mm(first.X)}, y {Mm(first.Y)} mm")
                + (folds is { } at ? $" together with the crossing of the folds at {At(at)} mm on the drawing" : "")
                + (
                    fits
                        ? $"; lay a field under 'fields.fixed' that holds {(folds is null ? "it" : "both")}"
                        : "; no field of this hoop is large enough: write a point nearer to the crossing"
                )
                + $", or leave out {(folds is null ? "'fields.first'" : "'fields.first' or 'cloth.folds'")}"
        );

    private static string At(Point at) => Invariant($"x {Mm(at.X)}, y {Mm(at.Y)}");

    internal static Diagnostic HoopTooSmallForCorners(Place place, Hoop hoop, int least, int longest) =>
        Diagnostic.Error(
            3013,
            place,
            Invariant($"hoop {hoop.Name}: its field has no room for two corners at a useful distance, ")
                + Invariant($"{Mm(least)} x {Mm(longest)} mm, and the artwork is larger than the field; take a ")
                + "larger hoop, shorten 'registration.corners.arm', or lessen 'fields.clearance'"
        );

    internal static Diagnostic TooManyHoopings(Place place, Hoop hoop, string count, int most) =>
        Diagnostic.Error(
            3032,
            place,
            Invariant($"hoop {hoop.Name}: the artwork takes {count} hoopings, and no more than {most} are planned; ")
                + "take a larger hoop, or make the work smaller"
        );

    internal static Diagnostic NoCover(Place place, Hoop hoop) =>
        Diagnostic.Error(
            3018,
            place,
            $"hoop {hoop.Name}: no fields were found that cover the artwork; list fields by hand under "
                + "'fields.place', or take a larger hoop"
        );

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

    /// <summary>Rounded down: what has no room must not seem to have.</summary>
    private static double Down(double micrometres) => Math.Floor(micrometres / Units.TapeStep) / 10;
}
