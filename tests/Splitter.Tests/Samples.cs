using System.Collections.Immutable;
using Splitter.Artwork;
using Splitter.Diagnostics;
using Splitter.Geometry;
using Splitter.Recipes;

namespace Splitter.Tests;

/// <summary>Recipes and drawings made in code, for tests of single stages. Arguments in millimetres.</summary>
internal static class Samples
{
    internal static Hoop Hoop(double width, double height) =>
        new("test", Units.FromMillimetres(width), Units.FromMillimetres(height));

    internal static Recipe Recipe(Hoop hoop, FieldPlacement? place = null) =>
        new()
        {
            File = "test.yaml",
            Title = "test",
            Artwork = new(),
            Cloth = new(),
            Hoops = [hoop],
            Fields = new() { Place = place ?? new FewestFields(), Clearance = 0 },
            Overlap = new() { Seams = SeamRule.Straight },
            Registration = new(),
            Output = new() { Folder = "parts/test" },
            Places = ImmutableDictionary<string, Place>.Empty,
        };

    internal static Drawing Drawing(params ReadOnlySpan<Shape> shapes)
    {
        var all = shapes.ToImmutableArray();
        var box = Box.Around(all.Select(s => s.Footprint.Bounds));
        return new(box.Right, box.Bottom, [new SewThread("blue", "#0000ff"), new SewThread("red", "#ff0000")], all);
    }

    /// <summary>A filled polygon, given by its corners x1, y1, x2, y2 …; no pull.</summary>
    internal static FillShape Fill(string id, params double[] corners) => Fill(id, Ground(corners));

    internal static FillShape Fill(string id, Region ground) =>
        new()
        {
            Id = id,
            Place = new("test.svg", 1, 1),
            Thread = 0,
            Style = new()
            {
                Angle = 30,
                RowSpacing = 400,
                StitchLength = 4000,
                Underlay = [UnderlayKind.Edge],
            },
            Footprint = ground,
        };

    internal static FillShape Rectangle(string id, double x, double y, double width, double height) =>
        Fill(id, x, y, x + width, y, x + width, y + height, x, y + height);

    internal static RunShape Run(string id, params double[] corners)
    {
        var line = new Polyline(Points(corners));
        return new()
        {
            Id = id,
            Place = new("test.svg", 2, 1),
            Thread = 1,
            Style = new() { StitchLength = 2500 },
            Lines = [line],
            Footprint = Polygons.Stroke(line, 400, Cap.Round, Join.Round),
        };
    }

    internal static Region Ground(params double[] corners) =>
        Polygons.FromRings([new Ring(Points(corners))], FillRule.NonZero);

    private static ImmutableArray<Point> Points(double[] corners) =>
        [
            .. Enumerable
                .Range(0, corners.Length / 2)
                .Select(i => Point.FromMillimetres(corners[2 * i], corners[(2 * i) + 1])),
        ];
}
