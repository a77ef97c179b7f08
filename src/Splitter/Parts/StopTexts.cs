using System.Collections.Immutable;
using Splitter.Artwork;
using Splitter.Geometry;
using Splitter.Planning;
using Splitter.Recipes;
using Splitter.Texts;

namespace Splitter.Parts;

/// <summary>
/// What the person does when the machine stops, one action after the other. Common practice, no source.
/// </summary>
internal sealed class StopTexts(Cloth cloth, Phrasebook say)
{
    /// <summary>
    /// Less cloth than this lies flat in the throat, µm: it makes no roll. Common practice, no source.
    /// </summary>
    private const int LeastRolled = 80 * Units.Millimetre;

    internal ImmutableArray<string> MountOnFolds(Hooping hooping) =>
        [
            say.Say("stop.lay-folds", ("top", ClothTop.In(say, hooping.Field.Turn))),
            say.Say("stop.unfold"),
            .. HoldEdge(hooping),
            .. RollUp(hooping),
        ];

    internal string HandsClear => say.Say("stop.hands-clear");

    internal ImmutableArray<string> SetCorners(Hooping hooping, IReadOnlyList<string> ids)
    {
        var tacks = say.Many("tacks", ids.Count);
        return
        [
            say.Say("stop.tacks-in", ("corners", string.Join(", ", ids)), ("tacks", tacks)),
            say.Say("stop.set-corners", ("top", ClothTop.In(say, hooping.Field.Turn))),
            .. HoldEdge(hooping),
            .. RollUp(hooping),
            say.Say("stop.tacks-out", ("tacks", tacks)),
        ];
    }

    /// <summary>For a part in which no cross has room.</summary>
    internal string NoCross => say.Say("stop.no-cross");

    internal ImmutableArray<string> LookAtAlignment(int crosses) =>
        [
            crosses == 1 ? say.Say("stop.look.one") : say.Say("stop.look.many"),
            say.Say("stop.set-again"),
            say.Say("stop.go-on"),
        ];

    /// <summary>What shows that a moved part would come out right, and what it is if it would not.</summary>
    internal ImmutableArray<string> LookAtMoved(int crosses) =>
        [
            crosses == 1 ? say.Say("stop.look.one") : say.Say("stop.look.many"),
            say.Say("stop.moved.wrong"),
            say.Say("stop.go-on"),
        ];

    /// <summary>
    /// Loose threads do not belong under stitches; any other corner may still be needed to set a part again.
    /// </summary>
    internal string TakeOut(IReadOnlyList<string> ids) =>
        ids.Count == 1
            ? say.Say("stop.take-out.one", ("corner", ids[0]))
            : say.Say("stop.take-out.many", ("corners", say.Listed(ids)));

    /// <summary>
    /// The thread of the next step; null where the one that is threaded goes on. A tape that stops between two blocks
    /// of one thread does so for something that it does not say.
    /// </summary>
    internal string? Change(SewThread? from, StepKind next, SewThread? to) =>
        to is null
            ? next == StepKind.NextCorners
                ? say.Say("stop.corners-for-later")
                : null
            : from == to
                ? say.Say("stop.same-thread")
                : say.Say("stop.thread", ("thread", to.Name));

    /// <summary>Cloth that ends inside the hoop is held by the stabilizer alone: its edge would lift.</summary>
    private ImmutableArray<string> HoldEdge(Hooping hooping) =>
        ClothEdge.Of(cloth, hooping.Field) is { IsEmpty: false } sides
            ? [say.Say("stop.hold-edge", ("sides", ClothEdge.Says(say, sides)))]
            : [];

    private ImmutableArray<string> RollUp(Hooping hooping) =>
        hooping is { InThroat: >= LeastRolled and var rolled, Field.Hoop.Throat: { } throat }
            ? [say.Say("stop.roll-up", ("cloth", say.Numbers.Rough(rolled)), ("side", SideOf(throat.Side)))]
            : [];

    private string SideOf(HoopSide side) =>
        side switch
        {
            HoopSide.Right => say.Say("side.right"),
            HoopSide.Top => say.Say("side.top"),
            HoopSide.Left => say.Say("side.left"),
            _ => say.Say("side.bottom"),
        };
}
