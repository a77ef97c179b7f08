using Splitter.Artwork;
using Splitter.Cutting;
using Splitter.Geometry;
using Splitter.Planning;

namespace Splitter.Tests.Cutting;

/// <summary>Pieces of fills that are hardly worth their ties: how many seams leave, and why each of them stays.</summary>
public sealed class ScrapTests
{
    /// <summary>Pieces nearer than this lie side by side, µm.</summary>
    private const int Beside = 20;

    /// <summary>Less common ground than this is nothing, µm².</summary>
    private const double Nothing = 5000;

    /// <param name="most">Measured; a seam that moves may leave others, but hardly more.</param>
    [Theory]
    [InlineData("lighthouse-bay", "small", 5)]
    [InlineData("lighthouse-bay", "large", 3)]
    [InlineData("faroe-islands", "small", 0)]
    [InlineData("faroe-islands", "large", 0)]
    public void EveryScrapThatStaysHasAReason(string recipe, string hoop, int most)
    {
        var outlook = Examples.Planned(recipe, hoop);
        var (plan, drawing) = (outlook.Plans[0], outlook.Job.Drawing);
        var fills = Cutter
            .Cut(drawing, plan, outlook.Job.Recipe.Overlap)
            .OfType<FillPiece>()
            .Where(p => p.IsCut)
            .ToLookup(p => p.Shape);
        var scraps = (
            from shape in fills
            from piece in shape
            where plan.Owners[drawing.Shapes.IndexOf(piece.Shape)] is null // Whole shapes may have scraps of their own.
            from polygon in piece.Core.Polygons
            where polygon.Area < Scraps.Smallest && !IsDrawnSo(piece.Shape, polygon)
            select (piece, Ground: new Region([polygon]))
        ).ToList();
        foreach (var (piece, ground) in scraps)
        foreach (
            var other in fills[piece.Shape].Where(p => p.Hooping != piece.Hooping && LieSideBySide(p.Core, ground))
        )
            Assert.True(
                !plan.Hoopings[other.Hooping].Ground.Contains(ground.Bounds)
                    || TurnsLayers(plan, drawing, piece.Shape, ground, other.Hooping),
                $"{piece.Shape.Id} at {ground.Bounds.Centre} of part {Letters.Of(piece.Hooping)} could go to {Letters.Of(other.Hooping)}"
            );
        Assert.InRange(scraps.Count, 0, most);
    }

    /// <summary>The drawing has a polygon as small as that there.</summary>
    private static bool IsDrawnSo(Shape shape, Polygon scrap) =>
        shape.Footprint.Polygons.Any(p => p.Area < Scraps.Smallest && p.Outer.Bounds.Contains(scrap.Outer.Bounds));

    private static bool LieSideBySide(Region core, Region scrap) =>
        !Polygons.Intersect(Polygons.Offset(scrap, Beside), core).IsEmpty;

    /// <summary>In that part it would be sewn after something that lies over it, or before something under it.</summary>
    private static bool TurnsLayers(Plan plan, Drawing drawing, Shape shape, Region ground, int part)
    {
        var index = drawing.Shapes.IndexOf(shape);
        return Enumerable
            .Range(0, drawing.Shapes.Length)
            .Where(other => other != index)
            .Any(other =>
                Polygons.Intersect(drawing.Shapes[other].Footprint, ground) is { Area: > Nothing } common
                && Sewers(plan, other, common).Any(sewer => other > index ? sewer < part : sewer > part)
            );
    }

    /// <summary>The parts that sew a shape on some ground, or just beside it where a part gave ground away.</summary>
    private static IEnumerable<int> Sewers(Plan plan, int shape, Region ground) =>
        plan.Owners[shape] is { } owner
            ? [owner]
            : Enumerable
                .Range(0, plan.Hoopings.Length)
                .Where(part => Polygons.Intersect(plan.Hoopings[part].Territory, ground).Area > Nothing);
}
