using Splitter.Diagnostics;
using Splitter.Geometry;
using Splitter.Recipes;

namespace Splitter.Planning.Fields;

/// <summary>Fields that hang over the cloth's edge: beyond it nothing but the stabilizer is in the hoop.</summary>
internal static class ClothEdge
{
    /// <summary>The warning that names all parts that do so; none where nothing is known of the cloth.</summary>
    /// <param name="fields">In sewing order.</param>
    internal static IEnumerable<Diagnostic> Warnings(Recipe recipe, IReadOnlyList<Field> fields)
    {
        if (recipe.Cloth.OnDrawing is not { } cloth)
            yield break;
        var over = fields
            .Select((field, i) => (Letter: Letters.Of(i), Sides: Beyond(cloth, field.Bounds)))
            .Where(part => part.Sides.Most > 0)
            .ToList();
        if (over.Count > 0)
            yield return FieldProblems.FieldsOverClothEdge(recipe.PlaceOf("cloth.size"), over, fields[0].Hoop);
    }

    /// <summary>How far a box hangs over each edge.</summary>
    internal static Overhang Beyond(Box cloth, Box box) =>
        new(
            Math.Max(0, cloth.Left - box.Left),
            Math.Max(0, cloth.Top - box.Top),
            Math.Max(0, box.Right - cloth.Right),
            Math.Max(0, box.Bottom - cloth.Bottom)
        );

    /// <summary>
    /// The least step, in whole ones of the tape, after which a box hangs over no edge, or over one of two as before.
    /// </summary>
    internal static Point Inwards(Box cloth, Box box) =>
        new(Step(cloth.Left - box.Left, box.Right - cloth.Right), Step(cloth.Top - box.Top, box.Bottom - cloth.Bottom));

    /// <param name="before">How far it hangs over the edge where the axis begins; negative when it lies inside.</param>
    /// <param name="after">The same for the other edge.</param>
    private static int Step(int before, int after) =>
        before > 0 && after < 0 ? Math.Min(Units.UpOnTape(before), Units.DownOnTape(-after))
        : after > 0 && before < 0 ? -Math.Min(Units.UpOnTape(after), Units.DownOnTape(-before))
        : 0;
}

/// <summary>
/// How far something hangs over each edge of the cloth as seen on the drawing, µm; 0 where it does not.
/// </summary>
internal readonly record struct Overhang(int Left, int Top, int Right, int Bottom)
{
    internal int Most => Math.Max(Math.Max(Left, Right), Math.Max(Top, Bottom));

    internal int Sum() => Left + Top + Right + Bottom;
}
