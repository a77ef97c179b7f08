using System.Collections.Immutable;
using Splitter.Geometry;
using Splitter.Outputs.Pictures;
using Splitter.Planning;

namespace Splitter.Outputs.Sheets;

/// <summary>
/// Corners and crosses in the picture of a hoop, and their words: names, numbers, and the distances between the corners
/// to set. Words find their places when all marks are known, clear of them and of each other; then all is drawn.
/// </summary>
internal sealed class HoopMarks
{
    /// <summary>
    /// Between more corners than this, lines would hide what they measure: the list beside has them all.
    /// </summary>
    private const int MostMeasured = 3;

    /// <summary>
    /// Lines whose ends lie nearer than this run together, in heights of a letter: their words tell them apart.
    /// </summary>
    private const int Together = 6;

    private readonly SheetContent sheet;
    private readonly HoopFrame frame;
    private readonly LabelRoom room;
    private readonly int letters;
    private readonly ImmutableArray<Laid> toSet;
    private readonly ImmutableArray<Laid> forLater;
    private readonly ImmutableArray<Laid> comingOut;
    private readonly ImmutableArray<Point> crosses;
    private readonly ImmutableArray<(Corner One, Corner Other, double Length)> pairs;
    private readonly ImmutableArray<MarkName> names;
    private readonly ImmutableArray<LineName> lengths;

    /// <summary>A corner on the page.</summary>
    private readonly record struct Laid(string Id, Point At, Point X, Point Y);

    /// <param name="takenOut">Corners on the cloth that come out before the part is sewn.</param>
    internal HoopMarks(
        SheetContent sheet,
        Hooping hooping,
        ImmutableArray<string> takenOut,
        HoopFrame frame,
        LabelRoom room
    )
    {
        (this.sheet, this.frame, this.room) = (sheet, frame, room);
        letters = frame.Letters;
        toSet = [.. hooping.Takes.Select(Lay)];
        forLater = [.. hooping.Gives.Select(Lay)];
        comingOut =
        [
            .. sheet
                .Plan.Corners.Select((corner, i) => (corner.Id, Index: i))
                .Where(c => takenOut.Contains(c.Id) && !hooping.Takes.Contains(c.Index))
                .Select(c => Lay(c.Index)),
        ];
        crosses = [.. hooping.Alignments.Select(cross => frame.Lay(cross.At))];
        pairs = hooping.Takes.Length > MostMeasured ? [] : CornerPairs.Of(sheet.Plan, hooping);
        Take();
        names =
        [
            .. toSet.Select(corner => Named(corner, letters * 16 / 9)),
            .. Thin.Select(corner => Named(corner, letters * 10 / 9)),
            .. crosses.Select((at, i) => MarkName.OfCross($"{i + 1}", at, room, letters * 4 / 3)),
        ];
        lengths = [.. pairs.Select(pair => Measured(pair.One, pair.Other, pair.Length)).OfType<LineName>()];
    }

    private IEnumerable<Laid> Thin => forLater.Concat(comingOut);

    private int CrossSize => letters * 5 / 3;

    private int Hole => letters * 2 / 5;

    private Laid Lay(int index)
    {
        var corner = sheet.Plan.Corners[index];
        return new(corner.Id, frame.Lay(corner.At), frame.Lay(corner.ArmX), frame.Lay(corner.ArmY));
    }

    /// <summary>What no word may hide.</summary>
    private void Take()
    {
        foreach (var (_, at, x, y) in toSet.Concat(Thin))
        {
            room.Take(Box.Around([at, x]).Grown(letters / 3));
            room.Take(Box.Around([at, y]).Grown(letters / 3));
        }
        foreach (var at in crosses)
            room.Take(AlignmentSign.At(at, CrossSize));
        foreach (var (one, other, _) in pairs)
            room.Cross([frame.Lay(one.At), frame.Lay(other.At)]);
    }

    private MarkName Named(Laid corner, int height) =>
        MarkName.Of(corner.Id, corner.At, corner.X, corner.Y, room, height);

    /// <summary>
    /// Null between corners that lie so near each other that their arms fill the way, and where there is no place clear
    /// of all other lines: the table has it.
    /// </summary>
    private LineName? Measured(Corner one, Corner other, double length)
    {
        var text = sheet.Numbers.Length(length);
        if (length < 2 * StrokeFont.WidthOf(text, letters))
            return null;
        if (RunsWithAnother(one, other))
            text = $"{one.Id}–{other.Id} {text}";
        var others = pairs
            .Where(pair => (pair.One, pair.Other) != (one, other))
            .Select(pair => Line(pair.One, pair.Other));
        return LineName.Of(text, Line(one, other), others, room, letters);
    }

    private (Point From, Point To) Line(Corner one, Corner other) => (frame.Lay(one.At), frame.Lay(other.At));

    /// <summary>Another line so near that nobody sees which of them a number belongs to.</summary>
    private bool RunsWithAnother(Corner one, Corner other) =>
        pairs
            .Where(pair => (pair.One, pair.Other) != (one, other))
            .Any(pair =>
                EndsNear([pair.One, pair.Other], [one, other]) || EndsNear([one, other], [pair.One, pair.Other])
            );

    /// <summary>An end of one line, which is none of the other's, lies near the other.</summary>
    private bool EndsNear(Corner[] ends, Corner[] line) =>
        ends.Except(line).Any(end => Polygons.Distance(end.At, end.At, line[0].At, line[1].At) < Together * letters);

    /// <summary>Lines below, words with their rims above them, marks on top of all: no rim eats away an arm.</summary>
    internal void Draw(Canvas canvas)
    {
        foreach (var (one, other, _) in pairs)
        {
            canvas.Line(letters / 2, Colour.White, 80, frame.Lay(one.At), frame.Lay(other.At));
            canvas.Dashes(letters / 8, letters / 2, MarkInk.Corner, frame.Lay(one.At), frame.Lay(other.At));
        }
        foreach (var length in lengths)
            length.DrawLine(canvas);
        foreach (var name in names)
            name.DrawLine(canvas);
        foreach (var at in crosses)
            AlignmentSign.Draw(canvas, at, CrossSize);
        foreach (var (_, at, x, y) in toSet.Concat(Thin))
            canvas.Line(letters * 9 / 10, Colour.White, 100, x, at, y);
        foreach (var length in lengths)
            length.Draw(canvas);
        foreach (var name in names)
            name.Draw(canvas);
        foreach (var (_, at, x, y) in Thin)
            canvas.Line(letters / 5, MarkInk.Corner, 100, x, at, y);
        foreach (var (_, at, _, _) in comingOut)
            CrossOut(canvas, at, Hole, letters / 5);
        foreach (var (_, at, x, y) in toSet)
            canvas.Line(letters / 2, MarkInk.Corner, 100, x, at, y);
        foreach (var (_, at, _, _) in toSet)
            canvas.Disc(at, Hole, Colour.Ink);
        // A cross may lie on a corner.
        foreach (var at in crosses)
            AlignmentSign.Stroke(canvas, at, CrossSize);
    }

    /// <summary>Over the hole of a corner that is gone when the part is sewn.</summary>
    internal static void CrossOut(Canvas canvas, Point at, int arm, int pen) =>
        canvas.Lines(
            pen,
            MarkInk.Corner,
            100,
            [
                [new(at.X - arm, at.Y - arm), new(at.X + arm, at.Y + arm)],
                [new(at.X - arm, at.Y + arm), new(at.X + arm, at.Y - arm)],
            ]
        );
}
