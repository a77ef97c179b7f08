namespace Splitter.Artwork.Svg;

/// <summary>A rectangle in user units.</summary>
internal readonly record struct Frame(double X, double Y, double Width, double Height)
{
    internal bool HasArea => Width > 0 && Height > 0 && double.IsFinite(Width) && double.IsFinite(Height);
}

/// <summary><c>viewBox</c> and <c>preserveAspectRatio</c> (SVG 1.1, 7.7 and 7.8).</summary>
internal static class Viewports
{
    /// <returns>Null when it is no four numbers.</returns>
    internal static Frame? ReadViewBox(string text) =>
        Lengths.ReadList(text, double.NaN) is [var x, var y, var width, var height]
        && text.All(c => !char.IsAsciiLetter(c) || c is 'e' or 'E')
            ? new(x, y, width, height)
            : null;

    /// <summary>From the user space inside to the one that the viewport lies in.</summary>
    /// <param name="aspect">The value of <c>preserveAspectRatio</c>; null for its default.</param>
    internal static Matrix Place(Frame viewport, Frame? viewBox, string? aspect)
    {
        if (viewBox is not { } box)
            return Matrix.Shift(viewport.X, viewport.Y);
        var (sx, sy) = (viewport.Width / box.Width, viewport.Height / box.Height);
        var words = XmlWords.Of(aspect);
        if (words is ["defer", .. var rest])
            words = rest;
        var align = words is [{ Length: 8 } given, ..] ? given : "xMidYMid";
        if (words is not ["none", ..])
        {
            var slice = words is [_, "slice", ..];
            sx = sy = slice ? Math.Max(sx, sy) : Math.Min(sx, sy);
        }
        var x = viewport.X + (Share(align[1..4]) * (viewport.Width - (sx * box.Width)));
        var y = viewport.Y + (Share(align[5..8]) * (viewport.Height - (sy * box.Height)));
        return Matrix.Shift(x, y) * Matrix.Scale(sx, sy) * Matrix.Shift(-box.X, -box.Y);
    }

    private static double Share(string word) =>
        word switch
        {
            "Min" => 0,
            "Max" => 1,
            _ => 0.5,
        };
}
