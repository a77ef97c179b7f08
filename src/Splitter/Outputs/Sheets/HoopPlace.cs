using Splitter.Geometry;
using Splitter.Planning;
using Splitter.Texts;

namespace Splitter.Outputs.Sheets;

/// <summary>Where in a hoop something lies, in words: which third of it, across and up.</summary>
internal static class HoopPlace
{
    internal static string Of(Phrasebook say, Field field, Point at)
    {
        var place = field.ToField(at);
        return (Third(place.U, field.Hoop.Width), Third(place.V, field.Hoop.Height)) switch
        {
            (-1, 1) => say.Say("place.top-left"),
            (0, 1) => say.Say("place.top"),
            (1, 1) => say.Say("place.top-right"),
            (-1, 0) => say.Say("place.left"),
            (0, 0) => say.Say("place.middle"),
            (1, 0) => say.Say("place.right"),
            (-1, _) => say.Say("place.bottom-left"),
            (0, _) => say.Say("place.bottom"),
            _ => say.Say("place.bottom-right"),
        };
    }

    private static int Third(int from, int size) =>
        from < -size / 6 ? -1
        : from > size / 6 ? 1
        : 0;
}
