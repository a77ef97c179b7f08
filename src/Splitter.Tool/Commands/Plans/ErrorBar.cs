using static System.FormattableString;

namespace Splitter.Tool.Commands.Plans;

/// <summary>
/// A join's error as a bar of plain characters, all joins on one scale. The mark stands where the overlap ends; what
/// runs on past it is not covered.
/// </summary>
/// <param name="FullMm">What the whole width stands for.</param>
internal sealed record ErrorBar(double FullMm)
{
    /// <summary>Characters: the tables still fit a terminal of 100.</summary>
    private const int Width = 30;

    private const char Sure = '=',
        Unsure = '!',
        Edge = '|';

    /// <summary>Beside an error that is told for a junction.</summary>
    internal const string Junction = "*";

    private const string Explanation =
        "Errors in mm: set = corners set over tacks, grid = rounding to the tape's grid, warp, weft, bias = "
        + "cloth that gives;\n"
        + "all = root mean square of them. 95 % = the two sides miss each other by less 19 times in 20: the bar "
        + "of '='.\n"
        + "* = where three parts or more meet, which asks for more than the seam does: the circle in which they "
        + "come out.\n"
        + "covers = how far they lie over each other: up to '|'. '!' is error that is not covered.\n"
        + "overlap = how far each side is sewn past the seam at most.\n";

    private const string Stiff =
        "The cloth is taken as not giving, and the errors will be larger as far as it gives: state 'cloth.stretch'.\n";

    /// <param name="isClothStiff">Nothing is known of how far the cloth gives.</param>
    internal static string Explained(bool isClothStiff) => isClothStiff ? Explanation + Stiff : Explanation;

    internal string Heading => Invariant($"0 to {FullMm:0.0} mm");

    /// <summary>The next half millimetre holds everything.</summary>
    internal static ErrorBar Scale(IEnumerable<PlannedJoin> joins) =>
        new(Math.Ceiling(joins.Select(j => Math.Max(j.ErrorMm, j.CoversMm)).DefaultIfEmpty(0).Max() * 2) / 2);

    internal string Of(PlannedJoin join)
    {
        var (error, edge) = (Cells(join.ErrorMm), Cells(join.CoversMm));
        // Rounding must not say of a join what its figures do not.
        error = join.Covered ? Math.Min(error, edge) : Math.Max(error, edge + 1);
        var sure = new string(Sure, Math.Min(error, edge)).PadRight(edge);
        return $"{sure}{Edge}{new string(Unsure, Math.Max(0, error - edge))}";
    }

    private int Cells(double mm) => (int)Math.Round(mm / FullMm * Width, MidpointRounding.AwayFromZero);
}
