using System.Collections.Immutable;
using Splitter.Geometry;

namespace Splitter.Artwork.Columns;

/// <summary>Satin columns for a narrow filled outline: letters, stars, bands, rings.</summary>
internal static class OutlineColumns
{
    /// <summary>Outline detail below this is dropped first, µm: a tenth of a tape step.</summary>
    private const double Detail = 10;

    /// <summary>The least of the ground that columns must cover; below it rows serve better.</summary>
    internal const double LeastCovered = 0.97;

    /// <summary>The most that columns may cover beside the ground, as a share of it.</summary>
    internal const double MostOutside = 0.02;

    /// <summary>
    /// Points of the outline are this share of the mean half width apart, but not outside the two bounds, µm. Closer
    /// ones only cost time.
    /// </summary>
    private const double SamplingShare = 0.25;

    private const double LeastSampling = 60;
    private const double LargestSampling = 500;

    /// <summary>
    /// Points of an outline at most: 12 m of the finest. A thicket of spikes has more; its triangles would take minutes
    /// and gigabytes.
    /// </summary>
    private const double MostPoints = 200_000;

    /// <summary>
    /// How far a spur must reach to be a column of its own, in radii of the disc at its root; tried in this order until
    /// the columns cover the ground. The first leaves corners out (a right angle has 1.41).
    /// </summary>
    private static readonly ImmutableArray<double> Reaches = [1.75, 1.3, 2.4];

    /// <summary>
    /// Columns that cover the ground, or none when it is wider than a bound somewhere or columns would not fit it.
    /// </summary>
    /// <param name="widest">Largest diameter of a disc inside the ground, µm.</param>
    internal static ImmutableArray<Column> From(Region ground, int widest)
    {
        // No disc of a diameter fits only where the outline is everywhere within its radius: a quick no for large
        // fills. A plainer outline is no longer, and takes at most so much ground away as its detail is deep.
        if (ground.Area > Perimeter(ground) * ((widest / 2.0) + Detail))
            return [];
        var outline = Polygons.Simplify(ground, Detail);
        if (outline.IsEmpty || outline.Area > Perimeter(outline) * widest / 2)
            return [];
        var columns = ImmutableArray.CreateBuilder<Column>();
        foreach (var polygon in outline.Polygons)
        {
            var piece = Columns(new Region([polygon]), widest);
            if (piece.IsEmpty)
                return [];
            columns.AddRange(piece);
        }
        return columns.ToImmutable();
    }

    private static double Perimeter(Region ground) => ground.Rings.Sum(r => r.ToPolyline().Length);

    private static ImmutableArray<Column> Columns(Region ground, int widest)
    {
        var perimeter = Perimeter(ground);
        var step = Math.Clamp(SamplingShare * ground.Area / perimeter, LeastSampling, LargestSampling);
        if (perimeter / step > MostPoints)
            return [];
        var triangles = InnerTriangles.Of(ground, step);
        // Discs through points bulge out between them: by Pythagoras, at most to this diameter (1 um for the grid).
        var apart = step + 1;
        if (
            triangles.Count == 0
            || new Skeleton(triangles).Widest > Math.Sqrt(((double)widest * widest) + (apart * apart))
        )
            return [];
        return Reaches
            .Select(reach => Columns(ground, triangles, reach))
            .FirstOrDefault(columns => Fits(columns, ground), []);
    }

    private static ImmutableArray<Column> Columns(Region ground, InnerTriangles triangles, double reach)
    {
        var skeleton = new Skeleton(triangles);
        skeleton.Prune(reach);
        var junctions = new Junctions(triangles, skeleton);
        var branches = new SharpBends(triangles).Cut(junctions.Branches(), junctions.NextJoint);
        var runs = new ColumnJoining(triangles).Join(branches);
        return new ColumnBuilder(triangles, new CrossLines(ground)).Build(runs, junctions.Centre);
    }

    /// <summary>Measured by area: what the columns' quadrilaterals cover of the ground, and beside it.</summary>
    private static bool Fits(ImmutableArray<Column> columns, Region ground)
    {
        var sewn = Ground(columns);
        var covered = Polygons.Intersect(sewn, ground).Area;
        return covered >= LeastCovered * ground.Area && sewn.Area - covered <= MostOutside * ground.Area;
    }

    /// <summary>
    /// The ground between the rungs of columns. A column's outline winds round a point as often as the column passes
    /// over it, so the non-zero rule gives the union of its quadrilaterals in one go.
    /// </summary>
    internal static Region Ground(ImmutableArray<Column> columns) =>
        Polygons.Union(columns.Select(c => Polygons.FromRings(Outline(c.Rungs), FillRule.NonZero)));

    private static IEnumerable<Ring> Outline(ImmutableArray<Rung> rungs)
    {
        var (left, right) = (rungs.Select(r => r.Left), rungs.Select(r => r.Right).Reverse());
        return rungs[0] == rungs[^1] ? [Distinct(left), Distinct(right)] : [Distinct(left.Concat(right))];
    }

    /// <summary>Without points that only repeat the one before.</summary>
    private static Ring Distinct(IEnumerable<Point> points)
    {
        var kept = ImmutableArray.CreateBuilder<Point>();
        foreach (var point in points)
            if (kept.Count == 0 || kept[^1] != point)
                kept.Add(point);
        if (kept.Count > 1 && kept[^1] == kept[0])
            kept.RemoveAt(kept.Count - 1);
        return new(kept.ToImmutable());
    }
}
