using System.Collections.Immutable;
using Splitter.Artwork;
using Splitter.Geometry;
using Splitter.Planning;
using Splitter.Planning.Fields;
using Splitter.Planning.Seams;
using Splitter.Recipes;

namespace Splitter.Benchmarks.Figures;

/// <summary>
/// What a person gets who lays hoops in rows and columns and sews them row by row, with straight seams: along each axis
/// ceil((artwork - common) / (field - common)) fields, with the least common ground that holds corners.
/// </summary>
internal static class PlainGrid
{
    /// <summary>The better of both turns of the hoop; upright where they are as good.</summary>
    internal static GridFields Of(Recipe recipe, Drawing drawing, Hoop hoop)
    {
        var common = CommonGround.Least(recipe.Registration);
        var (width, height) = (hoop.Width - (2 * recipe.Fields.Clearance), hoop.Height - (2 * recipe.Fields.Clearance));
        var sheet = drawing.Bounds;
        var (upright, turned) = (
            new GridFields(Along(sheet.Width, width), Along(sheet.Height, height), Turn.None),
            new GridFields(Along(sheet.Width, height), Along(sheet.Height, width), Turn.Quarter)
        );
        return turned.Columns * turned.Rows < upright.Columns * upright.Rows ? turned : upright;

        int Along(int length, int field) =>
            length <= field ? 1 : (int)Math.Ceiling((length - common) / (double)(field - common));
    }

    /// <summary>What its seams show, mm of plain fill.</summary>
    internal static double Cost(Recipe recipe, Drawing drawing, Hoop hoop)
    {
        var template = new FieldTemplate(
            hoop,
            recipe.Fields.Clearance,
            drawing.Shapes.Max(s => s.Style.Pull) + Units.TapeStep
        );
        var fields = FieldGrid.Fields(drawing.Bounds, Of(recipe, drawing, hoop), template);
        ImmutableArray<Box> grounds = [.. fields.Select(template.Ground)];
        var straight = recipe.Overlap with { Seams = SeamRule.Straight };
        return Divider.Divide(straight, drawing, new(fields, grounds, fields.Length)).Cost.StraightCost;
    }
}
