using Splitter.Geometry;
using Splitter.Recipes;
using static System.FormattableString;

namespace Splitter.Planning.Fields;

/// <summary>What holds a shape that is to be kept whole and that no field of a hoop holds.</summary>
internal static class LargerField
{
    internal static string Advice(Recipe recipe, FieldTemplate template, Box shape)
    {
        if (EitherWay(template).Fits(shape))
            return "allow both 0 deg and 90 deg under 'fields.turns'";
        var larger = recipe
            .Hoops.Where(hoop => With(recipe, template, hoop).Fits(shape))
            .OrderBy(hoop => (long)hoop.Width * hoop.Height)
            .ThenBy(hoop => hoop.Name, StringComparer.Ordinal)
            .FirstOrDefault();
        if (larger is not null)
            return Invariant($"hoop {larger.Name} of the recipe ({Mm(larger.Width)} x {Mm(larger.Height)} mm) ")
                + Invariant($"holds it: call with '--hoop {larger.Name}', or take hoop {template.Hoop.Name} out");
        // Half a step of the tape on either side, since a field's centre lies on its grid.
        var margin = (2 * (template.Clearance + template.Reach)) + Units.TapeStep;
        return "no hoop of the recipe holds it: take one whose field is at least "
            + Invariant($"{Up(shape.Width + margin)} x {Up(shape.Height + margin)} mm");
    }

    private static FieldTemplate EitherWay(FieldTemplate template) =>
        template with
        {
            Turns = [Turn.None, Turn.Quarter],
        };

    /// <summary>Fields of another hoop, which may lie as its throat and the recipe allow.</summary>
    private static FieldTemplate With(Recipe recipe, FieldTemplate template, Hoop hoop) =>
        template with
        {
            Hoop = hoop,
            Turns = Turning.Of(recipe, hoop).Footprints,
        };

    private static double Mm(int micrometres) => Units.ToMillimetres(micrometres);

    /// <summary>Rounded up: less would not do.</summary>
    private static double Up(int micrometres) => Units.ToMillimetres(Units.UpOnTape(micrometres));
}
