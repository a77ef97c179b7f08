using Splitter.Artwork;
using Splitter.Planning;
using Splitter.Recipes;

namespace Splitter.Benchmarks.Figures;

/// <summary>
/// What a person gets who lays hoops in rows and columns: along each axis ceil((artwork - common) / (field - common))
/// fields, with the least common ground that holds corners.
/// </summary>
internal static class PlainGrid
{
    internal static int Count(Recipe recipe, Drawing drawing, Hoop hoop)
    {
        var common = CommonGround.Narrowest(recipe.Registration);
        var (width, height) = (hoop.Width - (2 * recipe.Fields.Clearance), hoop.Height - (2 * recipe.Fields.Clearance));
        var sheet = drawing.Bounds;
        return Math.Min(
            Along(sheet.Width, width) * Along(sheet.Height, height),
            Along(sheet.Width, height) * Along(sheet.Height, width)
        );

        int Along(int length, int field) =>
            length <= field ? 1 : (int)Math.Ceiling((length - common) / (double)(field - common));
    }
}
