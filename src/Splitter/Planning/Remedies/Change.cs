using Splitter.Geometry;
using Splitter.Planning.Drafting;
using Splitter.Planning.Fields;
using Splitter.Recipes;
using static System.FormattableString;

namespace Splitter.Planning.Remedies;

/// <summary>Something that a person can change.</summary>
/// <param name="Text">As one would do it.</param>
/// <param name="Key">The key to change.</param>
/// <param name="Planned">What comes out; null when nothing does.</param>
internal sealed record Change(string Text, string Key, Func<PlanDraft?> Planned)
{
    /// <summary>
    /// Up to so many corners are tried, or one more than the recipe has: each is a tack more at every hooping.
    /// </summary>
    private const int UsualCorners = 4;

    /// <summary>Other first fields that are tried.</summary>
    private const int MostFirsts = 2;

    /// <summary>Widths that are tried are this much wider than the misfits ask for: seams move with them.</summary>
    private const double Spare = 1.1;

    /// <summary>Widths are written in whole steps of this, µm.</summary>
    internal const int WidthStep = 100;

    /// <summary>The overlap that it asks for, µm, if it asks for another one.</summary>
    internal int? Width { get; private init; }

    /// <summary>What may make parts fit, in the order of what it costs at the machine.</summary>
    /// <param name="fits">A width that all joins have room for, if it is known.</param>
    internal static IEnumerable<Change> All(Redrafts redrafts, int? fits = null) =>
        [OtherWidth(redrafts, fits), .. MoreCorners(redrafts), .. OtherFirsts(redrafts), .. LargerHoops(redrafts)];

    internal static Recipe WithWidth(Recipe recipe, int? width) =>
        recipe with
        {
            Overlap = recipe.Overlap with { Width = width },
        };

    private static Change OtherWidth(Redrafts redrafts, int? fits)
    {
        var (recipe, joins) = (redrafts.Recipe, redrafts.Draft.Joins);
        var need = joins.Max(j => Overlaps.ReachFor(j.Within95, recipe.Overlap.Edges)) * Spare;
        var width = recipe.Overlap.Width is not null
            ? fits
            : Math.Min((int)Math.Ceiling(need / WidthStep) * WidthStep, OverlapRules.Widest);
        var text = width is { } wide ? Invariant($"{Mm(wide)} mm") : "auto";
        return new($"write 'overlap.width: {text}'", "overlap.width", () => redrafts.Of(WithWidth(recipe, width)))
        {
            Width = width,
        };
    }

    private static IEnumerable<Change> MoreCorners(Redrafts redrafts)
    {
        var rules = redrafts.Recipe.Registration;
        var most = Math.Min(RegistrationRules.MostCorners, Math.Max(UsualCorners, rules.CornerCount + 1));
        for (var count = rules.CornerCount + 1; count <= most; count++)
        {
            var changed = redrafts.Recipe with
            {
                Registration = rules with { CornerCount = count, IsCountAsked = true },
            };
            yield return new(
                Invariant($"write 'registration.corners.count: {count}'"),
                "registration.corners.count",
                () => redrafts.Of(changed)
            );
        }
    }

    /// <summary>Middles of other fields that could be sewn first, the nearest to the first one first.</summary>
    private static IEnumerable<Change> OtherFirsts(Redrafts redrafts)
    {
        var (recipe, fields) = (redrafts.Recipe, redrafts.Draft.Layout.Fields);
        if (recipe.Fields.First is not null)
            return [];
        var folds = Folds.Held(recipe.Cloth, redrafts.Drawing.Bounds.Centre);
        return fields
            .Skip(1)
            .Where(field => folds is not { } held || field.Usable.Contains(held))
            .Select(field => field.Centre)
            .OrderBy(centre => centre.DistanceTo(fields[0].Centre))
            .ThenBy(centre => centre)
            .Take(MostFirsts)
            .Select(first => new Change(
                Invariant($"write 'fields.first: [{Mm(first.X)} mm, {Mm(first.Y)} mm]'"),
                "fields.first",
                () => redrafts.Of(recipe with { Fields = recipe.Fields with { First = first } })
            ));
    }

    private static IEnumerable<Change> LargerHoops(Redrafts redrafts) =>
        redrafts
            .Recipe.Hoops.Where(hoop => Area(hoop) > Area(redrafts.Draft.Hoop))
            .OrderBy(Area)
            .ThenBy(hoop => hoop.Name, StringComparer.Ordinal)
            .Select(hoop => new Change(
                Invariant($"sew it all with hoop {hoop.Name} ({Mm(hoop.Width)} x {Mm(hoop.Height)} mm) instead"),
                "hoops",
                () => redrafts.Of(hoop)
            ));

    private static long Area(Hoop hoop) => (long)hoop.Width * hoop.Height;

    private static double Mm(int micrometres) => micrometres / (double)Units.Millimetre;
}
