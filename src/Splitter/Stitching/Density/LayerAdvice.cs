namespace Splitter.Stitching.Density;

/// <summary>What to do where thread lies too thick.</summary>
internal static class LayerAdvice
{
    /// <param name="isStitched">The artwork is a tape: its stitches stay as they are.</param>
    /// <param name="isOverlapAsked">The recipe says how far parts overlap.</param>
    internal static string Against(LayerCause cause, bool isStitched, bool isOverlapAsked) =>
        cause switch
        {
            _ when isStitched => "write a smaller 'overlap.width'",
            LayerCause.Shapes => "draw them apart or leave one out ('as: leave')",
            LayerCause.Rows => "give them a wider 'row-spacing'",
            LayerCause.Overlap when isOverlapAsked => "write a smaller 'overlap.width', or leave it out",
            LayerCause.Overlap => "parts overlap less on firmer cloth ('cloth.stretch') or in a larger hoop",
            LayerCause.Travel or LayerCause.Underlay or LayerCause.Ties =>
                "give fills and columns there less underlay or a wider 'row-spacing'",
            _ => throw new InvalidOperationException($"No advice is known for {cause}."),
        };
}
