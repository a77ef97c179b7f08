using System.Collections.Immutable;
using Splitter.Outputs.Pdf;
using Splitter.Recipes;

namespace Splitter.Outputs.Templates;

/// <summary>
/// The design and every part's field in true scale on paper: a page that explains, the whole design over as many sheets
/// as it takes, then each field.
/// </summary>
internal static class Template
{
    internal static string FileName(Paper paper) => $"template-{paper}.pdf";

    internal static byte[] Write(Recipe recipe, ShownGround ground)
    {
        var (drawing, plan) = (ground.Drawing, ground.Plan);
        var form = SheetForm.Of(recipe.Output.Paper);
        var texts = new TemplateTexts(recipe, plan.Hoop);
        var tilings = Tilings(recipe.Cloth, ground, form, texts);
        var sheets = tilings.SelectMany(t => t.Printed).Count();
        var pages =
            from tiling in tilings
            from sheet in tiling.Printed
            select SheetPage.Of(tiling, sheet, texts, sheets);
        var cover = new CoverPage(form, recipe, drawing, plan, texts).Draw(tilings);
        return PdfWriter.Write(texts.Title, [cover, .. pages]);
    }

    /// <summary>The design first, then the parts in sewing order; sheets are numbered through.</summary>
    internal static ImmutableArray<Tiling> Tilings(Cloth cloth, ShownGround ground, SheetForm form, TemplateTexts texts)
    {
        var (drawing, plan) = (ground.Drawing, ground.Plan);
        var artwork = ArtworkLayer.Of(ground);
        var boards = plan.Hoopings.Select(h => FieldBoard.Of(cloth, plan, h, artwork, texts));
        var tilings = ImmutableArray.CreateBuilder<Tiling>();
        var next = 1;
        foreach (var board in boards.Prepend(DesignBoard.Of(cloth, drawing, plan, artwork, texts)))
        {
            var tiling = Tiling.Of(board, form, next);
            tilings.Add(tiling);
            next += tiling.Printed.Count();
        }
        return tilings.ToImmutable();
    }
}
