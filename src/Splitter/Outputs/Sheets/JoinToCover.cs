using System.Collections.Immutable;
using Splitter.Artwork;
using Splitter.Geometry;
using Splitter.Planning;
using Splitter.Planning.Fit;
using Splitter.Planning.Seams;
using Splitter.Recipes;

namespace Splitter.Outputs.Sheets;

/// <summary>A place where a join may show, and the ground of a motif that hides it.</summary>
/// <param name="Misfit">By how much the parts may miss each other there, µm, 19 times in 20.</param>
/// <param name="Shows">That misfit as a multiple of what people notice there.</param>
internal sealed record JoinToCover(int Earlier, int Later, Box Motif, int Misfit, double Shows)
{
    /// <summary>
    /// A misfit that people notice, µm: in satin and lines, and between fills that stand out from the cloth. Common
    /// practice, no source.
    /// </summary>
    private const double NoticedInLines = 500,
        NoticedInFills = 1000;

    /// <summary>
    /// Contrast with the cloth from which on a gap in a fill shows fully: text needs as much to be read.
    /// </summary>
    private const double FullContrast = 4.5;

    /// <summary>A motif reaches this far past what it hides, µm, to be sewn down. Common practice, no source.</summary>
    private const int Margin = 2 * Units.Millimetre;

    /// <summary>A larger piece is no motif any more, µm. Common practice, no source.</summary>
    private const int Largest = 40 * Units.Millimetre;

    /// <summary>More places than this nobody covers.</summary>
    private const int Most = 8;

    /// <summary>
    /// Where people are likely to notice a misfit, the worst first; those that one motif hides are one place.
    /// </summary>
    internal static ImmutableArray<JoinToCover> Of(Recipe recipe, Drawing drawing, Plan plan)
    {
        var fit = new PredictedFit(recipe, plan.Hoopings.Length, plan.Corners);
        var places = new List<JoinToCover>();
        var found = SeamStretches
            .Of(drawing, plan)
            .Where(stretch => stretch.Ground is SeamGround.Fill or SeamGround.LineWork)
            .SelectMany(stretch => Places(recipe, drawing, plan, fit, stretch))
            .Where(place => place.Shows >= 1)
            .OrderByDescending(place => place.Shows)
            .ThenBy(place => place.Motif.Centre);
        foreach (var place in found)
        {
            var i = places.FindIndex(p => p.Takes(place));
            if (i >= 0)
                places[i] = places[i] with { Motif = places[i].Motif.Joined(place.Motif) };
            else
                places.Add(place);
        }
        return [.. places.Take(Most)];
    }

    private bool Takes(JoinToCover other)
    {
        var both = Motif.Joined(other.Motif);
        return (Earlier, Later) == (other.Earlier, other.Later) && Math.Max(both.Width, both.Height) <= Largest;
    }

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
        for (var i = 1; i < points.Length; i++)
        {
            var misfit = Told(fit, join, points[i - 1], points[i]);
            var around = misfit + join.Overlap + Margin;
            yield return new(
                earlier,
                later,
                Box.Around([points[i - 1], points[i]]).Grown(around),
                misfit,
                stretch.Ground == SeamGround.LineWork
                    ? misfit / NoticedInLines
                    : misfit / NoticedInFills * Share(recipe, drawing, stretch.Over!)
            );
        }
    }

    /// <summary>As the plan tells it of the whole join, whose worst place it is not worse than.</summary>
    private static int Told(PredictedFit fit, PartJoin join, Point from, Point to) =>
        Math.Min(
            join.AlongSeam,
            JoinFit.Misfit(
                new[] { from, from.Towards(to, 0.5), to }.Max(at => fit.Within95(join.Earlier, join.Later, at))
            )
        );

    private static double Share(Recipe recipe, Drawing drawing, Shape fill) =>
        Math.Min(1, Contrast.Of(drawing.Threads[fill.Thread].Color, recipe.Cloth.Color) / FullContrast);
}
