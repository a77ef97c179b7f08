using Splitter.Geometry;
using Splitter.Recipes.Language;

namespace Splitter.Recipes.Keys;

/// <summary>The keys of <c>overlap</c>.</summary>
internal static class OverlapKeys
{
    internal static readonly Key<OverlapWidth> Width = new(
        "width",
        new WordOr<OverlapWidth>(
            "auto",
            new(null),
            new Made<int, OverlapWidth>(
                new LengthKind("0 mm", $"{OverlapRules.Widest / Units.Millimetre} mm"),
                width => new(width)
            )
        )
    )
    {
        Says = "How far a cut edge runs past the seam; auto takes what the predicted fit needs.",
        Example = "1.5 mm",
        Default = "auto",
    };

    internal static readonly Key<SeamRule> Seams = new(
        "seams",
        new WordKind<SeamRule>([("least-visible", SeamRule.LeastVisible), ("straight", SeamRule.Straight)])
    )
    {
        Says = "Where seams run: where they show least, or straight in the middle of common ground.",
        Example = "least-visible",
        Default = "least-visible",
    };

    internal static readonly Key<EdgeRule> Edges = new(
        "edges",
        new WordKind<EdgeRule>([("interleaved", EdgeRule.Interleaved), ("plain", EdgeRule.Plain)])
    )
    {
        Says = "How the rows of a fill end at a seam: every other one reaches further, or all equally far.",
        Example = "interleaved",
        Default = "interleaved",
    };

    internal static readonly GroupKind<OverlapRules> Group = new(
        [Width, Seams, Edges],
        group =>
            new()
            {
                Width = group.Get(Width).Length,
                Seams = group.Get(Seams),
                Edges = group.Get(Edges),
            }
    );
}

/// <summary>A width, or null for one that is worked out.</summary>
internal sealed record OverlapWidth(int? Length);
