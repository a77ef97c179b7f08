using Splitter.Recipes.Language;

namespace Splitter.Recipes.Keys;

/// <summary>The keys of <c>registration</c>.</summary>
internal static class RegistrationKeys
{
    // One micrometre is the least length that there is: the accuracy must be more than nothing.
    internal static readonly Key<int> Accuracy = new("accuracy", new LengthKind("0.001 mm", "5 mm"))
    {
        Says = "How closely a corner is set over a tack, one standard deviation per axis.",
        Example = "0.3 mm",
        Default = "0.3 mm",
    };

    internal static readonly Key<int> Reading = new("reading", new LengthKind("0.001 mm", "5 mm"))
    {
        Says = "How closely you read an offset at an alignment cross, one standard deviation per axis.",
        Example = "0.2 mm",
        Default = "0.15 mm",
    };

    internal static readonly Key<double> FollowStretch = new("follow-stretch", new PercentKind("2 %"))
    {
        Says = "How much realign may stretch a part along and across the grain to follow cloth that has stretched.",
        Example = "1 %",
        Default = "0 %",
    };

    internal static readonly Key<Corners> Corners = new("corners", CornerKeys.Group)
    {
        Says = "The registration corners of a hooping.",
        Example = "{ count: 3, arm: 8 mm }",
        Default = "{}",
    };

    internal static readonly Key<bool> Alignment = new(
        "alignment",
        new WordKind<bool>([("cross", true), ("none", false)])
    )
    {
        Says = "Stitches that show the fit before a part's own stitching.",
        Example = "cross",
        Default = "cross",
    };

    internal static readonly GroupKind<RegistrationRules> Group = new(
        [Accuracy, Reading, FollowStretch, Corners, Alignment],
        group =>
            new()
            {
                Accuracy = group.Get(Accuracy),
                Reading = group.Get(Reading),
                FollowStretch = group.Get(FollowStretch),
                CornerCount = group.Get(Corners).Count,
                IsCountAsked = group.Get(Corners).IsCountAsked,
                CornerArm = group.Get(Corners).Arm,
                Alignment = group.Get(Alignment),
            }
    );
}

/// <summary>How many corners, and how long their arms.</summary>
internal sealed record Corners(int Count, bool IsCountAsked, int Arm);

/// <summary>The keys of <c>registration.corners</c>.</summary>
internal static class CornerKeys
{
    internal static readonly Key<int> Count = new("count", new CountKind(2, RegistrationRules.MostCorners))
    {
        Says =
            "How many a hooping takes where there is room; if left out, a third only where it lessens its "
            + "worst error by 5 % or more.",
        Example = "3",
        Default = "3",
    };

    internal static readonly Key<int> Arm = new("arm", new LengthKind("2 mm", "30 mm"))
    {
        Says = "Length of an arm.",
        Example = "8 mm",
        Default = "8 mm",
    };

    internal static readonly GroupKind<Corners> Group = new(
        [Count, Arm],
        group => new(group.Get(Count), group.Has(Count), group.Get(Arm))
    );
}
