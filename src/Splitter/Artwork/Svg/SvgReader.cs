using System.Xml.Linq;
using Splitter.Artwork.Svg.Css;
using Splitter.Diagnostics;
using Splitter.Geometry;

namespace Splitter.Artwork.Svg;

/// <summary>An SVG drawing to what it paints, at its finished size.</summary>
internal static class SvgReader
{
    /// <summary>The smallest side, mm: a tape's step.</summary>
    private const double LeastSide = 0.1;

    /// <summary>The largest side, mm: wider than any cloth.</summary>
    private const int MostSide = 20_000;

    /// <param name="width">Finished width in µm; null for the size that the drawing states.</param>
    internal static Result<Sheet> Read(SourceFile source, int? width) =>
        from document in SvgLoader.Load(source)
        from sheet in Read(document, width)
        select sheet;

    private static Result<Sheet> Read(SvgDocument document, int? width)
    {
        var remarks = new Remarks(document);
        var cascade = new Cascade(StyleSheets.Read(document, remarks));
        var references = new References(document, remarks);
        var walk = new Walk(cascade, references, remarks);
        var root = document.Root;
        var drawn = walk.TryViewBox(root, out var viewBox);
        if (Size(root, cascade.Of(root), viewBox, remarks) is not { } size)
        {
            remarks.Add(root, (place, _) => ArtworkProblems.NoSize(place));
            return Finish(new(0, 0, []), remarks);
        }
        var scale = width is { } wanted ? wanted / size.X : Lengths.Pixel;
        var finished = scale * size;
        if (!(Fits(finished.X) && Fits(finished.Y)))
        {
            remarks.Add(
                root,
                (place, _) =>
                    ArtworkProblems.BadSize(
                        place,
                        finished.X / Units.Millimetre,
                        finished.Y / Units.Millimetre,
                        MostSide
                    )
            );
            return Finish(new(0, 0, []), remarks);
        }
        var corner = Snapping.Snap(finished);
        var painter = new Painter(document, new(cascade, references, remarks), new(0, 0, corner.X, corner.Y), remarks);
        if (drawn)
        {
            var aspect = (string?)root.Attribute("preserveAspectRatio");
            var setting = new Setting
            {
                Space = Matrix.Scale(scale, scale) * Viewports.Place(new(0, 0, size.X, size.Y), viewBox, aspect),
                Viewport = viewBox is { } box ? new(box.Width, box.Height) : size,
            };
            walk.VisitRoot(root, setting, painter);
        }
        if (painter.Elements.IsEmpty)
            remarks.Add(root, (place, _) => ArtworkProblems.Nothing(place));
        var statesUnit = StatesUnit(cascade.Of(root));
        var sheet = new Sheet(corner.X, corner.Y, painter.Elements)
        {
            StatesUnit = statesUnit,
            StatedWidth = statesUnit ? Snapping.Snap(Lengths.Pixel * size).X : null,
        };
        return Finish(sheet, remarks);
    }

    /// <summary>
    /// Width and height in CSS pixels. A side that is not stated, or is a share of a page that is not there, follows
    /// from the view box.
    /// </summary>
    private static Spot? Size(XElement root, Declarations own, Frame? viewBox, Remarks remarks)
    {
        var length = new ElementLengths(root, own, new(double.NaN, double.NaN), remarks);
        var (width, height) = (Side("width"), Side("height"));
        var box = viewBox is { HasArea: true } ? viewBox : null;
        return (width, height, box) switch
        {
            ({ } w, { } h, _) => new(w, h),
            ({ } w, null, { } b) => new(w, w * b.Height / b.Width),
            (null, { } h, { } b) => new(h * b.Width / b.Height, h),
            (null, null, { } b) => new(b.Width, b.Height),
            _ => null,
        };

        double? Side(string property) =>
            own[property] is { } text && !text.EndsWith('%') ? length.NotNegative(property, double.NaN) : null;
    }

    private static bool StatesUnit(Declarations own) =>
        new[] { own["width"], own["height"] }.Any(side => side is not null && char.IsAsciiLetter(side.TrimEnd()[^1]));

    private static bool Fits(double micrometres) =>
        micrometres >= LeastSide * Units.Millimetre && micrometres <= (double)MostSide * Units.Millimetre;

    private static Result<Sheet> Finish(Sheet sheet, Remarks remarks) =>
        Result.From(sheet, ArtworkProblems.Foremost(remarks.All));
}
