using CsCheck;
using Splitter.Geometry;
using Splitter.Stitching.Density;

namespace Splitter.Tests.Stitching.Density;

public sealed class ThreadGridTests
{
    private static readonly Gen<Point> Place = Gen.Select(
        Gen.Int[-250, 250],
        Gen.Int[-250, 250],
        (x, y) => new Point(x * Units.TapeStep, y * Units.TapeStep)
    );

    [Fact]
    public void AStitchLiesOnTheQuartersItCrosses()
    {
        var crossed = new List<(Quarter Quarter, double Length)>();
        foreach (var on in new CrossedQuarters(new(250, 250), new(1750, 1250)))
            crossed.Add(on);
        Assert.Equal(
            [new(0, 0), new(1, 0), new(1, 1), new(2, 1), new(2, 2), new(3, 2)],
            crossed.Select(c => c.Quarter)
        );
        Assert.Equal(Math.Sqrt(13) * 500, crossed.Sum(c => c.Length), 6);
    }

    [Fact]
    public void EveryPieceOfAStitchLiesOnItsQuarter() =>
        Gen.Select(Place, Place)
            .Holds(
                (from, to) =>
                {
                    var done = 0.0;
                    var length = from.DistanceTo(to);
                    foreach (var (quarter, piece) in new CrossedQuarters(from, to))
                    {
                        var share = (done + (piece / 2)) / length;
                        var middle = (
                            X: from.X + ((to.X - (double)from.X) * share),
                            Y: from.Y + ((to.Y - (double)from.Y) * share)
                        );
                        Assert.InRange(middle.X - (quarter.Column * 500), -0.001, 500.001);
                        Assert.InRange(middle.Y - (quarter.Row * 500), -0.001, 500.001);
                        done += piece;
                    }
                    Assert.Equal(length, done, 6);
                },
                cases: 300
            );

    [Fact]
    public void TheOrderOfStitchesDoesNotMatter() =>
        Gen.Select(Place, Place)
            .Array[1, 40]
            .Holds(
                stitches =>
                {
                    var box = Box.Around(stitches.SelectMany(s => new[] { s.Item1, s.Item2 }));
                    var (one, other) = (new ThreadGrid(box), new ThreadGrid(box));
                    foreach (var (from, to) in stitches)
                        one.Lay(from, to, ThreadGrid.ThreadWidth);
                    foreach (var (from, to) in stitches.Reverse())
                        other.Lay(from, to, ThreadGrid.ThreadWidth);
                    Assert.Equal(one.Squares.Select(one.LayersOn), other.Squares.Select(other.LayersOn));
                },
                cases: 50
            );

    /// <summary>On ground of several runs of quarters a row, squares between two runs among them.</summary>
    [Fact]
    public void FullerSquaresAreThoseThatHoldMore() =>
        Gen.Select(Place, Place)
            .Array[1, 40]
            .Holds(
                stitches =>
                {
                    var grid = new ThreadGrid(new(-45_000, -26_000, 71_000, 26_000));
                    foreach (var (from, to) in stitches)
                    {
                        grid.Lay(from, to, ThreadGrid.ThreadWidth);
                        grid.Pierce(to);
                    }
                    Square[] all =
                    [
                        .. from row in Enumerable.Range(-53, 106)
                        from column in Enumerable.Range(-91, 234)
                        select new Square(column, row),
                    ];
                    Assert.Equal(all.Where(s => grid.LayersOn(s) > 0.5), grid.Fuller(0.5));
                    Assert.Equal(
                        all.Where(s => grid.LayersOn(s) > 1 || grid.HolesIn(s) > 1),
                        grid.Fuller(layers: 1, holes: 1)
                    );
                },
                cases: 50
            );

    /// <summary>A thread of 0.4 mm beside the line between two squares lies on both.</summary>
    [Fact]
    public void ThreadIsLaidWithItsWidth()
    {
        var grid = new ThreadGrid(new(0, 0, 9_000, 3_000));
        grid.Lay(new(1000, 900), new(4000, 900), ThreadGrid.ThreadWidth);
        Assert.Equal(0.3, grid.LayersOn(new(4, 0)), 6);
        Assert.Equal(0.1, grid.LayersOn(new(4, 2)), 6);
        grid.Lay(new(4000, 900), new(1000, 900), -ThreadGrid.ThreadWidth);
        Assert.All(grid.Squares, square => Assert.Equal(0, grid.LayersOn(square)));
    }

