using Splitter.Artwork;

namespace Splitter.Parts;

/// <summary>What the person does when the machine stops. Common practice, no source.</summary>
internal static class StopTexts
{
    internal static string MountOnFolds =>
        "Lay the folds of the cloth on the sewn lines, unfold and smooth the cloth down. Hands clear before the machine runs.";

    internal static string SetCorners(IReadOnlyList<string> ids) =>
        $"From behind, put a tack through the hole where the arms of each corner meet: {string.Join(", ", ids)} ({ids.Count} tacks). Set the cloth's corners over the points, smooth the cloth down, then take out and count {ids.Count} tacks before the machine runs.";

    internal const string LookAtAlignment =
        "Look at each cross: its middle should meet the middle of the sewn work. If it does not, unpick the crosses, lift the cloth, put the tacks back, set it again, take the tacks out, and begin with this step once more: the corners on the stabilizer are not sewn twice. If it does, go on.";

    /// <summary>Loose threads do not belong under stitches; any other corner may still be needed to set a part again.</summary>
    internal static string TakeOut(IReadOnlyList<string> ids) =>
        $"Before you go on, take out {Listed(ids)} on the cloth: this part sews over {(ids.Count == 1 ? "it" : "them")}, and no later part is set by {(ids.Count == 1 ? "it" : "them")}. Leave all other corners in.";

    private static string Listed(IReadOnlyList<string> ids) =>
        ids.Count == 1 ? ids[0] : $"{string.Join(", ", ids.SkipLast(1))} and {ids[^1]}";

    internal static string Thread(SewThread thread) => $"Change to thread: {thread.Name}.";

    internal static string CornersForLater =>
        "Change to a thread that shows on the cloth: the corners for later parts follow. Leave them in until a later step says to take them out, or the work is finished.";
}
