using System.Collections.Immutable;
using Splitter.Geometry;

namespace Splitter.Outputs.Templates;

/// <summary>One sheet of a board.</summary>
/// <param name="Number">
/// From 1 over the whole template; 0 for a sheet that is left out because it would be empty.
/// </param>
/// <param name="Shown">Of the board, all that the sheet shows.</param>
/// <param name="Own">What remains of that when sheets are put together; sheets' own ground lies edge to edge.</param>
internal sealed record Sheet(int Number, int Row, int Column, Box Shown, Box Own);

/// <summary>A board divided into sheets that overlap, in rows from the top.</summary>
internal sealed record Tiling(Board Board, SheetForm Form, int Rows, int Columns, ImmutableArray<Sheet> Sheets)
{
    /// <summary>How much two neighbours both show: room for a mark, and for tape or glue on both sides of it.</summary>
    internal const int Overlap = 12 * Units.Millimetre;

    internal ImmutableArray<JoiningMark> Marks { get; private init; } = [];

    internal IEnumerable<Sheet> Printed => Sheets.Where(s => s.Number > 0);

    /// <summary>The paper lies the way that needs fewer sheets; upright if both need as many.</summary>
    /// <param name="first">The number of the first sheet.</param>
    internal static Tiling Of(Board board, SheetForm paper, int first)
    {
        var (upright, across) = (Cut(board, paper, first), Cut(board, paper.Across, first));
        var best = across.Printed.Count() < upright.Printed.Count() ? across : upright;
        return best with { Marks = JoiningMarks.Of(best) };
    }

    /// <summary>The printed sheet beside one, if there is any.</summary>
    internal Sheet? Neighbour(Sheet sheet, Point side) =>
        Printed.FirstOrDefault(s => s.Column == sheet.Column + side.X && s.Row == sheet.Row + side.Y);

    private static Tiling Cut(Board board, SheetForm form, int first)
    {
        var (window, ground) = (form.Window, board.Ground);
        var (columns, rows) = (Count(ground.Width, window.Width), Count(ground.Height, window.Height));
        var left = Start(ground.Left, ground.Right, columns, window.Width);
        var top = Start(ground.Top, ground.Bottom, rows, window.Height);
        var sheets = ImmutableArray.CreateBuilder<Sheet>();
        for (var row = 0; row < rows; row++)
        for (var column = 0; column < columns; column++)
        {
            var x = left + (column * (window.Width - Overlap));
            var y = top + (row * (window.Height - Overlap));
            var shown = new Box(x, y, x + window.Width, y + window.Height);
            var own = new Box(
                shown.Left + (column > 0 ? Overlap / 2 : 0),
                shown.Top + (row > 0 ? Overlap / 2 : 0),
                shown.Right - (column < columns - 1 ? Overlap / 2 : 0),
                shown.Bottom - (row < rows - 1 ? Overlap / 2 : 0)
            );
            sheets.Add(new(board.HasWork(own) ? first++ : 0, row, column, shown, own));
        }
        return new(board, form, rows, columns, sheets.ToImmutable());
    }

    private static int Count(int length, int window) =>
        Math.Max(1, (length - Overlap + window - Overlap - 1) / (window - Overlap));

    /// <summary>The ground lies in the middle of its sheets, on the tape's grid.</summary>
    private static int Start(int from, int to, int count, int window) =>
        Units.DownOnTape((int)(((long)from + to - (count * (long)(window - Overlap)) - Overlap) / 2));
}
