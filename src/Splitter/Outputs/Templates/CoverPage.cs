using System.Collections.Immutable;
using Splitter.Artwork;
using Splitter.Geometry;
using Splitter.Outputs.Pdf;
using Splitter.Outputs.Pictures;
using Splitter.Planning;
using Splitter.Recipes;

namespace Splitter.Outputs.Templates;

/// <summary>The first page: how to print and put together, which sheet lies where, what the signs mean.</summary>
internal sealed class CoverPage(SheetForm form, Recipe recipe, Drawing drawing, Plan plan)
{
    private const int Row = 4200;
    private const int TitleLetters = 5500;

    /// <summary>What the upright rule takes at the left.</summary>
    private const int RuleWidth = 24 * Units.Millimetre;

    private const int KeyWidth = 72 * Units.Millimetre;

    /// <summary>Of the list of parts.</summary>
    private const int PartColumn = 22 * Units.Millimetre;

    private readonly Canvas canvas = new();
    private readonly Box page = form.Window with { Top = SheetForm.Margin };

    internal PdfPage Draw(ImmutableArray<Tiling> tilings)
    {
        var sheets = tilings.SelectMany(t => t.Printed).Count();
        var y = page.Top + TitleLetters + (Row / 2);
        canvas.Text(recipe.Title, new(page.Left, y), TitleLetters, Colour.Ink);
        Line(TemplateTexts.Subject(recipe, plan.Hoop));
        Line(TemplateTexts.Cover(recipe.Output.Paper, sheets));
        y += Row / 2;
        foreach (var advice in TemplateTexts.Advice)
            Line(advice);
        y += Row;
        var design = tilings[0].Printed.ToList();
        Line(TemplateTexts.MapOf(design[0].Number, design[^1].Number));
        var top = y + (Row / 2);
        var parts = Parts(tilings);
        var columns = Math.Max(1, (page.Width / PartColumn));
        var listTop = page.Bottom - (((parts.Length + columns - 1) / columns + 1) * Row);
        SheetMap.Draw(
            canvas,
            drawing,
            tilings[0],
            new(page.Left + RuleWidth, top, page.Right - KeyWidth, listTop - Row)
        );
        ControlRule.Upright(canvas, new(page.Left + (RuleWidth / 2), top));
        new TemplateKey(canvas, plan, tilings).Draw(new(page.Right - KeyWidth + (2 * Row), top));
        y = listTop - Row;
        Line(TemplateTexts.PartsOnSheets);
        for (var i = 0; i < parts.Length; i++)
            canvas.Text(
                parts[i],
                new(page.Left + (i % columns * PartColumn), y + (((i / columns) + 1) * Row)),
                TemplateInk.SmallLetters,
                Colour.Ink
            );
        SheetPage.Foot(canvas, form);
        return new(canvas.ToPicture(form.Width, form.Height, TemplateTexts.Title(recipe, plan.Hoop)), []);

        void Line(string text) => canvas.Text(text, new(page.Left, y += Row), TemplateInk.SmallLetters, Colour.Ink);
    }

    private ImmutableArray<string> Parts(ImmutableArray<Tiling> tilings) =>
        [
            .. plan.Hoopings.Select(
                (hooping, i) =>
                {
                    var sheets = tilings[i + 1].Printed.Select(s => s.Number).ToList();
                    return TemplateTexts.PartSheets(hooping.Letter, sheets[0], sheets[^1]);
                }
            ),
        ];
}
