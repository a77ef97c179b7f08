using System.Collections.Immutable;
using Splitter.Geometry;

namespace Splitter.Outputs.Templates;

/// <summary>A place that two neighbours show, to lay one over the other.</summary>
/// <param name="First">The number of the sheet that lies left of or above the other.</param>
/// <param name="Second">The number of the other.</param>
/// <param name="At">On the board.</param>
/// <param name="Side">One step from the first sheet to the second.</param>
internal sealed record JoiningMark(string Name, int First, int Second, Point At, Point Side);

/// <summary>Two marks for each pair of neighbours, named in reading order, where they hide least.</summary>
internal static class JoiningMarks
{
    /// <summary>
    /// Where marks may stand along what two sheets share, percent, the best places first: far apart, so that no sheet
    /// can turn.
    /// </summary>
    private static readonly ImmutableArray<ImmutableArray<int>> Places =
    [
        [15, 13, 17, 11, 19, 21, 24, 27, 30, 33, 36],
        [85, 87, 83, 89, 81, 79, 76, 73, 70, 67, 64],
    ];

    /// <summary>
    /// From a mark to the ends of what it and its names on both sheets take: across and along a line.
    /// </summary>
    private static readonly Point SideBySide = new(26 * Units.Millimetre, 4 * Units.Millimetre),
        OneAboveTheOther = new(12 * Units.Millimetre, 8 * Units.Millimetre);

    /// <summary>No l, i or o: they look like 1 and 0.</summary>
    private const string Alphabet = "abcdefghjkmnpqrstuvwxyz";

    internal static ImmutableArray<JoiningMark> Of(Tiling tiling)
    {
        var marks = ImmutableArray.CreateBuilder<JoiningMark>();
        foreach (var sheet in tiling.Printed)
        foreach (var side in new Point[] { new(1, 0), new(0, 1) })
            if (tiling.Neighbour(sheet, side) is { } other)
                foreach (var places in Places)
                {
                    var at = places
                        .Select(share => At(sheet, side, share))
                        .MinBy(at => tiling.Board.Hides(Around(at, side.X > 0 ? SideBySide : OneAboveTheOther)));
                    marks.Add(new(NameOf(marks.Count), sheet.Number, other.Number, at, side));
                }
        return marks.ToImmutable();
    }

    private static Point At(Sheet sheet, Point side, int share)
    {
        var shown = sheet.Shown;
        return side.X > 0
            ? new Point(sheet.Own.Right, shown.Top + (shown.Height / 100 * share)).OnTape()
            : new Point(shown.Left + (shown.Width / 100 * share), sheet.Own.Bottom).OnTape();
    }

    private static Box Around(Point at, Point ends) => new(at.X - ends.X, at.Y - ends.Y, at.X + ends.X, at.Y + ends.Y);

    private static string NameOf(int index) =>
        index < Alphabet.Length
            ? $"{Alphabet[index]}"
            : NameOf((index / Alphabet.Length) - 1) + Alphabet[index % Alphabet.Length];
}
