using System.Collections.Immutable;
using Splitter.Planning.Order;
using Splitter.Planning.Seams;
using Splitter.Recipes;

namespace Splitter.Planning.Drafting;

/// <summary>All that a plan follows from, fields in sewing order: what a trial of something else begins with.</summary>
internal sealed record PlanDraft(
    Hoop Hoop,
    Layout Layout,
    Sequence Sequence,
    Division Division,
    ImmutableArray<Corner> Corners,
    ImmutableArray<CornerSetting?> Settings,
    ImmutableArray<PartJoin> Joins
);
