using Splitter.Geometry;
using Splitter.Planning.Drafting;
using static System.FormattableString;

namespace Splitter.Planning.Remedies;

/// <summary>What a change makes of the joins of a plan.</summary>
internal sealed record Outcome(Change Change, PlanDraft Before, PlanDraft After)
{
    /// <summary>
    /// Whether a join that is not covered will be, and none is worse off for it. While fields lie and follow each other
    /// as before, every join is there again; else all joins of the other plan have to be covered. An overlap that some
    /// have no room for would only be the next thing to mend.
    /// </summary>
    internal bool Mends(PartJoin join) =>
        WidthRemedy.Tight(After, Change.Width).IsEmpty
        && (
            IsSameRound
                ? Again(join) is not { IsCovered: false } && After.Joins.All(j => j.IsCovered || !WasCovered(j))
                : After.Joins.All(j => j.IsCovered)
        );

    /// <summary>How many times what is covered the misfit is, at the worst of these joins.</summary>
    internal double Ratio(IEnumerable<PartJoin> joins) => Worst(joins) is { } worst ? RatioOf(worst) : 0;

    /// <summary>How these joins come out.</summary>
    internal string Figures(IEnumerable<PartJoin> joins) =>
        Worst(joins) is { } worst
            ? Invariant($"parts may miss by {Units.ToMillimetres(worst.Within95):0.00} mm against ")
                + Invariant($"{Units.ToMillimetres(worst.Covers):0.00} mm of overlap")
            : "no part is cut where it meets another";

    internal static double RatioOf(PartJoin join) => (double)join.Within95 / join.Covers;

    private bool IsSameRound => After.Layout.Fields.SequenceEqual(Before.Layout.Fields);

    private PartJoin? Worst(IEnumerable<PartJoin> joins) =>
        (IsSameRound ? joins.Select(Again).OfType<PartJoin>() : After.Joins).MaxBy(RatioOf);

    private PartJoin? Again(PartJoin join) => Same(After, join);

    private bool WasCovered(PartJoin join) => Same(Before, join) is not { IsCovered: false };

    private static PartJoin? Same(PlanDraft draft, PartJoin join) =>
        draft.Joins.FirstOrDefault(j => (j.Earlier, j.Later) == (join.Earlier, join.Later));
}
