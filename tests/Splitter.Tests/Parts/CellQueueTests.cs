using CsCheck;
using Splitter.Parts;

namespace Splitter.Tests.Parts;

public sealed class CellQueueTests
{
    private const double LeastStep = 500;

    /// <summary>Each cell that is taken leads to two more, as in a search for ways; a sorted list says who is next.</summary>
    [Fact]
    public void TheCheapestCellIsNextAndOfEqualsTheFirst() =>
        Gen.Int[0, 3]
            .Array[60]
            .Holds(
                steps =>
                {
                    var (queue, waiting) = (new CellQueue(LeastStep), new SortedSet<(double Cost, int Cell)>());
                    Add(steps.Length, 0);
                    for (var next = 0; queue.TryTake(out var cell, out var cost); )
                    {
                        Assert.Equal(waiting.Min, (cost, cell));
                        waiting.Remove(waiting.Min);
                        for (var k = 0; k < 2 && next < steps.Length; k++, next++)
                            Add(steps.Length - next, cost + LeastStep + (steps[next] * LeastStep / 2));
                    }
                    Assert.Empty(waiting);

                    void Add(int cell, double cost)
                    {
                        queue.Add(cell, cost);
                        waiting.Add((cost, cell));
                    }
                },
                cases: 100
            );

    [Fact]
    public void OfAClearedQueueNothingIsLeft()
    {
        var queue = new CellQueue(LeastStep);
        queue.Add(1, 3 * LeastStep);
        queue.Clear();
        queue.Add(2, 0);
        Assert.True(queue.TryTake(out var cell, out _));
        Assert.Equal(2, cell);
        Assert.False(queue.TryTake(out _, out _));
    }
}
