using System.Collections.Immutable;
using Splitter.Artwork;
using Splitter.Geometry;
using Splitter.Planning;
using Splitter.Recipes;
using Splitter.Texts;

namespace Splitter.Outputs.Pictures;

/// <summary>
/// The whole work in true scale with every field on it, to be pinned to the wall: which part is where, which way its
/// hoop lies, where parts meet and how well, and which corners they are set by. Its sides are near those of a sheet of
/// paper.
/// </summary>
internal sealed class OverviewPicture
{
    /// <summary>
    /// Most heights of a letter along the longer side of what is shown, and fewest: larger letters would crowd the
    /// work.
    /// </summary>
    private const int LettersToASide = 90,
        FewestToASide = 66;

    /// <summary>
    /// The smallest letters on a sheet of A4, µm, which are read at arm's length (common practice, no source).
    /// </summary>
    private const int SmallestPrinted = 2 * Units.Millimetre;

    /// <summary>A4 of ISO 216, µm.</summary>
    private const int SheetLong = 297 * Units.Millimetre,
        SheetShort = 210 * Units.Millimetre;

    /// <summary>Letters of a tiny work, µm.</summary>
    private const int SmallestLetters = 1200;

    /// <summary>Height in pixels: every letter of it can be read on a screen.</summary>
    private const int Pixels = 1600;

    private readonly Canvas canvas = new();
    private readonly Recipe recipe;
    private readonly Phrasebook say;
    private readonly ShownGround ground;
    private readonly Drawing drawing;
    private readonly Plan plan;
    private readonly ImmutableArray<ListedPart> parts;

    /// <summary>What is shown of the drawing's plane.</summary>
    private readonly Box stage;

    private readonly Box cloth;

    /// <summary>
    /// Height of a capital of the tables; everything else is a multiple of it, so that a small work gets a small page.
    /// </summary>
    private readonly int letters;

    private readonly Point shift;

    private OverviewPicture(Recipe recipe, ShownGround ground, ImmutableArray<ListedPart> parts)
    {
        (this.recipe, this.ground, this.parts) = (recipe, ground, parts);
        (drawing, plan) = (ground.Drawing, ground.Plan);
        say = new(recipe.Output);
        var fields = Box.Around(plan.Hoopings.Select(h => h.Field.Bounds));
        var shown = Box.Around([new Box(0, 0, drawing.Width, drawing.Height), drawing.Bounds, fields]);
        var at = recipe.Cloth.ArtworkAt;
        cloth = recipe.Cloth.Size is var (width, height) ? new(-at.X, -at.Y, width - at.X, height - at.Y) : shown;
        stage = cloth.Joined(shown);
        letters = Readable();
        shift = new(Margin - stage.Left, Top - stage.Top);
    }

    private int Margin => MarginOf(letters);

    private int Top => TopOf(letters);

    internal static Picture Of(Recipe recipe, ShownGround ground, ImmutableArray<ListedPart> parts) =>
        new OverviewPicture(recipe, ground, parts).Draw();

    internal static byte[] Png(Picture overview)
    {
        using var raster = Raster.Of(overview, Pixels);
        return PngWriter.Write(raster);
    }

    private Picture Draw()
    {
        var map = Map(letters);
        var panels = Panels(letters);
        var layout = Layout(letters, panels);
        var (width, height) = (layout.Width + Margin, layout.Height + Margin);
        canvas.Area(new Box(0, 0, width, height), Colour.Of("#fbfaf7"));
        canvas.Text(recipe.Title, new(Margin, 5 * letters), 5 * letters / 2, Colour.Ink);
        canvas.Text(Subtitle(), new(Margin, (7 * letters) + (letters / 2)), letters, Colour.Ink);
        new OverviewMap(canvas, recipe, say, ground, (stage, cloth), shift, letters).Draw();
        ScaleBar.Draw(canvas, new(map.Left, map.Bottom + (2 * letters)), stage.Width - (7 * letters), letters);
        foreach (var (panel, place) in panels.Zip(layout.Places))
            panel.Draw(place);
        var title = say.Say("overview.title", ("title", recipe.Title), ("hoop", plan.Hoop.Name));
        return canvas.ToPicture(width, height, title);
    }

    /// <summary>
    /// The smallest letters that can be read when the page is printed on one sheet, or else what comes nearest.
    /// </summary>
    private int Readable()
    {
        var side = Math.Max(stage.Width, stage.Height);
        var heights = Enumerable
            .Range(FewestToASide, LettersToASide - FewestToASide + 1)
            .Reverse()
            .Select(count => Math.Max(SmallestLetters, side / count))
            .Select(height => (Height: height, Printed: SmallestOnSheet(height)))
            .ToList();
        var readable = heights.Where(h => h.Printed >= SmallestPrinted).Take(1);
        return readable.Concat([heights.MaxBy(h => h.Printed)]).First().Height;
    }

    private double SmallestOnSheet(int letters)
    {
        var layout = Layout(letters, Panels(letters));
        var (width, height) = (layout.Width + MarginOf(letters), layout.Height + MarginOf(letters));
        var scale = Math.Min((double)SheetLong / Math.Max(width, height), (double)SheetShort / Math.Min(width, height));
        return scale * MarkName.HeightOf(letters);
    }

    private PanelLayout Layout(int letters, ImmutableArray<IPanel> panels) =>
        PanelLayout.Around(Map(letters), foot: 4 * letters, gap: 3 * letters, panels);

    private Box Map(int letters) =>
        new(MarginOf(letters), TopOf(letters), MarginOf(letters) + stage.Width, TopOf(letters) + stage.Height);

    private static int MarginOf(int letters) => 3 * letters;

    private static int TopOf(int letters) => 9 * letters;

    private ImmutableArray<IPanel> Panels(int letters)
    {
        var panels = ImmutableArray.CreateBuilder<IPanel>();
        panels.Add(new OverviewTable(canvas, say, letters, plan, parts));
        if (!plan.Joins.IsEmpty)
            panels.Add(new OverviewChart(canvas, say, letters, plan));
        panels.Add(new OverviewKey(canvas, say, letters, ground));
        if (!parts.IsEmpty)
            panels.Add(new OverviewThreads(canvas, say, letters, drawing.Threads, parts));
        return panels.ToImmutable();
    }

    private string Subtitle()
    {
        var size = say.Say(
            "overview.size",
            ("size", say.Numbers.Size(drawing.Width, drawing.Height)),
            ("hoop", plan.Hoop.Name),
            ("field", say.Numbers.Size(plan.Hoop.Width, plan.Hoop.Height))
        );
        return plan.Hoopings.Length == 1
            ? say.Say("overview.one-part", ("size", size))
            : say.Say(
                "overview.parts",
                ("size", size),
                ("parts", Numbers.Count(plan.Hoopings.Length)),
                ("last", plan.Hoopings[^1].Letter)
            );
    }
}
