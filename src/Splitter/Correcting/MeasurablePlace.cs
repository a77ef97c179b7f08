using System.Collections.Immutable;
using Splitter.Artwork;
using Splitter.Geometry;
using Splitter.Planning;

namespace Splitter.Correcting;

/// <summary>Where a part in the hoop can be measured against sewn work.</summary>
/// <param name="Name">The number of a cross, or the name of a corner.</param>
/// <param name="At">Where the new stitch should lie.</param>
/// <param name="Donor">Index of the hooping whose work is there.</param>
/// <param name="On">Id of the corner or shape that is there.</param>
/// <param name="Across">
/// Of an edge or a line the direction square to it, the only one in which it shows how far off the part is; null at a
/// hole, which shows both.
/// </param>
internal sealed record MeasurablePlace(string Name, Point At, int Donor, string On, Vector? Across)
{
    /// <summary>Crosses first, then the corners that the part is set by.</summary>
    internal static ImmutableArray<MeasurablePlace> Of(Drawing drawing, Plan plan, int hooping)
    {
        var (crosses, corners) = (plan.Hoopings[hooping].Alignments, plan.Hoopings[hooping].Takes);
        return
        [
            .. crosses.Select(
                (cross, i) =>
                    new MeasurablePlace(
                        Texts.Numbers.Count(i + 1),
                        cross.At,
                        cross.With,
                        cross.On,
                        plan.Corners.Any(c => c.Id == cross.On)
                            ? null
                            : EdgeDirection.Across(drawing.Shapes.First(s => s.Id == cross.On), cross.At)
                    )
            ),
            .. corners
                .Select(i => plan.Corners[i])
                .Select(corner => new MeasurablePlace(corner.Id, corner.At, corner.Donor, corner.Id, null)),
        ];
    }
}
