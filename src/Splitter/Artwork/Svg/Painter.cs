using System.Collections.Immutable;
using System.Xml.Linq;
using Splitter.Artwork.Svg.Paths;
using Splitter.Diagnostics;
using Splitter.Geometry;

namespace Splitter.Artwork.Svg;

/// <summary>
/// Shapes to drawn elements: the fill as an area, the stroke as a line, or as an area where it is uneven.
/// </summary>
internal sealed class Painter(SvgDocument document, Paints paints, Box sheet, Remarks remarks) : IReceiver
{
    /// <summary>
    /// A stroke whose width varies by less than this share counts as even: 4 µm on a width of 4 mm. Smaller would turn
    /// lines into areas over the rounding of a rotation; larger would show.
    /// </summary>
    private const double Evenness = 1e-3;

    private readonly ImmutableArray<DrawnElement>.Builder elements = ImmutableArray.CreateBuilder<DrawnElement>();

    internal ImmutableArray<DrawnElement> Elements => elements.ToImmutable();

    public bool Paints => true;

    public bool Clips => true;

    public bool Groups => true;

    public void Draw(XElement element, Outline outline, Setting setting)
    {
        var look = setting.Look;
        if (!look.Visible || outline.Subpaths.Count == 0)
            return;
        if (look.Marked && element.Name.LocalName is "path" or "line" or "polyline" or "polygon" && look.Marked)
            remarks.Add(element, (place, what) => ArtworkProblems.Effect(place, what, "markers"));
        var fill = paints.Of(element, look.Fill, look.FillOpacity, look);
        var stroke = look.StrokeWidth > 0 ? paints.Of(element, look.Stroke, look.StrokeOpacity, look) : null;
        if (fill is null && stroke is null)
            return;
        var paths = Flattening.Flatten(outline, setting.Space, Flattening.Tolerance);
        remarks.CountPoints(element, paths.Sum(p => p.Points.Count));
        if (remarks.Stopped)
            return;
        if (!setting.Space.IsFinite || !Snapping.Reaches(paths))
        {
            RemarkTooFar(element);
            return;
        }
        if (Flattening.IsTangled(paths))
        {
            remarks.Add(element, ArtworkProblems.TooTangled);
            return;
        }
        var before = elements.Count;
        if (fill is not null)
            AddArea(Snapping.Ground(paths, look.FillRule), fill, element, setting);
        if (stroke is not null)
            AddStroke(outline, paths, stroke, element, setting);
        if (elements.Count > before && !elements.Skip(before).Any(e => Extent(e).Meets(sheet)))
            remarks.Add(element, ArtworkProblems.OutsideSheet);
    }

    private void AddArea(Region ground, string colour, XElement element, Setting setting)
    {
        if (setting.Clip is { } clip)
            ground = Polygons.Intersect(ground, clip);
        if (ground.IsEmpty)
            return;
        elements.Add(
            new DrawnArea
            {
                Id = Id(element, setting),
                Ids = setting.Ids,
                Classes = setting.Classes,
                Place = PlaceOf(element, setting),
                Color = colour,
                Ground = ground,
            }
        );
    }

    private void AddStroke(Outline outline, List<FlatPath> paths, string colour, XElement element, Setting setting)
    {
        var look = setting.Look;
        var (most, least) = setting.Space.Stretch;
        var width = look.StrokeWidth * most;
        if (least == 0)
            return;
        if (width > Snapping.Reach)
        {
            RemarkTooFar(element);
            return;
        }
        if (most - least > Evenness * most)
        {
            AddArea(Uneven(outline, element, setting, most), colour, element, setting);
            return;
        }
        var lines = Snapping.Lines(Dashed(paths, most, element, look), look.Cap);
        if (lines.IsEmpty)
            return;
        var line = new DrawnLine
        {
            Id = Id(element, setting),
            Ids = setting.Ids,
            Classes = setting.Classes,
            Place = PlaceOf(element, setting),
            Color = colour,
            Paths = lines,
            Width = Math.Max(1, (int)Math.Round(width, MidpointRounding.AwayFromZero)),
            Cap = look.Cap,
            Join = look.Join,
            MitreLimit = Limit(width, look),
        };
        if (setting.Clip is not { } clip || (Polygons.IsBox(clip) && clip.Bounds.Contains(Extent(line))))
            elements.Add(line);
        else
        {
            var footprint = Footprint(line.Paths, line.Width, look);
            if (Polygons.Subtract(footprint, clip).IsEmpty)
                elements.Add(line);
            else if (!Polygons.Intersect(footprint, clip).IsEmpty)
                elements.Add(line with { Clip = clip });
        }
    }

