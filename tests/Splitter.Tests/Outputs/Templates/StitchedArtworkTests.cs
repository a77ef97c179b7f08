using Splitter.Artwork;
using Splitter.Outputs.Templates;
using Splitter.Tests.Artwork.Tapes;

namespace Splitter.Tests.Outputs.Templates;

/// <summary>Of a tape's shapes the edges are drawn, not their rows.</summary>
public sealed class StitchedArtworkTests
{
    /// <summary>Open rows of underlay reach on below a fill of other rows, 2.5 mm apart.</summary>
    [Fact]
    public void OpenRowsLeaveNoGapsInAnOutline()
    {
        var shapes = HandTape
            .Make(
                new HandTape()
                    .Rows(0, 0, 60, 20, 2.5)
                    .Jump(0, 0, 12)
                    .Rows(0, 0, 34, 20)
                    .Jump(34.4, 0, 4)
                    .Rows(34.4, 0, 26, 20, 0.6)
                    .Bytes,
                1,
                70,
                70
            )
            .Value.Job.Drawing.Shapes;
        var fill = Assert.IsType<FillShape>(shapes[0]);
        Assert.True(fill.Footprint.Rings.Sum(r => r.Points.Length) > 30);
        var closed = ArtworkLayer.Closed(fill);
        var edge = Assert.Single(Splitter.Geometry.Polygons.Simplify(closed, 400).Rings);
        // Four corners, each cut off by the breadth of thread, and a little more that lies too near to them.
        Assert.InRange(edge.Points.Length, 4, 20);
        Assert.InRange(closed.Area / 1e6, 60 * 20, 61.5 * 21.5);
    }
}
