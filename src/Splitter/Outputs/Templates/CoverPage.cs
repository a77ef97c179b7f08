using System.Collections.Immutable;
using Splitter.Artwork;
using Splitter.Geometry;
using Splitter.Outputs.Pdf;
using Splitter.Outputs.Pictures;
using Splitter.Planning;
using Splitter.Recipes;

namespace Splitter.Outputs.Templates;

/// <summary>The first page: how to print and put together, which sheet lies where, what the signs mean.</summary>
internal sealed class CoverPage(SheetForm form, Recipe recipe, Drawing drawing, Plan plan, TemplateTexts texts)
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
        y += Row / 2;
        Line(texts.Subject);
        Line($"{texts.Cover(sheets)}: {recipe.Output.Paper}");
        y += Row / 2;
        foreach (var advice in texts.Advice.SelectMany(Lines))
            Line(advice);
        y += Row;
        var design = tilings[0].Printed.ToList();
        Line(texts.MapOf(design[0].Number, design[^1].Number));
        var top = y + (Row / 2);
        var parts = Parts(tilings);
        var columns = Math.Max(1, (page.Width / PartColumn));
        var listTop = page.Bottom - (((parts.Length + columns - 1) / columns + 1) * Row);
        SheetMap.Draw(
            canvas,
            drawing,
            tilings[0],
            texts.LeftOut,
            new(page.Left + RuleWidth, top, page.Right - KeyWidth, listTop - Row)
        );
        ControlRule.Upright(canvas, new(page.Left + (RuleWidth / 2), top));
        new TemplateKey(canvas, plan, recipe.Cloth.Size is not null, tilings, texts).Draw(
            new(page.Right - KeyWidth + (2 * Row), top)
        );
        y = listTop - Row;
        Line(texts.Parts);
        for (var i = 0; i < parts.Length; i++)
            canvas.Text(
                parts[i],
                new(page.Left + (i % columns * PartColumn), y + (((i / columns) + 1) * Row)),
                TemplateInk.SmallLetters,
                Colour.Ink
            );
        SheetPage.Foot(canvas, form, texts);
        return new(canvas.ToPicture(form.Width, form.Height, texts.Title), []);

        void Line(string text) => canvas.Text(text, new(page.Left, y += Row), TemplateInk.SmallLetters, Colour.Ink);
    }

    /// <summary>As many words to a line as fit on the page.</summary>
    private List<string> Lines(string text)
    {
        List<string> lines = [""];
        foreach (var word in text.Split(' '))
        {
            var longer = lines[^1].Length == 0 ? word : $"{lines[^1]} {word}";
            if (StrokeFont.WidthOf(longer, TemplateInk.SmallLetters) <= page.Width)
                lines[^1] = longer;
            else
                lines.Add(word);
        }
        return lines;
    }

    private ImmutableArray<string> Parts(ImmutableArray<Tiling> tilings) =>
        [
            .. plan.Hoopings.Select(
                (hooping, i) =>
                {
                    var sheets = tilings[i + 1].Printed.Select(s => s.Number).ToList();
                    return texts.PartSheets(hooping.Letter, sheets[0], sheets[^1]);
                }
            ),
        ];
}