    [Fact]
    public void SquaresWithManyHolesAreGroundsToo()
    {
        var grid = new ThreadGrid(new(0, 0, 9_000, 3_000));
        for (var i = 0; i < 3; i++)
            grid.Pierce(new(4500, 1500));
        Assert.Equal(
            [
                [new(8, 2), new(9, 2), new(8, 3), new(9, 3)],
            ],
            FullGrounds.Of(grid, 3, holes: 2)
        );
        Assert.Empty(FullGrounds.Of(grid, 3, holes: 3));
    }

    [Fact]
    public void SquaresThatTouchAreOneGround()
    {
        var grid = new ThreadGrid(new(0, 0, 9_000, 3_000));
        foreach (var (x, y) in new[] { (0, 0), (1, 1), (2, 0), (5, 2), (7, 2) })
            grid.Lay(new((x * 1000) + 100, (y * 1000) + 500), new((x * 1000) + 900, (y * 1000) + 500), 5000);
        Assert.Equal(
            [
                [new(0, 0), new(2, 2), new(4, 0)],
                [new(10, 4)],
                [new(14, 4)],
            ],
            FullGrounds.Of(grid, 3.9, holes: 0)
        );
        Assert.Empty(FullGrounds.Of(grid, 4, holes: 0));
    }

    /// <summary>Two threads at opposite corners of 20 x 20 m, on which all squares would take 5 GB.</summary>
    [Fact]
    public void OfLargeClothOnlyWhatIsSewnOnIsKept()
    {
        const int Far = 20_000 * Units.Millimetre;
        Box[] corners = [new(0, 0, 1000, 1000), new(Far - 1000, Far - 1000, Far, Far)];
        var sum = new ThreadGrid(Box.Around(corners));
        foreach (var corner in corners)
        {
            var grid = new ThreadGrid(corner);
            grid.Lay(new(corner.Left, corner.Top), new(corner.Right, corner.Bottom), ThreadGrid.ThreadWidth);
            sum.Add(grid);
        }
        Assert.InRange(sum.Kept, 1, 5000);
        // Each quarter is one of four squares.
        Assert.Equal(2 * 1.4142 * 0.4, sum.Squares.Sum(sum.LayersOn) / 4, 0.01);
    }

    /// <summary>Threads in the middle of half a millimetre: too much for the square between whole millimetres alone.</summary>
    [Fact]
    public void SquaresLieAtEveryHalfMillimetre()
    {
        var grid = new ThreadGrid(new(0, 0, 9_000, 9_000));
        for (var i = 0; i < 10; i++)
            grid.Lay(new(4600, 5000), new(5400, 5000), ThreadGrid.ThreadWidth);
        Assert.Equal(3.2, grid.LayersOn(new(9, 9)), 6);
        Assert.Equal(3.2, grid.LayersAt(new Point(5100, 5100)), 6);
        Assert.Equal(0.8, grid.LayersOn(new(8, 8)), 6);
        Assert.Equal(
            [
                [new(9, 9)],
            ],
            FullGrounds.Of(grid, 3, holes: 0)
        );
    }

    /// <summary>Against every square laid anew, with and without the thread.</summary>
    [Fact]
    public void MoreThreadIsTooMuchByWhatComesToBe() =>
        Gen.Select(Place.Array[2, 5], Gen.Select(Place, Place).Array[1, 60])
            .Holds(
                (way, stitches) =>
                {
                    const int Most = 1;
                    var grid = new ThreadGrid(
                        Box.Around([.. way, .. stitches.SelectMany(s => new[] { s.Item1, s.Item2 })])
                    );
                    foreach (var (from, to) in stitches)
                        grid.Lay(from, to, 2000);
                    var (before, asked) = (TooMany(), grid.TooMany(way, Most));
                    grid.Lay(way, ThreadGrid.ThreadWidth);
                    Assert.Equal(TooMany() - before, asked);

                    long TooMany() => grid.Squares.Sum(s => Math.Max(0, grid.ThreadOn(s) - (Most * 1_000_000L)));
                },
                cases: 50
            );
}
