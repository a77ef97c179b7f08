using System.Collections.Immutable;
using System.Globalization;
using Splitter.Artwork;
using Splitter.Geometry;
using Splitter.Planning;
using Splitter.Recipes;

namespace Splitter.Outputs.Pictures;

/// <summary>
/// The whole work in true scale with every field on it, to be pinned to the wall: which part is where, which way its hoop
/// lies, where parts meet and how well, and which corners they are set by. Its sides are near those of a sheet of paper.
/// </summary>
internal sealed class OverviewPicture
{
    /// <summary>
    /// Heights of a letter along the longer side of what is shown. On a sheet of A4 letters are then 2 mm high at least,
    /// which is read at arm's length (common practice, no source).
    /// </summary>
    private const int LettersToASide = 90;

    /// <summary>Letters of a tiny work, µm.</summary>
    private const int SmallestLetters = 1200;

    private readonly Canvas canvas = new();
    private readonly Recipe recipe;
    private readonly Drawing drawing;
    private readonly Plan plan;
    private readonly ImmutableArray<ListedPart> parts;

    /// <summary>What is shown of the drawing's plane.</summary>
    private readonly Box stage;

    private readonly Box cloth;

    /// <summary>Height of a capital of the tables; everything else is a multiple of it, so that a small work gets a small page.</summary>
    private readonly int letters;

    private readonly Point shift;

    private OverviewPicture(Recipe recipe, Drawing drawing, Plan plan, ImmutableArray<ListedPart> parts)
    {
        (this.recipe, this.drawing, this.plan, this.parts) = (recipe, drawing, plan, parts);
        var fields = Box.Around(plan.Hoopings.Select(h => h.Field.Bounds));
        var shown = Box.Around([new Box(0, 0, drawing.Width, drawing.Height), drawing.Bounds, fields]);
        var at = recipe.Cloth.ArtworkAt;
        cloth = recipe.Cloth.Size is var (width, height) ? new(-at.X, -at.Y, width - at.X, height - at.Y) : shown;
        stage = cloth.Joined(shown);
        letters = Math.Max(SmallestLetters, Math.Max(stage.Width, stage.Height) / LettersToASide);
        shift = new(Margin - stage.Left, Top - stage.Top);
    }

    private int Margin => 3 * letters;

    private int Top => 9 * letters;

    internal static Picture Of(Recipe recipe, Drawing drawing, Plan plan, ImmutableArray<ListedPart> parts) =>
        new OverviewPicture(recipe, drawing, plan, parts).Draw();

    private Picture Draw()
    {
        var map = new Box(Margin, Top, Margin + stage.Width, Top + stage.Height);
        var panels = Panels();
        var layout = PanelLayout.Around(map, foot: 4 * letters, gap: 3 * letters, panels);
        var (width, height) = (layout.Width + Margin, layout.Height + Margin);
        canvas.Area(new Box(0, 0, width, height), Colour.Of("#fbfaf7"));
        canvas.Text(recipe.Title, new(Margin, 5 * letters), 5 * letters / 2, Colour.Ink);
        canvas.Text(Subtitle(), new(Margin, (7 * letters) + (letters / 2)), letters, Colour.Ink);
        new OverviewMap(canvas, recipe, drawing, plan, (stage, cloth), shift, letters).Draw();
        ScaleBar.Draw(canvas, new(map.Left, map.Bottom + (2 * letters)), stage.Width - (7 * letters), letters);
        foreach (var (panel, place) in panels.Zip(layout.Places))
            panel.Draw(place);
        return canvas.ToPicture(width, height, $"{recipe.Title}, hoop {plan.Hoop.Name}: overview");
    }

    private ImmutableArray<IPanel> Panels()
    {
        var grounds = SeamStretches.Of(drawing, plan).Select(s => s.Ground).Distinct().Order();
        var panels = ImmutableArray.CreateBuilder<IPanel>();
        panels.Add(new OverviewTable(canvas, letters, plan, parts));
        if (!plan.Joins.IsEmpty)
            panels.Add(new OverviewChart(canvas, letters, plan, recipe.Overlap.Edges));
        panels.Add(new OverviewKey(canvas, letters, plan, [.. grounds]));
        if (!parts.IsEmpty)
            panels.Add(new OverviewThreads(canvas, letters, drawing.Threads, parts));
        return panels.ToImmutable();
    }

    private string Subtitle()
    {
        var size = string.Create(
            CultureInfo.InvariantCulture,
            $"{Figures.Millimetres(drawing.Width)} x {Figures.Millimetres(drawing.Height)} mm, hoop {plan.Hoop.Name} ({Figures.Millimetres(plan.Hoop.Width)} x {Figures.Millimetres(plan.Hoop.Height)} mm): "
        );
        return plan.Hoopings.Length == 1
            ? $"{size}one part"
            : $"{size}{plan.Hoopings.Length} parts, sewn in the order of their letters, A to {plan.Hoopings[^1].Letter}";
    }
}
