using System.Collections.Immutable;
using Splitter.Diagnostics;
using Splitter.Geometry;
using Splitter.Recipes;
using static System.FormattableString;

namespace Splitter.Planning.Fields;

/// <summary>Names fields beside which more cloth lies than has room in the machine's throat.</summary>
internal static class ThroatRoom
{
    private const string Else =
        "write a larger 'throat.room' if more cloth can be rolled up there, cut the cloth smaller, or sew it "
        + "on a machine whose throat is wider";

    /// <summary>Fields placed by hand one by one; of others the worst stands for all.</summary>
    internal static IEnumerable<Diagnostic> Problems(Recipe recipe, Layout layout, FieldTemplate template)
    {
        if (template.Hoop.Throat is not { Room: { } room } throat)
            yield break;
        var over = layout
            .Fields.Select(field => (Field: field, Cloth: Turning.InThroat(recipe, field) ?? 0))
            .Where(found => found.Cloth > room)
            .ToList();
        var byHand = HandPlaced.Of(recipe, template).ToLookup(placed => placed.Field, placed => placed.Place);
        foreach (var (field, cloth) in over)
        foreach (var place in byHand[field].Take(1))
            yield return FieldProblems.ThroatTooNarrow(place, field, cloth, throat, 0, Advice(recipe, field, true));
        over.RemoveAll(found => byHand.Contains(found.Field));
        if (over.Count == 0)
            yield break;
        var worst = over.MaxBy(found => found.Cloth);
        var hoop = Invariant($"hoops[{recipe.Hoops.IndexOf(template.Hoop)}].throat");
        yield return FieldProblems.ThroatTooNarrow(
            recipe.PlaceOf(hoop),
            worst.Field,
            worst.Cloth,
            throat,
            over.Count - 1,
            Advice(recipe, worst.Field, false)
        );
    }

    /// <summary>What a field gives up that does not lie over the same ground.</summary>
    private static string Other(Turn turn, Field field) =>
        new Field(field.Hoop, field.Centre, turn, field.Clearance).Bounds == field.Bounds
            ? ""
            : "; it then covers other ground, and more hoopings may be needed";

    private static string Advice(Recipe recipe, Field field, bool byHand)
    {
        ImmutableArray<Turn> roomier = [.. Turning.Roomier(field, recipe)];
        if (roomier.IsEmpty)
            return Else;
        if (byHand)
            return Invariant($"write 'turn: {(int)roomier[0]} deg' for it{Other(roomier[0], field)}");
        if (recipe.Fields.Place is GridFields)
            return Invariant($"list the fields by hand, with 'turn: {(int)roomier[0]} deg' for such as ")
                + Invariant($"this{Other(roomier[0], field)}");
        // Other fields then lie where the throat allows it, and not where fewest of them cover all.
        return roomier.RemoveAll(recipe.Fields.Turns.Contains) is [var turn, ..]
            ? Invariant($"allow {(int)turn} deg under 'fields.turns'; the number of hoopings may rise by it")
            : Invariant($"turned by {(int)roomier[0]} deg it would have room, but fields that lie so do not ")
                + Invariant($"cover the artwork; {Else}");
    }
}
