using System.Collections.Immutable;
using Splitter.Artwork;
using Splitter.Geometry;
using Splitter.Planning.Seams;

namespace Splitter.Planning.Drafting;

/// <summary>How much each hooping of a draft sews, and which sew nothing.</summary>
internal static class Yields
{
    /// <summary>
    /// Ground that is hardly worth a hooping, µm²: two by two centimetres are a metre of rows, sewn in half a minute, while
    /// mounting the cloth anew takes a quarter of an hour and is a chance to be a little off. Common practice, no source.
    /// </summary>
    internal const double Little = 400.0 * Units.SquareMillimetre;

    /// <summary>Less is a scrap at the end of a seam, which the field beside it sews as well, µm².</summary>
    internal const double Nothing = Units.SquareMillimetre;

    /// <summary>For each hooping the area of what it sews, µm², counted up to <see cref="Little"/>.</summary>
    internal static ImmutableArray<double> Of(Drawing drawing, Division division)
    {
        var areas = new double[division.Territories.Length];
        var cut = new List<Region>();
        for (var shape = 0; shape < drawing.Shapes.Length; shape++)
            if (division.Owners[shape] is { } owner)
                areas[owner] += drawing.Shapes[shape].Footprint.Area;
            else
                cut.Add(drawing.Shapes[shape].Footprint);
        for (var i = 0; i < areas.Length; i++)
            foreach (var footprint in cut)
            {
                if (areas[i] >= Little)
                    break;
                areas[i] += Polygons.Intersect(footprint, division.Territories[i]).Area;
            }
        return [.. areas];
    }

    /// <summary>Hoopings that sew nothing.</summary>
    internal static ImmutableArray<int> Empty(Drawing drawing, Division division) =>
        [.. Of(drawing, division).Index().Where(hooping => hooping.Item < Nothing).Select(hooping => hooping.Index)];
}
