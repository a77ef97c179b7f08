using Splitter.Artwork;

namespace Splitter.Planning.Drafting;

/// <summary>How often a drawing may be drafted where one draft would do: work that is counted, not timed.</summary>
internal static class DraftBudget
{
    /// <summary>In corners of outlines times fields: about three seconds.</summary>
    private const long Most = 2_000_000;

    /// <summary>How many drafts of a layout there may be, one at least.</summary>
    internal static int Drafts(Drawing drawing, Layout layout, int most) =>
        (int)Math.Clamp(Most / Work(drawing, layout), 1, most);

    private static long Work(Drawing drawing, Layout layout)
    {
        var corners = drawing.Shapes.Sum(s => (long)s.Footprint.Rings.Sum(r => r.Points.Length));
        return Math.Max(1, corners * layout.Fields.Length);
    }
}
