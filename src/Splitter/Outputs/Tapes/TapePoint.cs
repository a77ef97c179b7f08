using Splitter.Geometry;
using Splitter.Planning;

namespace Splitter.Outputs.Tapes;

/// <summary>A place on a tape, steps of 0.1 mm from the field's centre, u right and v up.</summary>
internal readonly record struct TapePoint(int U, int V)
{
    /// <summary>A point of the drawing in a field; every stitch lies on the tape's grid in every turn.</summary>
    internal static TapePoint Of(Field field, Point point) => Of(field.ToField(point));

    internal static TapePoint Of(FieldPoint at) =>
        at.U % Units.TapeStep == 0 && at.V % Units.TapeStep == 0
            ? new(at.U / Units.TapeStep, at.V / Units.TapeStep)
            : throw new InvalidOperationException($"{at} does not lie on the tape's grid.");
}
