using Splitter.Geometry;

namespace Splitter.Stitching.Density;

/// <summary>A square millimetre of cloth by its column and row; square 0, 0 begins at the origin.</summary>
internal readonly record struct Square(int Column, int Row)
{
    /// <summary>Side of a square, µm.</summary>
    internal const int Side = Units.Millimetre;

    internal Point Middle => new((Column * Side) + (Side / 2), (Row * Side) + (Side / 2));

    /// <summary>Those that touch it, at its corners too.</summary>
    internal IEnumerable<Square> Around
    {
        get
        {
            var own = this;
            return Within(1).Where(square => square != own);
        }
    }

    /// <summary>Those that are no more than some squares away, itself among them.</summary>
    internal IEnumerable<Square> Within(int squares)
    {
        for (var row = Row - squares; row <= Row + squares; row++)
        for (var column = Column - squares; column <= Column + squares; column++)
            yield return new(column, row);
    }

    /// <summary>A point on a line between two squares belongs to the right or lower one.</summary>
    internal static Square At(Point point) => new(Down(point.X), Down(point.Y));

    /// <summary>Whole squares, rounded down on both sides of the origin.</summary>
    internal static int Down(int micrometres) => (micrometres < 0 ? micrometres - Side + 1 : micrometres) / Side;
}
