using System.Collections.Immutable;
using Splitter.Artwork;
using Splitter.Diagnostics;
using Splitter.Geometry;
using Splitter.Planning.Drafting;
using Splitter.Planning.Fields;
using Splitter.Planning.Fit;
using Splitter.Planning.Marks;
using Splitter.Recipes;
using static System.FormattableString;

namespace Splitter.Planning.Remedies;

/// <summary>
/// For each join whose misfit its overlap does not cover, the first change that would make it so, tried in the order of
/// what it costs at the machine: a wider overlap, more corners, another first field, a larger hoop. Every figure is
/// planned, not guessed; a trial is made once for all joins, and only when a join needs it.
/// </summary>
internal sealed class JoinRemedies
{
    /// <summary>Up to so many corners are tried, or one more than the recipe has: each is a tack more at every hooping.</summary>
    private const int MostCorners = 4;

    /// <summary>No recipe asks for more corners than this.</summary>
    private const int CornerLimit = 6;

    /// <summary>Other first fields that are tried: each takes a whole plan.</summary>
    private const int MostFirsts = 2;

    /// <summary>Widths that are tried are this much wider than the misfits ask for.</summary>
    private const double Spare = 1.1;

    /// <summary>Widths are tried in whole steps of this, µm.</summary>
    private const int WidthStep = 100;

    private readonly Drafts drafts;
    private readonly Recipe recipe;
    private readonly Drawing drawing;
    private readonly PlanDraft draft;
    private readonly ImmutableArray<(string Change, string Key, Lazy<Func<PartJoin, (double, double)?>> Trial)> trials;

    private JoinRemedies(Drafts drafts, PlanDraft draft)
    {
        (this.drafts, recipe, drawing, this.draft) = (drafts, drafts.Recipe, drafts.Drawing, draft);
        trials = [.. All().Select(t => (t.Change, t.Key, new Lazy<Func<PartJoin, (double, double)?>>(t.Trial)))];
    }

    internal static ImmutableArray<Diagnostic> Warnings(Drafts drafts, PlanDraft draft)
    {
        var exceeding = draft.Joins.Where(join => !join.IsCovered).ToList();
        if (exceeding.Count == 0)
            return [];
        var remedies = new JoinRemedies(drafts, draft);
        return
        [
            .. exceeding.Select(join =>
                PlanProblems.FitExceedsOverlap(
                    drafts.Recipe.PlaceOf(remedies.Advice(join).Key, "overlap.width", "registration"),
                    (Letters.Of(join.Earlier), Letters.Of(join.Later)),
                    (join.Within95, join.Covers),
                    remedies.Advice(join).Text,
                    draft.Hoop
                )
            ),
        ];
    }

    /// <summary>What to do, and the key to change.</summary>
    private (string Text, string Key) Advice(PartJoin join)
    {
        var tried = new List<Outcome>();
        foreach (var (change, key, trial) in trials)
        {
            if (trial.Value(join) is not var (misfit, covered))
                continue;
            var outcome = new Outcome(change, misfit, covered);
            if (outcome.Helps)
                return (
                    outcome.Misfit == 0
                        ? $"{change}: planned so, no part is cut where it meets another"
                        : $"{change}: planned so, they may miss by {outcome.Figures} of overlap",
                    key
                );
            tried.Add(outcome);
        }
        const string Else =
            "set corners more closely than 'registration.accuracy' says, or hide the join under a motif";
        var none = tried.MinBy(outcome => outcome.Ratio) is { } best
            ? Invariant(
                $"of {tried.Count} changes that were planned none covers it, best is '{best.Change}' with {best.Figures} of overlap; {Else}"
            )
            : $"the recipe leaves nothing else to change; {Else}";
        return (none, "overlap.width");
    }

