using System.Collections.Immutable;
using System.Runtime.CompilerServices;
using Splitter.Artwork;
using Splitter.Geometry;
using Splitter.Planning.Seams;

namespace Splitter.Planning.Drafting;

/// <summary>What a hooping sews.</summary>
/// <param name="Whole">How many shapes it sews whole.</param>
/// <param name="Cut">Ground that it sews of cut shapes, µm²: looked at only while there is little thread.</param>
/// <param name="Thread">
/// About how much thread that takes on top of the cloth, µm, counted up to <see cref="Ample"/>.
/// </param>
internal readonly record struct Yield(int Whole, double Cut, double Thread)
{
    /// <summary>
    /// Nobody asks whether more thread is worth a hooping, µm. Half of it, a metre, is sewn in half a minute, while
    /// mounting the cloth anew takes a quarter of an hour and is a chance to be a little off. Common practice, no
    /// source.
    /// </summary>
    internal const double Ample = 2000.0 * Units.Millimetre;

    /// <summary>
    /// Less of cut shapes is a scrap at the end of a seam, which the field beside it sews as well, µm².
    /// </summary>
    private const double Scrap = Units.SquareMillimetre;

    /// <summary>It sews nothing at all.</summary>
    internal bool IsNothing => Whole == 0 && Cut == 0;

    /// <summary>It sews nothing that would be missed.</summary>
    internal bool IsScrap => Whole == 0 && Cut < Scrap;

    /// <summary>
    /// It sews so little beside another that it is hardly worth a hooping. Where all work is small, none does.
    /// </summary>
    internal bool IsLittleBeside(Yield other) => Thread < other.Thread / 2;
}

/// <summary>How much each hooping of a draft sews.</summary>
internal static class Yields
{
    /// <summary>Asked for when drafts are chosen among, and again of the one that is taken.</summary>
    private static readonly ConditionalWeakTable<Division, Lazy<ImmutableArray<Yield>>> Known = [];

    internal static ImmutableArray<Yield> Of(Drawing drawing, Division division) =>
        Known.GetValue(division, key => new(() => Counted(drawing, key))).Value;

    private static ImmutableArray<Yield> Counted(Drawing drawing, Division division)
    {
        var yields = new Yield[division.Territories.Length];
        foreach (var (shape, owner) in drawing.Shapes.Zip(division.Owners))
            if (owner is { } whole)
                yields[whole] = new(yields[whole].Whole + 1, 0, Counted(yields[whole], shape, shape.Footprint));
        foreach (var (shape, _) in drawing.Shapes.Zip(division.Owners).Where(s => s.Second is null))
            for (var i = 0; i < yields.Length; i++)
                if (yields[i] is { Thread: < Yield.Ample } yield)
                {
                    var piece = Polygons.Intersect(shape.Footprint, division.Territories[i]);
                    yields[i] = new(yield.Whole, yield.Cut + piece.Area, Counted(yield, shape, piece));
                }
        return [.. yields];
    }

    /// <summary>Hoopings that sew nothing that would be missed.</summary>
    internal static ImmutableArray<int> Empty(Drawing drawing, Division division) =>
        [.. Of(drawing, division).Index().Where(hooping => hooping.Item.IsScrap).Select(hooping => hooping.Index)];

    /// <summary>How many hoopings sew so little beside another that they are hardly worth it.</summary>
    internal static int Little(Drawing drawing, Division division)
    {
        var yields = Of(drawing, division);
        var most = yields.MaxBy(y => y.Thread);
        return yields.Count(y => y.IsLittleBeside(most));
    }

    private static double Counted(Yield yield, Shape shape, Region piece) =>
        Math.Min(Yield.Ample, yield.Thread + Thread(shape, piece));

    /// <summary>Rows side by side, satin there and back as close together, or lines once.</summary>
    private static double Thread(Shape shape, Region piece) =>
        shape switch
        {
            FillShape => piece.Area / shape.Style.RowSpacing,
            SatinShape => 2 * piece.Area / shape.Style.RowSpacing,
            // Ground of a line is narrow: an outline goes there and back.
            _ => piece.Rings.Sum(Around) / 2,
        };

    private static double Around(Ring ring)
    {
        var length = 0.0;
        for (var i = 0; i < ring.Points.Length; i++)
            length += ring.Points[i].DistanceTo(ring.Points[(i + 1) % ring.Points.Length]);
        return length;
    }
}
