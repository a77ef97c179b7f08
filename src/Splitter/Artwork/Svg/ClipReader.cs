using System.Xml.Linq;
using Splitter.Artwork.Svg.Css;
using Splitter.Artwork.Svg.Paths;
using Splitter.Diagnostics;
using Splitter.Geometry;

namespace Splitter.Artwork.Svg;

/// <summary>Clip paths to ground on the sheet (SVG 1.1, 14.3.5).</summary>
internal sealed class ClipReader(Walk walk, Cascade cascade, References references, Remarks remarks)
{
    /// <summary>Clip paths that are being read: one that leads back to itself clips nothing.</summary>
    private readonly List<XElement> open = [];

    /// <param name="setting">The user space of the element that is clipped.</param>
    /// <returns>Null when it does not clip.</returns>
    internal Region? Read(XElement element, string value, Setting setting)
    {
        if (References.Url(value) is not { } url)
        {
            if (value is not ("inherit" or "initial" or "unset"))
                remarks.Add(element, (place, what) => ArtworkProblems.BadValue(place, what, "clip-path", value));
            return null;
        }
        if (references.Follow(element, url.Reference) is not { } clipPath)
            return null;
        if (clipPath.Name.LocalName != "clipPath")
        {
            remarks.Add(
                element,
                (place, what) => ArtworkProblems.WrongKind(place, what, url.Reference, clipPath.Name.LocalName)
            );
            return null;
        }
        if (open.Contains(clipPath))
        {
            remarks.Add(element, (place, what) => ArtworkProblems.Circle(place, what, url.Reference));
            return null;
        }
        open.Add(clipPath);
        var region = Read(element, clipPath, setting);
        open.RemoveAt(open.Count - 1);
        return region;
    }

    private Region Read(XElement element, XElement clipPath, Setting setting)
    {
        remarks.CountElement(clipPath);
        var own = cascade.Of(clipPath);
        var space = setting.Space;
        if (own["transform"] is { Length: > 0 } text)
        {
            if (TransformReader.Read(text) is { } matrix)
                space *= matrix;
            else
                remarks.Add(clipPath, (place, what) => ArtworkProblems.BadValue(place, what, "transform", text));
        }
        var narrowed = setting with { Space = space };
        var viewport = setting.Viewport;
        if (own["clipPathUnits"] == "objectBoundingBox")
        {
            var box = Measure(element, setting);
            if (!box.HasArea)
                return Region.Empty;
            space *= Matrix.Shift(box.X, box.Y) * Matrix.Scale(box.Width, box.Height);
            viewport = new(1, 1);
        }
        var inside = new Setting
        {
            Space = space,
            Viewport = viewport,
            Look = AncestorLook(clipPath),
            Depth = setting.Depth + 1,
            Copying = setting.Copying,
        };
        var shapes = new ClipShapes(remarks);
        foreach (var child in clipPath.Elements())
            walk.Visit(child, inside, shapes);
        var region = shapes.Ground;
        return own["clip-path"] is { } further && further != "none" && Read(clipPath, further, narrowed) is { } narrower
            ? Polygons.Intersect(region, narrower)
            : region;
    }

    /// <summary>A clip path inherits from where it stands, not from what it clips.</summary>
    private Look AncestorLook(XElement clipPath)
    {
        var look = Look.Initial;
        foreach (var ancestor in clipPath.AncestorsAndSelf().Reverse())
            look = new LookReader(remarks).Read(ancestor, cascade.Of(ancestor), look, 0);
        return look;
    }

    /// <summary>The box around an element's geometry in its own user space, strokes not counted.</summary>
    private Frame Measure(XElement element, Setting setting)
    {
        var scale = setting.Space.Stretch.Most;
        if (scale == 0 || !double.IsFinite(scale))
            return default;
        var extent = new Extent(Flattening.Tolerance / scale);
        walk.Content(element, setting with { Space = Matrix.Identity, Clip = null }, extent);
        return extent.Box;
    }

    private sealed class ClipShapes(Remarks remarks) : IReceiver
    {
        private readonly List<Region> parts = [];

        internal Region Ground => Polygons.Union(parts);

        public bool Paints => false;

        public bool Clips => true;

        public bool Groups => false;

        public void Draw(XElement element, Outline outline, Setting setting)
        {
            if (!setting.Look.Visible)
                return;
            var paths = Flattening.Flatten(outline, setting.Space, Flattening.Tolerance);
            remarks.CountPoints(element, paths.Sum(p => p.Points.Count));
            if (remarks.Stopped)
                return;
            if (Flattening.IsTangled(paths))
            {
                remarks.Add(element, ArtworkProblems.TooTangled);
                return;
            }
            var region = Snapping.Ground(paths, setting.Look.ClipRule);
            parts.Add(setting.Clip is { } clip ? Polygons.Intersect(region, clip) : region);
        }
    }

    private sealed class Extent(double tolerance) : IReceiver
    {
        private double left = double.PositiveInfinity,
            top = double.PositiveInfinity,
            right = double.NegativeInfinity,
            bottom = double.NegativeInfinity;

        internal Frame Box => right >= left ? new(left, top, right - left, bottom - top) : default;

        public bool Paints => false;

        public bool Clips => false;

        public bool Groups => true;

        public void Draw(XElement element, Outline outline, Setting setting)
        {
            foreach (var spot in Flattening.Flatten(outline, setting.Space, tolerance).SelectMany(p => p.Points))
            {
                (left, right) = (Math.Min(left, spot.X), Math.Max(right, spot.X));
                (top, bottom) = (Math.Min(top, spot.Y), Math.Max(bottom, spot.Y));
            }
        }
    }
}
