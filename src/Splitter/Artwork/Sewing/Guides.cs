using System.Collections.Immutable;
using NetTopologySuite.Geometries;
using Splitter.Artwork.Inline;
using Splitter.Diagnostics;
using Splitter.Geometry;
using Splitter.Recipes;
using Point = Splitter.Geometry.Point;

namespace Splitter.Artwork.Sewing;

/// <summary>The lines that the rules of a recipe have fill rows follow.</summary>
internal sealed class Guides
{
    /// <summary>A shorter guide is a point rather than a direction, µm: hardly longer than one stitch.</summary>
    private const int Shortest = 5 * Units.Millimetre;

    /// <summary>
    /// Rows bend no tighter along the guide than with this radius, µm: less than a short stitch turns by itself.
    /// </summary>
    private const int Tightest = Units.Millimetre;

    /// <summary>
    /// Stitches inside a bend come as close to each other as this share of their distance on the guide: nearer, holes
    /// tear the cloth, and soon rows cross.
    /// </summary>
    private const double Closest = 0.5;

    /// <summary>
    /// Two places of the outline, in the frame, lie no further apart than this much of their distance on the drawing;
    /// where they do, rows from two sides of a bend meet between them. What <see cref="Closest"/> allows, and a margin.
    /// </summary>
    private const double Torn = 1.25 / Closest;

    private readonly Recipe recipe;
    private readonly Sheet sheet;
    private readonly List<Diagnostic> problems;
    private readonly Dictionary<string, Guide> guides = new(StringComparer.Ordinal);

    /// <summary>Reads all guides of the recipe, whatever will be sewn along them.</summary>
    internal Guides(Recipe recipe, Sheet sheet, List<Diagnostic> problems)
    {
        (this.recipe, this.sheet, this.problems) = (recipe, sheet, problems);
        foreach (var rule in recipe.Artwork.Sew)
            if (
                rule.Guide is { } text
                && Line(text, PlaceOf(rule)) is { } line
                && Read(line, PlaceOf(rule)) is { } guide
            )
                guides.Add(rule.Path, guide);
    }

    /// <summary>
    /// The guide of a fill's rows; null when they are straight. Says where the ground lies too far inside a bend.
    /// </summary>
    internal Guide? For(SewRule? rule, string shape, Region ground)
    {
        if (rule is null || !guides.TryGetValue(rule.Path, out var guide))
            return null;
        if (Crowded(guide, ground) is { } at)
            problems.Add(GuideProblems.Crowded(PlaceOf(rule), shape, at));
        return guide;
    }

    private Place PlaceOf(SewRule rule) => recipe.PlaceOf($"{rule.Path}.guide");

    /// <summary>A shape's id, or text that has brackets.</summary>
    private Polyline? Line(string text, Place place)
    {
        if (text.Contains('(', StringComparison.Ordinal))
            return Written(text, place);
        var elements = sheet.Elements.Where(e => e.Ids.Contains(text, StringComparer.Ordinal)).ToList();
        ImmutableArray<Polyline> lines = [.. elements.OfType<DrawnLine>().SelectMany(l => l.Paths)];
        if (elements.Count == 0)
            problems.Add(GuideProblems.Unknown(place, text));
        else if (lines.IsEmpty)
            problems.Add(GuideProblems.NotALine(place, text, "an area"));
        else
            return Single(lines, text, place);
        return null;
    }

    private Polyline? Written(string text, Place place)
    {
        var (geometry, fault) = WellKnownText.Read(text);
        if (geometry is null)
            problems.Add(GuideProblems.NotWkt(place, fault));
        else if (!PlaneGeometry.IsWithinReach(geometry))
            problems.Add(DrawingProblems.TooFar(place, "guide", PlaneGeometry.Reach / Units.Millimetre / 1000));
        else if (geometry is not LineString)
            problems.Add(GuideProblems.NotALine(place, "guide", "no LINESTRING"));
        else
            return Single(PlaneGeometry.Paths(geometry, Point.FromMillimetres), "guide", place);
        return null;
    }

    private Polyline? Single(ImmutableArray<Polyline> lines, string name, Place place)
    {
        if (lines is [{ IsClosed: false } line])
            return line;
        var what =
            lines.IsEmpty ? "a point"
            : lines.Length == 1 ? "closed"
            : FormattableString.Invariant($"{lines.Length} lines");
        problems.Add(GuideProblems.NotALine(place, name, what));
        return null;
    }

    private Guide? Read(Polyline drawn, Place place)
    {
        if (drawn.Length < Shortest)
        {
            problems.Add(GuideProblems.TooShort(place, drawn.Length, Shortest));
            return null;
        }
        var rounded = new RoundedLine(drawn);
        if (Crossing(rounded.Corners) is { } crossing)
            problems.Add(GuideProblems.CrossesItself(place, crossing));
        else if (rounded.Tightest is var (radius, at) && radius < Tightest)
            problems.Add(GuideProblems.TooTight(place, at.From(default), radius, Tightest));
        else
            return new(rounded);
        return null;
    }

    /// <summary>Where a line first meets itself.</summary>
    private static Point? Crossing(ImmutableArray<Vector> line)
    {
        ImmutableArray<Point> points = [.. line.Select(p => p.From(default))];
        for (var i = 1; i < points.Length; i++)
        for (var j = 1; j < i - 1; j++)
            if (Polygons.Distance(points[j - 1], points[j], points[i - 1], points[i]) == 0)
                return Meeting(line[j - 1], line[j], line[i - 1], line[i]).From(default);
        return null;
    }

    /// <summary>
    /// The point that two crossing stretches share; of those that lie on each other the end of the first.
    /// </summary>
    private static Vector Meeting(Vector a, Vector b, Vector c, Vector d)
    {
        var turn = Vector.Cross(b - a, d - c);
        return turn == 0 ? b : a + ((b - a) * (Vector.Cross(c - a, d - c) / turn));
    }

    /// <summary>
    /// The place of the outline where rows lie closest, if that is too close, or where they meet from two sides. Along
    /// a rib rows are closest at its ends, and the outline goes through both.
    /// </summary>
    private static Point? Crowded(Guide guide, Region ground)
    {
        var (worst, least) = (default(Vector), double.PositiveInfinity);
        foreach (var ring in ground.Rings)
        {
            ImmutableArray<(double U, double V)> places = [.. guide.Of(ring)];
            for (var i = 0; i < places.Length; i++)
            {
                var (place, before) = (places[i], places[(i > 0 ? i : places.Length) - 1]);
                var (at, from) = (guide.At(place.U, place.V), guide.At(before.U, before.V));
                if (new Vector(place.U - before.U, place.V - before.V).Length > Torn * (at - from).Length + 1)
                    return at.From(default);
                if (guide.Stretch(place.U, place.V) is var stretch && stretch < least)
                    (worst, least) = (at, stretch);
            }
        }
        return least < Closest ? worst.From(default) : null;
    }
}
