using Splitter.Cutting;
using Splitter.Geometry;

namespace Splitter.Tests.Cutting;

/// <summary>Narrow strips that nobody sees and that two other layers lie on are left out; what shows is not.</summary>
public sealed class LooseStripsTests
{
    /// <summary>Less is what offsets and snapping leave, mm².</summary>
    private const double Nothing = 0.3;

    [Fact]
    public void WhatOneSeesIsStillSewnByItsPart()
    {
        var outlook = Examples.Planned("faroe-islands", "small");
        var (plan, drawing) = (outlook.Plans[0], outlook.Job.Drawing);
        var pieces = Cutter.Cut(drawing, plan, outlook.Job.Recipe.Overlap);
        for (var i = 0; i < drawing.Shapes.Length; i++)
        {
            var shape = drawing.Shapes[i];
            var sewn = pieces.OfType<FillPiece>().Where(p => p.Shape == shape).ToList();
            if (sewn.Count == 0)
                continue;
            var shown = Polygons.Subtract(
                shape.Footprint,
                Polygons.Union(drawing.Shapes.Skip(i + 1).Select(s => s.Footprint))
            );
            var bare = Polygons.Subtract(shown, Polygons.Union(sewn.Select(p => p.Core)));
            Assert.True(bare.Area / 1e6 < Nothing, $"{bare.Area / 1e6} mm² of {shape.Id} at {bare.Bounds.Centre}");
        }
    }
}
