using System.Collections.Immutable;
using Splitter.Geometry;

namespace Splitter.Outputs.Pictures;

/// <summary>Where panels stand around a map, and how large the page becomes; micrometres.</summary>
/// <param name="Width">Up to the last panel's or the map's right edge.</param>
/// <param name="Height">Down to the lowest edge.</param>
internal sealed record PanelLayout(ImmutableArray<Point> Places, int Width, int Height)
{
    /// <summary>The longer side of a sheet over the shorter one: A sizes of ISO 216, and near enough Letter.</summary>
    private const double Sheet = 1.4142;

    /// <summary>
    /// A screen shows a page with its panels beside the map larger: a sheet may show it this much smaller.
    /// </summary>
    private const double BesideBonus = 1.08;

    /// <summary>Beside the map or below it, whichever a sheet of paper shows larger.</summary>
    /// <param name="map">Without what belongs to it.</param>
    /// <param name="foot">Room below the map that panels leave free.</param>
    internal static PanelLayout Around(Box map, int foot, int gap, ImmutableArray<IPanel> panels)
    {
        var (beside, below) = (Beside(map, foot, gap, panels), Below(map, foot, gap, panels));
        return beside.Sized() <= below.Sized() * BesideBonus ? beside : below;
    }

    /// <summary>The longer side of the sheet that holds it, either way round.</summary>
    private double Sized() => Math.Min(Math.Max(Width, Height * Sheet), Math.Max(Height, Width * Sheet));

    /// <summary>Columns as high as the map.</summary>
    private static PanelLayout Beside(Box map, int foot, int gap, ImmutableArray<IPanel> panels)
    {
        var places = ImmutableArray.CreateBuilder<Point>();
        var (x, y, wide, right, bottom) = (map.Right + gap, map.Top, 0, map.Right, map.Bottom + foot);
        foreach (var panel in panels)
        {
            if (y > map.Top && y + panel.Height > map.Bottom + foot)
                (x, y, wide) = (x + wide + gap, map.Top, 0);
            places.Add(new(x, y));
            y += panel.Height + gap;
            wide = Math.Max(wide, panel.Width);
            (right, bottom) = (Math.Max(right, x + panel.Width), Math.Max(bottom, y - gap));
        }
        return new(places.ToImmutable(), right, bottom);
    }

    /// <summary>Rows as wide as the map, or as the widest panel.</summary>
    private static PanelLayout Below(Box map, int foot, int gap, ImmutableArray<IPanel> panels)
    {
        var places = ImmutableArray.CreateBuilder<Point>();
        var (x, y, high, right, bottom) = (map.Left, map.Bottom + foot + gap, 0, map.Right, map.Bottom + foot);
        foreach (var panel in panels)
        {
            if (x > map.Left && x + panel.Width > map.Right)
                (x, y, high) = (map.Left, y + high + gap, 0);
            places.Add(new(x, y));
            x += panel.Width + gap;
            high = Math.Max(high, panel.Height);
            (right, bottom) = (Math.Max(right, x - gap), Math.Max(bottom, y + panel.Height));
        }
        return new(places.ToImmutable(), right, bottom);
    }
}
