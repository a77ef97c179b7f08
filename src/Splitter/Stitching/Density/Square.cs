using System.Collections.Immutable;
using Splitter.Geometry;

namespace Splitter.Stitching.Density;

/// <summary>
/// A square millimetre of cloth, of four quarters. There is one at every half millimetre, so that they lie over each
/// other: what is too much on a square millimetre is so wherever that lies, not only between whole millimetres.
/// </summary>
/// <param name="Column">Of its first quarter.</param>
/// <param name="Row">The same.</param>
internal readonly record struct Square(int Column, int Row)
{
    /// <summary>Side of a square, µm.</summary>
    internal const int Side = 2 * Quarter.Side;

    /// <summary>
    /// Layers that are kept free where there is room: squares between these have up to so much more than any of them,
    /// but for few. As measured on the demo and open drawings.
    /// </summary>
    internal const double Between = 0.2;

    internal Point Middle => new((Column + 1) * Quarter.Side, (Row + 1) * Quarter.Side);

    internal ImmutableArray<Quarter> Quarters =>
        [new(Column, Row), new(Column + 1, Row), new(Column, Row + 1), new(Column + 1, Row + 1)];

    /// <summary>Those that lie over it or touch it, at its corners too.</summary>
    internal IEnumerable<Square> Around
    {
        get
        {
            for (var row = Row - 2; row <= Row + 2; row++)
            for (var column = Column - 2; column <= Column + 2; column++)
                if ((column, row) != (Column, Row))
                    yield return new(column, row);
        }
    }
}
