using System.Collections.Immutable;
using Splitter.Artwork;
using Splitter.Geometry;
using Splitter.Parts;
using Splitter.Recipes;
using Splitter.Texts;

namespace Splitter.Outputs.Pictures;

/// <summary>
/// The finished piece in true scale: the thread of all parts on its cloth, in the order in which it is sewn, and
/// nothing else. Marks are not in it: they come out, or lie below the work.
/// </summary>
internal static class FinishedPicture
{
    /// <summary>Of the longer side, the cloth that is shown around the work.</summary>
    private const double Border = 0.05;

    internal static Picture Of(Recipe recipe, Drawing drawing, ImmutableArray<Part> parts)
    {
        ImmutableArray<Step> steps = [.. parts.SelectMany(p => p.Steps).Where(s => s.Kind == StepKind.Body)];
        var thread = Box.Around(steps.SelectMany(s => s.Moves).SelectMany(m => m.Block.Stitches).Select(s => s.At));
        var work = thread.Joined(new(0, 0, drawing.Width, drawing.Height));
        var shown = work.Grown((int)(Math.Max(work.Width, work.Height) * Border));
        if (recipe.Cloth.OnDrawing is { } cloth)
            shown = shown.Common(cloth).Joined(thread);
        // Whole millimetres, so that a millimetre has whole pixels.
        var (width, height) = (Up(shown.Width), Up(shown.Height));
        var canvas = new Canvas();
        canvas.Cloth(new(0, 0, width, height), Colour.Of(recipe.Cloth.Color));
        foreach (var step in steps)
            canvas.Thread(
                [.. step.Moves.Select(m => m.Block.Stitches.Select(s => Lay(s.At)).ToImmutableArray())],
                Colour.Of(step.Thread!.Color)
            );
        var title = new Phrasebook(recipe.Output).Say("finished.title", ("title", recipe.Title));
        return canvas.ToPicture(width, height, title);

        // On the grid of the tape, which paths of SVG need no decimals for.
        Point Lay(Point p) => new Point(p.X - shown.Left, p.Y - shown.Top).OnTape();
    }

    private static int Up(int length) => (length + Units.Millimetre - 1) / Units.Millimetre * Units.Millimetre;
}
