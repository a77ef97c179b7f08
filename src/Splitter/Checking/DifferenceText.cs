using static System.FormattableString;

namespace Splitter.Checking;

/// <summary>Differences as lines for a person: files first, then what changes at the machine.</summary>
internal static class DifferenceText
{
    internal static IEnumerable<string> Of(SetDifferences set)
    {
        foreach (var file in set.Files)
            yield return file.State switch
            {
                FileState.Missing => $"{file.Path} is missing",
                FileState.Extra => $"{file.Path} is not made any more",
                _ => $"{file.Path} differs",
            };
        foreach (var part in set.Parts)
        foreach (var line in Of(part))
            yield return $"hoop {set.Hoop}, part {part.Letter}: {line}";
    }

    private static IEnumerable<string> Of(PartDifference part)
    {
        if (part.Unreadable is { } why)
            yield return why;
        if (part.TurnBefore != part.TurnAfter)
            yield return Invariant($"the hoop is turned by {part.TurnAfter} degrees, not {part.TurnBefore}");
        if (part.FieldMovedMm > 0)
            yield return Invariant($"the hoop's middle moved by {part.FieldMovedMm:0.0} mm");
        foreach (var thread in part.Threads)
            yield return Invariant($"step {thread.Step} is sewn with {thread.After}, not {thread.Before}");
        foreach (var shape in part.Shapes)
            yield return shape.MovedMm is not { } moved ? $"{shape.Shape} is new, {Stitches(shape.StitchesAfter)}"
            : moved == 0 ? $"{shape.Shape} is sewn in another order{More(shape)}"
            : Invariant($"{shape.Shape} moved by up to {moved:0.0} mm{More(shape)}");
        foreach (var gone in part.Gone)
            yield return Invariant(
                $"{Stitches(gone.Stitches)} around x {gone.XMm:0}, y {gone.YMm:0} mm are not sewn any more"
            );
    }

    private static string More(ShapeDifference shape)
    {
        var more = shape.StitchesAfter - shape.StitchesBefore;
        return more == 0 ? ""
            : more > 0 ? $"; {Stitches(more)} more"
            : $"; {Stitches(-more)} fewer";
    }

    private static string Stitches(int count) => Invariant($"{count} {(count == 1 ? "stitch" : "stitches")}");
}
