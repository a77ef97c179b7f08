using System.Collections.Immutable;
using Splitter.Artwork;
using Splitter.Geometry;
using Splitter.Planning;
using Splitter.Planning.Fit;
using Splitter.Planning.Seams;
using Splitter.Recipes;

namespace Splitter.Outputs.Sheets;

/// <summary>A place where a join may show, and the ground of a motif that hides it.</summary>
/// <param name="Parts">Indexes of the hoopings that meet there, in order.</param>
/// <param name="Over">The shape that is divided there.</param>
/// <param name="Misfit">By how much the parts may miss each other there, µm, 19 times in 20.</param>
/// <param name="Shows">That misfit as a multiple of what people notice there.</param>
internal sealed record JoinToCover(ImmutableArray<int> Parts, Shape Over, Box Motif, int Misfit, double Shows)
{
    /// <summary>
    /// Contrast with the cloth from which on a gap in a fill shows fully: text needs as much to be read.
    /// </summary>
    private const double FullContrast = 4.5;

    /// <summary>A motif reaches this far past what it hides, µm, to be sewn down. Common practice, no source.</summary>
    private const int Margin = 2 * Units.Millimetre;

    /// <summary>A larger piece is no motif any more, µm. Common practice, no source.</summary>
    private const int Largest = 40 * Units.Millimetre;

    /// <summary>More places than this nobody covers.</summary>
    internal const int Most = 8;

    /// <summary>
    /// Where people are likely to notice a misfit, along seams and where several meet, the worst first; those that one
    /// motif hides are one place. The plan's worst place is among them, if it shows.
    /// </summary>
    internal static ImmutableArray<JoinToCover> Of(Recipe recipe, ShownGround ground)
    {
        var (drawing, plan) = (ground.Drawing, ground.Plan);
        var fit = new PredictedFit(recipe, plan.Hoopings.Length, plan.Corners);
        var stretches = ground
            .Seams.Where(stretch => stretch.Ground is SeamGround.Fill or SeamGround.LineWork)
            .ToList();
        var places = new List<JoinToCover>();
        var found = stretches
            .SelectMany(stretch => Places(recipe, drawing, plan, fit, stretch))
            .Concat(AtJunctions(recipe, drawing, plan, stretches))
            .Where(place => place.Shows >= 1)
            .OrderByDescending(place => place.Shows)
            .ThenBy(place => place.Motif.Centre);
        foreach (var place in found)
        {
            var i = places.FindIndex(p => p.Takes(place));
            if (i >= 0)
                places[i] = places[i].With(place);
            else
                places.Add(place);
        }
        var worst = Worst(plan) is { } join ? places.FindIndex(p => p.Hides(join)) : -1;
        return worst < Most ? [.. places.Take(Most)] : [.. places.Take(Most - 1), places[worst]];
    }

    /// <summary>The join with the largest figure of the overview; null without joins.</summary>
    internal static PartJoin? Worst(Plan plan) => plan.Joins.MaxBy(join => join.Within95);

    /// <summary>The weakest place of a join is here.</summary>
    internal bool Hides(PartJoin join) =>
        Parts.Contains(join.Earlier) && Parts.Contains(join.Later) && Motif.Contains(join.Weakest);

    private bool Takes(JoinToCover other)
    {
        var both = Motif.Joined(other.Motif);
        return (Parts.All(other.Parts.Contains) || other.Parts.All(Parts.Contains))
            && Math.Max(both.Width, both.Height) <= Largest;
    }

    private JoinToCover With(JoinToCover other) =>
        this with
        {
            Parts = other.Parts.Length > Parts.Length ? other.Parts : Parts,
            Motif = Motif.Joined(other.Motif),
            Misfit = Math.Max(Misfit, other.Misfit),
        };

    /// <summary>A long stretch shows all along: it is looked at from vertex to vertex.</summary>
    private static IEnumerable<JoinToCover> Places(
        Recipe recipe,
        Drawing drawing,
        Plan plan,
        PredictedFit fit,
        SeamStretch stretch
    )
    {
        var (earlier, later) = (stretch.Seam.Earlier, stretch.Seam.Later);
        var join = plan.Joins.First(j => (j.Earlier, j.Later) == (earlier, later));
        var points = stretch.Line.Points;
        var atPoints = points.Select(Within95).ToList();
        for (var i = 1; i < points.Length; i++)
        {
            var middle = Within95(points[i - 1].Towards(points[i], 0.5));
            // As the plan tells it of the whole join, whose worst place it is not worse than.
            var misfit = Math.Min(
                join.AlongSeam,
                JoinFit.Misfit(Math.Max(middle, Math.Max(atPoints[i - 1], atPoints[i])))
            );
            yield return new(
                [earlier, later],
                stretch.Over!,
                Box.Around([points[i - 1], points[i]]).Grown(misfit + join.Overlap + Margin),
                misfit,
                ShowsIn(recipe, drawing, stretch, misfit)
            );
        }

        double Within95(Point at) => fit.Within95(earlier, later, at);
    }

    /// <summary>
    /// Where three parts or more meet, the hole between them may be wider than any two of them miss each other: on the
    /// ground of those seams that shows it most.
    /// </summary>
    private static IEnumerable<JoinToCover> AtJunctions(
        Recipe recipe,
        Drawing drawing,
        Plan plan,
        List<SeamStretch> stretches
    ) =>
        from joins in plan.Joins.Where(j => j.Junction is not null).GroupBy(j => j.Junction!.At)
        let junction = joins.First().Junction!
        let overlap = joins.Max(j => j.Overlap)
        from stretch in stretches
        where EndsAt(stretch.Line, junction.At)
        select new JoinToCover(
            junction.Parts,
            stretch.Over!,
            Box.Around([junction.At]).Grown(junction.Misfit + overlap + Margin),
            junction.Misfit,
            ShowsIn(recipe, drawing, stretch, junction.Misfit)
        );

    /// <summary>A stretch is clipped to whole micrometres: ends are the same within a step of the tape.</summary>
    private static bool EndsAt(Polyline line, Point at) =>
        Math.Min(line.Points[0].DistanceTo(at), line.Points[^1].DistanceTo(at)) < Units.TapeStep;

    private static double ShowsIn(Recipe recipe, Drawing drawing, SeamStretch stretch, int misfit) =>
        stretch.Ground == SeamGround.LineWork
            ? misfit / (double)Noticed.InLines
            : misfit / (double)Noticed.InFills * Share(recipe, drawing, stretch.Over!);

    private static double Share(Recipe recipe, Drawing drawing, Shape fill) =>
        Math.Min(1, Contrast.Of(drawing.Threads[fill.Thread].Color, recipe.Cloth.Color) / FullContrast);
}