    /// <summary>What can be changed, the cheapest first. A trial says how a join does then, or null when it cannot be planned.</summary>
    private IEnumerable<(string Change, string Key, Func<Func<PartJoin, (double, double)?>> Trial)> All()
    {
        if (recipe.Overlap.Width is not null)
            yield return (
                "write 'overlap.width: auto'",
                "overlap.width",
                () => Same(With(recipe with { Overlap = recipe.Overlap with { Width = null } }, draft.Corners))
            );
        else
        {
            // Seams that know of a wider overlap keep further away from the edges of fields.
            var changed = recipe with
            {
                Overlap = recipe.Overlap with { Width = Wider() },
            };
            yield return (
                Invariant($"write 'overlap.width: {Mm(Wider())} mm'"),
                "overlap.width",
                () => Whole(Drafter.Draft(changed, drawing, draft.Hoop))
            );
        }
        var count = recipe.Registration.CornerCount;
        for (var more = count + 1; more <= Math.Min(CornerLimit, Math.Max(MostCorners, count + 1)); more++)
        {
            var changed = recipe with { Registration = recipe.Registration with { CornerCount = more } };
            yield return (
                Invariant($"write 'registration.corners.count: {more}'"),
                "registration.corners.count",
                () => Same(Cornered(changed))
            );
        }
        foreach (var first in Firsts())
        {
            var changed = recipe with { Fields = recipe.Fields with { First = first } };
            yield return (
                Invariant($"write 'fields.first: [{Mm(first.X)} mm, {Mm(first.Y)} mm]'"),
                "fields.first",
                () => Whole(Drafter.Draft(changed, drawing, draft.Hoop))
            );
        }
        foreach (var hoop in Larger())
            yield return ($"take hoop {hoop.Name}", "hoops", () => Whole(drafts.Of(hoop)));
    }

    /// <summary>An overlap that would cover every join as it is now, and a little more: joins move with it.</summary>
    private int Wider()
    {
        var need = draft.Joins.Max(j => Overlaps.ReachFor(j.Within95, recipe.Overlap.Edges)) * Spare;
        return (int)Math.Ceiling(need / WidthStep) * WidthStep;
    }

    /// <summary>The same fields and seams with other rules: every join is there again.</summary>
    private static Func<PartJoin, (double, double)?> Same(ImmutableArray<PartJoin> joins) =>
        join =>
            joins.FirstOrDefault(j => (j.Earlier, j.Later) == (join.Earlier, join.Later)) is { } now
                ? (now.Within95, now.Covers)
                : null;

    /// <summary>Another plan has other joins: what counts is its worst.</summary>
    private static Func<PartJoin, (double, double)?> Whole(Result<PlanDraft> planned)
    {
        if (!planned.TryGet(out var other))
            return _ => null;
        var worst = other
            .Joins.Select(j => ((double Misfit, double Covered)?)(j.Within95, j.Covers))
            .MaxBy(w => w?.Misfit / w?.Covered);
        // Without any join there is nothing to miss.
        return _ => worst ?? (0, Units.TapeStep);
    }

    private ImmutableArray<PartJoin> Cornered(Recipe changed) =>
        CornerPlacer.Place(changed, drawing, draft.Layout, draft.Division, draft.Sequence).TryGet(out var corners)
            ? With(changed, corners)
            : [];

    private ImmutableArray<PartJoin> With(Recipe changed, ImmutableArray<Corner> corners) =>
        JoinPlanner
            .Plan(changed, draft.Layout, draft.Division, new PredictedFit(changed, draft.Layout.Fields.Length, corners))
            .TryGet(out var joins)
            ? joins
            : [];

    /// <summary>Middles of other fields that could be sewn first, the nearest to the first one first.</summary>
    private IEnumerable<Point> Firsts()
    {
        if (recipe.Fields.First is not null)
            return [];
        var folds = Folds.Held(recipe.Cloth, drawing.Bounds.Centre);
        return draft
            .Layout.Fields.Skip(1)
            .Where(field => folds is not { } held || field.Usable.Contains(held))
            .Select(field => field.Centre)
            .OrderBy(centre => centre.DistanceTo(draft.Layout.Fields[0].Centre))
            .ThenBy(centre => centre)
            .Take(MostFirsts);
    }

    private IEnumerable<Hoop> Larger() =>
        recipe
            .Hoops.Where(hoop => Area(hoop) > Area(draft.Hoop))
            .OrderBy(Area)
            .ThenBy(hoop => hoop.Name, StringComparer.Ordinal);

    private static long Area(Hoop hoop) => (long)hoop.Width * hoop.Height;

    private static double Mm(int micrometres) => Math.Round(micrometres / (double)Units.Millimetre, 1);
}
