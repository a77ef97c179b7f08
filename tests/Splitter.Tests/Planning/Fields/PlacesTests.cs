using System.Collections.Immutable;
using Splitter.Geometry;
using Splitter.Planning;
using Splitter.Planning.Fields;
using Splitter.Planning.Fields.Covering;

namespace Splitter.Tests.Planning.Fields;

/// <summary>Where fields may begin, and where one may be moved to. Millimetres.</summary>
public sealed class PlacesTests
{
    private static readonly FieldTemplate Template = new(Samples.Hoop(100, 80), 0, 0);

    /// <summary>
    /// A bar from 20 to 60 mm down. The first field has to hold its left 70 mm, which the second one, that stands upright from 8
    /// mm above to 92 mm down, leaves to it: its middle may lie from 20 to 50 and from 20 to 60. It is tried at steps of
    /// 1, 5 and 20 mm within that, at its ends, and flush with the other field's upper and lower edge.
    /// </summary>
    [Fact]
    public void AFieldIsTriedAtStepsAtTheEndsOfItsRoomAndFlushWithOthers()
    {
        ImmutableArray<Field> fields = [At(50, 40, Turn.None), At(110, 42, Turn.Quarter)];
        var task = Task(Samples.Ground(0, 20, 150, 20, 150, 60, 0, 60));
        var grid = new CoverGrid(task, fields);
        grid.Reset(fields);
        var places = new Moves(task, grid).Of(fields, 0).ToHashSet();
        Assert.Equal([20, 30, 45, 49, 50], places.Where(p => p.Y == 40_000).Select(p => p.X / 1000).Order());
        Assert.Equal(
            [20, 32, 35, 39, 40, 41, 45, 52, 60],
            places.Where(p => p.X == 50_000).Select(p => p.Y / 1000).Order()
        );
        Assert.Equal(
            ["20 20", "20 60", "50 20", "50 60"],
            places
                .Where(p => p is { X: 20_000 or 50_000, Y: 20_000 or 60_000 })
                .Select(p => $"{p.X / 1000} {p.Y / 1000}")
                .Order(StringComparer.Ordinal)
        );
        Assert.Empty(new Moves(task with { Fixed = [fields[0]] }, grid).Of(fields, 0));
    }

    /// <summary>Nobody looks along the edge of a field that lies more than 20 mm away.</summary>
    [Theory]
    [InlineData(169, true)]
    [InlineData(171, false)]
    public void AFieldFarOffIsNotAligned(int other, bool isAligned)
    {
        ImmutableArray<Field> fields = [At(50, 40, Turn.None), At(other, 43, Turn.None)];
        var task = Task(Samples.Ground(0, 20, 30, 20, 30, 60, 0, 60));
        var grid = new CoverGrid(task, fields);
        grid.Reset(fields);
        Assert.Equal(isAligned, new Moves(task, grid).Of(fields, 0).Contains(Point.FromMillimetres(50, 43)));
    }

    /// <summary>A step in an outline is no end of it along the axis on which it goes on; boxes have both.</summary>
    [Fact]
    public void ThingsBeginAndEndWhereOutlinesTurnBack()
    {
        var edges = new DrawnEdges(
            // A roof of two gables, 100 wide: peaks at 25 and 75, the valley between at 50.
            Task(Samples.Ground(0, 60, 25, 10, 50, 30, 75, 20, 100, 60)) with
            {
                Wholes = [new(12_000, 70_000, 18_000, 90_000)],
            }
        );
        Assert.Equal(("0 12 100", "0 18 100"), Told(edges.Across(9)));
        Assert.Equal(("10 20 30 60 70", "10 20 30 60 90"), Told(edges.Down(9)));
    }

    /// <summary>The same outline, whichever of its corners is named first.</summary>
    [Fact]
    public void AnLTurnsBackAtItsOuterEdgesAlone()
    {
        double[] corners = [0, 0, 100, 0, 100, 40, 60, 40, 60, 100, 0, 100];
        for (var first = 0; first < corners.Length; first += 2)
        {
            var edges = new DrawnEdges(Task(Samples.Ground([.. corners[first..], .. corners[..first]])));
            Assert.Equal(("0 100", "0 100"), Told(edges.Across(9)));
            Assert.Equal(("0 100", "0 100"), Told(edges.Down(9)));
        }
    }

    private static (string, string) Told((List<int> Starts, List<int> Ends) found) =>
        (Told(found.Starts), Told(found.Ends));

    private static string Told(List<int> places) => string.Join(' ', places.Order().Select(p => p / 1000));

    private static CoverTask Task(Region drawn) => new([drawn], [], Template, [Turn.None], null, [], []);

    private static Field At(int x, int y, Turn turn) => Template.At(Point.FromMillimetres(x, y), turn);
}