    /// <summary>
    /// The outline of a stroke that its transform stretches unevenly: drawn in user space, enlarged so that a
    /// micrometre there is at most one on the sheet, then transformed.
    /// </summary>
    private Region Uneven(Outline outline, XElement element, Setting setting, double scale)
    {
        var look = setting.Look;
        var paths = Dashed(
            Flattening.Flatten(outline, Matrix.Scale(scale, scale), Flattening.Tolerance),
            scale,
            element,
            look
        );
        if (!Snapping.Reaches(paths))
        {
            RemarkTooFar(element);
            return Region.Empty;
        }
        var drawn = Footprint(Snapping.Lines(paths, look.Cap), look.StrokeWidth * scale, look);
        var onSheet = setting.Space * Matrix.Scale(1 / scale, 1 / scale);
        return Snapping.Ground(
            [
                .. drawn.Rings.Select(r => new FlatPath(
                    [.. r.Points.Select(p => onSheet.Apply(new(p.X, p.Y)))],
                    Closed: true
                )),
            ],
            FillRule.NonZero
        );
    }

    private List<FlatPath> Dashed(List<FlatPath> paths, double scale, XElement element, Look look)
    {
        if (look.Dashes.IsEmpty)
            return paths;
        var dashes = Dashes.Cut(paths, [.. look.Dashes.Select(d => d * scale)], look.DashOffset * scale);
        if (dashes is null)
            remarks.Add(element, ArtworkProblems.TooManyDashes);
        return dashes ?? paths;
    }

    private void RemarkTooFar(XElement element) =>
        remarks.Add(element, (place, what) => ArtworkProblems.TooFar(place, what, (int)(Snapping.Reach / 1e6)));

    private static Region Footprint(ImmutableArray<Polyline> lines, double width, Look look) =>
        Polygons.Union(lines.Select(l => Polygons.Stroke(l, width, look.Cap, look.Join, Limit(width, look))));

    private static Box Extent(DrawnElement element) =>
        element switch
        {
            DrawnArea area => area.Ground.Bounds,
            DrawnLine { Clip: { } clip } line => Box.Around(line.Paths.Select(p => p.Bounds))
                .Grown(Margin(line))
                .Common(clip.Bounds),
            DrawnLine line => Box.Around(line.Paths.Select(p => p.Bounds)).Grown(Margin(line)),
            _ => Box.Empty,
        };

    /// <summary>No mitre is so long that its tip could be further away than whole micrometres reach.</summary>
    private static double Limit(double width, Look look) =>
        Math.Min(look.MitreLimit, Snapping.Reach / Math.Max(1, width / 2));

    /// <summary>How far a line's ground may reach past its path: the longest mitre, or a square cap's corner.</summary>
    private static int Margin(DrawnLine line) =>
        (int)
            Math.Min(
                Snapping.Reach,
                line.Width / 2.0 * (line.Join == Join.Mitre ? Math.Max(line.MitreLimit, 1.5) : 1.5)
            );

    private static string? Id(XElement element, Setting setting) =>
        (string?)setting.User?.Attribute("id") ?? (string?)element.Attribute("id");

    private Place PlaceOf(XElement element, Setting setting) => document.PlaceOf(setting.User ?? element);
}
