using System.Xml.Linq;
using Splitter.Artwork.Svg.Css;
using Splitter.Diagnostics;

namespace Splitter.Artwork.Svg.Paths;

/// <summary>The basic shapes and paths (SVG 1.1, chapters 8 and 9) to outlines.</summary>
internal sealed class ShapeReader(Remarks remarks)
{
    internal static bool IsShape(string name) =>
        name is "path" or "rect" or "circle" or "ellipse" or "line" or "polyline" or "polygon";

    /// <param name="viewport">What percentages are of.</param>
    internal Outline Read(XElement element, Declarations own, Spot viewport)
    {
        var outline = new Outline();
        var length = new ElementLengths(element, own, viewport, remarks);
        switch (element.Name.LocalName)
        {
            case "path":
                return ReadPath(element, own["d"] ?? "");
            case "rect":
                AddRectangle(outline, length);
                break;
            case "circle":
                var r = length.NotNegative("r", length.Diagonal) ?? 0;
                AddEllipse(outline, length, r, r);
                break;
            case "ellipse":
                var rx = length.NotNegative("rx", viewport.X);
                var ry = length.NotNegative("ry", viewport.Y);
                AddEllipse(outline, length, rx ?? ry ?? 0, ry ?? rx ?? 0);
                break;
            case "line":
                outline
                    .Begin(new(length.Across("x1"), length.Down("y1")))
                    .Line(new(length.Across("x2"), length.Down("y2")));
                break;
            default:
                AddPoints(outline, element);
                break;
        }
        return outline;
    }

    private Outline ReadPath(XElement element, string data)
    {
        // In CSS the data stand in path("…").
        if (data.StartsWith("path(", StringComparison.Ordinal))
            data = data[5..].TrimEnd(')').Trim().Trim('"', '\'');
        var (outline, fault) = PathDataReader.Read(data);
        if (fault is { } at)
            remarks.Add(
                element,
                (place, what) => ArtworkProblems.BadPath(place, what, at + 1, data[at..Math.Min(data.Length, at + 20)])
            );
        return outline;
    }

    private static void AddRectangle(Outline outline, ElementLengths length)
    {
        var (x, y) = (length.Across("x"), length.Down("y"));
        var width = length.NotNegative("width", length.Viewport.X) ?? 0;
        var height = length.NotNegative("height", length.Viewport.Y) ?? 0;
        if (width == 0 || height == 0)
            return;
        var givenX = length.NotNegative("rx", length.Viewport.X);
        var givenY = length.NotNegative("ry", length.Viewport.Y);
        var rx = Math.Min(givenX ?? givenY ?? 0, width / 2);
        var ry = Math.Min(givenY ?? givenX ?? 0, height / 2);
        var (right, bottom) = (x + width, y + height);
        var path = outline.Begin(new(x + rx, y));
        path.Line(new(right - rx, y));
        var round = rx > 0 && ry > 0;
        if (!round)
            path = Sharp(outline, x, y, right, bottom);
        else
        {
            ArcReader.AddQuarter(path, new(right - rx, y + ry), new(rx, ry), 3);
            path.Line(new(right, bottom - ry));
            ArcReader.AddQuarter(path, new(right - rx, bottom - ry), new(rx, ry), 0);
            path.Line(new(x + rx, bottom));
            ArcReader.AddQuarter(path, new(x + rx, bottom - ry), new(rx, ry), 1);
            path.Line(new(x, y + ry));
            ArcReader.AddQuarter(path, new(x + rx, y + ry), new(rx, ry), 2);
        }
        path.Close();
    }

    private static Subpath Sharp(Outline outline, double x, double y, double right, double bottom)
    {
        outline.Subpaths.Clear();
        var path = outline.Begin(new(x, y));
        path.Line(new(right, y));
        path.Line(new(right, bottom));
        path.Line(new(x, bottom));
        return path;
    }

    private static void AddEllipse(Outline outline, ElementLengths length, double rx, double ry)
    {
        if (rx == 0 || ry == 0)
            return;
        var centre = new Spot(length.Across("cx"), length.Down("cy"));
        var path = outline.Begin(new(centre.X + rx, centre.Y));
        for (var quarter = 0; quarter < 4; quarter++)
            ArcReader.AddQuarter(path, centre, new(rx, ry), quarter);
        path.Close();
    }

    private void AddPoints(Outline outline, XElement element)
    {
        var scanner = new Scanner((string?)element.Attribute("points") ?? "");
        Subpath? path = null;
        scanner.SkipSpace();
        while (!scanner.AtEnd)
        {
            var whole = scanner.TryNumber(out var x);
            scanner.SkipSeparator();
            if (!whole || !scanner.TryNumber(out var y))
            {
                remarks.Add(element, ArtworkProblems.BadPoints);
                break;
            }
            scanner.SkipSeparator();
            if (path is null)
                path = outline.Begin(new(x, y));
            else
                path.Line(new(x, y));
        }
        if (element.Name.LocalName == "polygon")
            path?.Close();
    }
}
