using System.Collections.Immutable;
using Splitter.Geometry;
using Splitter.Planning;
using Splitter.Planning.Drafting;
using Splitter.Planning.Seams;
using Splitter.Recipes;

namespace Splitter.Tests.Planning.Drafting;

/// <summary>Drafts put together by hand, for what is chosen and advised by them.</summary>
internal static class HandDraft
{
    /// <param name="lefts">Where fields as wide and high as the hoop begin, mm; all at the top.</param>
    /// <param name="owners">Of each shape of the drawing; what is cut, each sews as far as its field reaches.</param>
    internal static PlanDraft Of(Hoop hoop, int[] lefts, ImmutableArray<int?> owners)
    {
        ImmutableArray<Field> fields =
        [
            .. lefts.Select(left => new Field(
                hoop,
                new((left * Units.Millimetre) + (hoop.Width / 2), hoop.Height / 2),
                Turn.None,
                0
            )),
        ];
        return new(
            hoop,
            new Layout(fields, [.. fields.Select(f => f.Usable)], 1),
            new([.. lefts.Select((_, i) => i)], [.. lefts.Select(_ => ImmutableArray<int>.Empty)]),
            new Division([.. fields.Select(f => Region.Of(f.Usable))], owners, [], [], [], new SeamCost(0, 0, 0)),
            [],
            [],
            []
        );
    }

    internal static PlanDraft Shows(this PlanDraft draft, double cost) =>
        draft with
        {
            Division = draft.Division with { Cost = new(cost, cost, 0) },
        };

    /// <summary>Parts that may miss each other by so much, µm.</summary>
    internal static PlanDraft Misses(this PlanDraft draft, params ReadOnlySpan<int> misfits) =>
        draft with
        {
            Joins =
            [
                .. misfits
                    .ToArray()
                    .Select(misfit => new PartJoin
                    {
                        Earlier = 0,
                        Later = 1,
                        WorstAt = default,
                        PredictedError = misfit / 2.0,
                        Budget = new(misfit / 2.0, 0, 0, 0, 0),
                        AlongSeam = misfit,
                        Overlap = 0,
                        Narrowest = 0,
                        Covers = 0,
                    }),
            ],
        };
}
