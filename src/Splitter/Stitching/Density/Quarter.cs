using System.Collections.Immutable;
using Splitter.Geometry;

namespace Splitter.Stitching.Density;

/// <summary>
/// A quarter of a square millimetre of cloth by its column and row; quarter 0, 0 begins at the origin.
/// </summary>
internal readonly record struct Quarter(int Column, int Row)
{
    /// <summary>Side of a quarter, µm.</summary>
    internal const int Side = Units.Millimetre / 2;

    /// <summary>Of a square millimetre.</summary>
    internal const double Area = 0.25;

    internal Point Middle => new((Column * Side) + (Side / 2), (Row * Side) + (Side / 2));

    /// <summary>The squares that it is a quarter of.</summary>
    internal ImmutableArray<Square> Squares =>
        [new(Column - 1, Row - 1), new(Column, Row - 1), new(Column - 1, Row), new(Column, Row)];

    /// <summary>
    /// Those that are no more than some millimetres away from some, these among them. Along rows first and then along
    /// columns, many come far less often than from each of them both ways.
    /// </summary>
    internal static IEnumerable<Quarter> Near(IEnumerable<Quarter> some, int millimetres)
    {
        var most = millimetres * Units.Millimetre / Side;
        return some.SelectMany(q => Along(most, i => q with { Column = q.Column + i }))
            .Distinct()
            .SelectMany(q => Along(most, i => q with { Row = q.Row + i }))
            .Distinct();
    }

    private static IEnumerable<Quarter> Along(int most, Func<int, Quarter> at) =>
        Enumerable.Range(-most, (2 * most) + 1).Select(at);

    /// <summary>A point on a line between two quarters belongs to the right or lower one.</summary>
    internal static Quarter At(Point point) => new(Down(point.X), Down(point.Y));

    /// <summary>Whole quarters, rounded down on both sides of the origin.</summary>
    internal static int Down(int micrometres) => (micrometres < 0 ? micrometres - Side + 1 : micrometres) / Side;
}
