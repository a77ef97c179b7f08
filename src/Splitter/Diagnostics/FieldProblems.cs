using Splitter.Geometry;
using Splitter.Planning;
using Splitter.Planning.Fields;
using Splitter.Recipes;
using static System.FormattableString;

namespace Splitter.Diagnostics;

/// <summary>
/// What planning has to say of fields on the cloth: SPL3020 to SPL3029. Lengths in the messages are millimetres.
/// </summary>
internal static class FieldProblems
{
    /// <summary>Parts that a line names; more would hide what it says.</summary>
    private const int MostNamed = 8;

    /// <param name="more">Of how many other fields it is true.</param>
    internal static Diagnostic ThroatTooNarrow(
        Place place,
        Field field,
        int cloth,
        Throat throat,
        int more,
        string advice
    ) =>
        Diagnostic.Error(
            3020,
            place,
            Invariant($"hoop {field.Hoop.Name}: beside the field at x {Mm(field.Centre.X)}, y ")
                + Invariant($"{Mm(field.Centre.Y)}, turned by {(int)field.Turn} deg, {Up(cloth)} mm of cloth ")
                + Invariant($"lie in the throat ({Beside(throat.Side)} of the hoop), and {Mm(throat.Room ?? 0)} ")
                + Invariant($"mm have room{(more > 0 ? Invariant($"; so it is with {more} more") : "")}; ")
                + advice
        );

    internal static Diagnostic FirstOffCloth(Place place, Point first, Box cloth) =>
        Diagnostic.Error(
            3021,
            place,
            Invariant($"the point x {Mm(first.X)}, y {Mm(first.Y)} mm, whose field is to be sewn first, ")
                + Invariant($"does not lie on the cloth ({Stretch(cloth)} mm on the drawing); write a point on ")
                + "the artwork, or leave out 'fields.first'"
        );

    internal static Diagnostic FirstFarOff(Place place, Point first, Box artwork, Hoop hoop) =>
        Diagnostic.Error(
            3022,
            place,
            Invariant($"hoop {hoop.Name}: no field that holds the point x {Mm(first.X)}, y {Mm(first.Y)} ")
                + "mm sews anything, and so the first hooping would be empty: the artwork lies at "
                + Invariant($"{Stretch(artwork)} mm; write a point on the artwork, or leave out 'fields.first'")
        );

    internal static Diagnostic FieldOffCloth(Place place, Field field, Box cloth) =>
        Diagnostic.Error(
            3023,
            place,
            Invariant($"hoop {field.Hoop.Name}: the field at x {Mm(field.Centre.X)}, y ")
                + Invariant($"{Mm(field.Centre.Y)} lies beside the cloth ({Stretch(cloth)} mm on the drawing); ")
                + "move it onto the artwork, or leave it out"
        );

    internal static Diagnostic FieldLeftOut(Place place, Field field, Box artwork) =>
        Diagnostic.Warning(
            3024,
            place,
            Invariant($"{At(field)} would sew nothing and is left out of the plan (the artwork lies at ")
                + Invariant($"{Stretch(artwork)} mm, and other fields sew what this one reaches); move it onto ")
                + "artwork that no other field sews, or take it out of the recipe"
        );

    internal static Diagnostic GridFieldsLeftOut(Place place, IReadOnlyList<Field> fields) =>
        Diagnostic.Warning(
            3026,
            place,
            Invariant($"hoop {fields[0].Hoop.Name}: ")
                + Invariant($"{(fields.Count == 1 ? "a field" : Invariant($"{fields.Count} fields"))} of the ")
                + Invariant($"grid would sew nothing and {(fields.Count == 1 ? "is" : "are")} left out of the ")
                + "plan, at "
                + string.Join("; ", fields.Take(MostNamed).Select(f => Centre(f)))
                + (fields.Count > MostNamed ? Invariant($"; and {fields.Count - MostNamed} more") : "")
                + "; write fewer 'columns' or 'rows' if the rest covers the artwork then, or list the "
                + "other fields by hand"
        );

    internal static Diagnostic FirstSewsNothing(Place place, Point first, Field field, string advice) =>
        Diagnostic.Error(
            3027,
            place,
            Invariant($"{At(field)}, which holds the point x {Mm(first.X)}, y {Mm(first.Y)} and is sewn ")
                + Invariant($"first, would sew nothing: other fields sew what it reaches; {advice}")
        );

    /// <param name="thread">How much, µm.</param>
    internal static Diagnostic HoopingSewsLittle(
        Place place,
        string letter,
        Field field,
        double thread,
        string advice
    ) =>
        Diagnostic.Warning(
            3028,
            place,
            Invariant($"{At(field)} (part {letter}) sews only ")
                + Invariant($"{Math.Max(1, Math.Round(thread / Units.Millimetre))} mm of thread, hardly worth a ")
                + Invariant($"hooping; {advice}")
        );

    /// <param name="receivers">The parts that take corners from it; empty for none.</param>
    internal static Diagnostic HoopingSewsNothing(
        Place place,
        string letter,
        Field field,
        string receivers,
        string advice
    ) =>
        Diagnostic.Warning(
            3029,
            place,
            Invariant($"{At(field)} (part {letter}) sews ")
                + (
                    receivers.Length > 0
                        ? $"nothing, and is there only to hand corners on to {receivers}; "
                        : "nothing; "
                )
                + advice
        );

    internal static Diagnostic FieldsOverClothEdge(
        Place place,
        IReadOnlyList<(string Letter, Overhang By)> parts,
        Hoop hoop
    ) =>
        Diagnostic.Warning(
            3025,
            place,
            Invariant($"hoop {hoop.Name}: fields hang over the cloth's edge, where only the stabilizer is ")
                + "in the hoop: "
                + string.Join(", ", parts.Take(MostNamed).Select(p => $"part {p.Letter} by {Sides(p.By)}"))
                + (parts.Count > MostNamed ? Invariant($", and {parts.Count - MostNamed} more") : "")
                + " (as seen on the drawing); stick that edge of the cloth down well, or cut the "
                + "cloth larger there ('cloth.size', 'cloth.artwork-at')"
        );

    private static string At(Field field) => $"hoop {field.Hoop.Name}: the field at {Centre(field)}";

    private static string Centre(Field field) => Invariant($"x {Mm(field.Centre.X)}, y {Mm(field.Centre.Y)}");

    private static string Sides(Overhang by) =>
        string.Join(
            " and ",
            new[] { ("left", by.Left), ("top", by.Top), ("right", by.Right), ("bottom", by.Bottom) }
                .Where(side => side.Item2 > 0)
                .Select(side => Invariant($"{Up(side.Item2)} mm at the {side.Item1}"))
        );

    private static string Beside(HoopSide side) =>
        side switch
        {
            HoopSide.Right => "to the right",
            HoopSide.Top => "beyond the top",
            HoopSide.Left => "to the left",
            _ => "beyond the bottom",
        };

    private static string Stretch(Box box) =>
        Invariant($"x {Mm(box.Left)} to {Mm(box.Right)}, y {Mm(box.Top)} to {Mm(box.Bottom)}");

    private static double Mm(double micrometres) => Math.Round(micrometres / Units.Millimetre, 1);

    /// <summary>Rounded up: what sticks out sticks out by something.</summary>
    private static double Up(double micrometres) => Math.Ceiling(micrometres / Units.TapeStep) / 10;
}
