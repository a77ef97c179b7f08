using Splitter.Artwork;
using Splitter.Cutting;

namespace Splitter.Tests.Cutting;

/// <summary>What may lie over a shape is found without asking all that come after it.</summary>
public sealed class UpperShapesTests
{
    [Fact]
    public void NoneIsMissed()
    {
        var drawing = Examples.Planned("lighthouse-bay", "large").Job.Drawing;
        var uppers = new UpperShapes(drawing);
        for (var shape = 0; shape < drawing.Shapes.Length; shape++)
        {
            var box = drawing.Shapes[shape].Footprint.Bounds;
            var later = drawing.Shapes.Index().Skip(shape + 1).ToList();
            Assert.Equal(later.Where(s => s.Item.Footprint.Bounds.Meets(box)).Select(s => s.Index), uppers.Of(shape));
            var half = box with { Right = box.Centre.X };
            Assert.Equal(
                later
                    .Where(s => s.Item is not RunShape && s.Item.Footprint.Bounds.Meets(half))
                    .Select(s => s.Item.Footprint),
                uppers.Grounds(shape, half)
            );
        }
    }
}
