using Splitter.Geometry;
using Splitter.Planning;

namespace Splitter.Outputs.Pictures;

/// <summary>What the signs of an overview mean.</summary>
internal sealed class OverviewKey(Canvas canvas, int letters, Plan plan)
{
    /// <summary>Width of the column of signs, in heights of a letter.</summary>
    private const int SignWidth = 5;

    private int Row => 2 * letters;

    internal int Width => 30 * letters;

    internal int Height => 6 * Row;

    internal void Draw(Point at)
    {
        var y = at.Y + letters;
        canvas.Text("Parts are sewn in the order of their letters.", new(at.X, y), letters, Colour.Ink);
        Sign(
            "the hoop's upper edge",
            (x, middle) =>
                Arrow.Draw(canvas, new(x + (2 * letters), middle), new(0, -1), letters * 3 / 2, MarkInk.Field(0))
        );
        if (!plan.SeamLines.IsEmpty)
            Sign(
                "seam: parts meet and overlap",
                (x, middle) =>
                    canvas.Dashes(letters / 6, letters, Colour.Ink, new(x, middle), new(x + (4 * letters), middle))
            );
        if (!plan.Corners.IsEmpty)
            Sign(
                "corner that later parts are set by",
                (x, middle) =>
                    canvas.Line(
                        letters / 6,
                        MarkInk.Corner,
                        100,
                        new(x + (3 * letters), middle + (letters / 2)),
                        new(x + letters, middle + (letters / 2)),
                        new(x + letters, middle - (letters / 2))
                    )
            );
        if (!plan.PlacementLines.IsEmpty)
            Sign(
                "fold of the cloth",
                (x, middle) =>
                    canvas.Dashes(
                        letters / 8,
                        letters / 2,
                        MarkInk.Placement,
                        new(x, middle),
                        new(x + (4 * letters), middle)
                    )
            );

        void Sign(string text, Action<int, int> draw)
        {
            y += Row;
            draw(at.X, y - (letters / 2));
            canvas.Text(text, new(at.X + (SignWidth * letters), y), letters, Colour.Ink);
        }
    }
}
