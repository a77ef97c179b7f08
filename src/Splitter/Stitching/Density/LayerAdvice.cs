namespace Splitter.Stitching.Density;

/// <summary>What to do where thread lies too thick: something for each cause that there is.</summary>
internal static class LayerAdvice
{
    /// <param name="spots">The worst first: what to do there comes first.</param>
    /// <param name="isStitched">The artwork is a tape: its stitches stay as they are.</param>
    /// <param name="isOverlapAsked">The recipe says how far parts overlap.</param>
    internal static string Of(IReadOnlyList<DenseSpot> spots, bool isStitched, bool isOverlapAsked) =>
        isStitched
            ? "write a smaller 'overlap.width'"
            : string.Join(
                "; ",
                spots
                    .SelectMany(s => s.Causes)
                    .Distinct()
                    .OrderByDescending(cause => cause == spots[0].Causes[0])
                    .ThenBy(cause => cause)
                    .Select(cause => Against(cause, isOverlapAsked))
                    .Distinct()
            );

    private static string Against(LayerCause cause, bool isOverlapAsked) =>
        cause switch
        {
            LayerCause.Shapes => "draw shapes apart that lie over each other, or leave one out ('as: leave')",
            LayerCause.Rows => "give rows or columns of a shape that come together a wider 'row-spacing'",
            LayerCause.Overlap when isOverlapAsked =>
                "where parts overlap, write a smaller 'overlap.width', or leave it out",
            LayerCause.Overlap =>
                "where parts overlap, they do so as far as they may miss each other: take firmer cloth "
                    + "('cloth.stretch') or a larger hoop",
            LayerCause.Travel or LayerCause.Underlay or LayerCause.Ties =>
                "give fills and columns over travel, underlay or ties less underlay or a wider 'row-spacing'",
            _ => throw new InvalidOperationException($"No advice is known for {cause}."),
        };
}
