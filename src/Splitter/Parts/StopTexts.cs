using Splitter.Artwork;
using Splitter.Geometry;
using Splitter.Planning;
using Splitter.Recipes;
using static System.FormattableString;

namespace Splitter.Parts;

/// <summary>What the person does when the machine stops. Common practice, no source.</summary>
internal static class StopTexts
{
    internal static string MountOnFolds(Hooping hooping) =>
        $"Lay the folds of the cloth on the sewn lines, {TopOfTheCloth(hooping.Field.Turn)}, unfold and smooth the cloth down.{RollUp(hooping)} Hands clear before the machine runs.";

    internal static string SetCorners(Hooping hooping, IReadOnlyList<string> ids) =>
        $"From behind, put a tack through the hole where the arms of each corner meet: {string.Join(", ", ids)} ({ids.Count} tacks). Set the cloth's corners over the points, {TopOfTheCloth(hooping.Field.Turn)}, smooth the cloth down, then take out and count {ids.Count} tacks before the machine runs.{RollUp(hooping)}";

    /// <summary>Marks alone do not show which way up the cloth lies before it is down.</summary>
    private static string TopOfTheCloth(Turn turn) =>
        turn switch
        {
            Turn.None => "the top of the cloth towards the top of the hoop",
            Turn.Quarter => "the top of the cloth towards the left of the hoop",
            Turn.Half => "the top of the cloth towards the bottom of the hoop",
            _ => "the top of the cloth towards the right of the hoop",
        };

    private static string RollUp(Hooping hooping) =>
        hooping is { InThroat: > 0 and var cloth, Field.Hoop.Throat: { } throat }
            ? Invariant(
                $" Roll up the {Units.ToMillimetres(cloth):0} mm of cloth at the {Side(throat.Side)} of the hoop, where the machine's throat is, and clip the roll so that it moves freely, clear of the needle."
            )
            : "";

    private static string Side(HoopSide side) =>
        side switch
        {
            HoopSide.Right => "right",
            HoopSide.Top => "top",
            HoopSide.Left => "left",
            _ => "bottom",
        };

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
