using Splitter.Geometry;

namespace Splitter.Tests.Geometry;

public sealed class SparseArrayTests
{
    [Fact]
    public void OnlyWhatHoldsSomethingIsKept()
    {
        // As many as square millimetres on 20 x 20 m.
        var array = new SparseArray<int>(400_000_000, nothing: 7);
        Assert.Equal((7, 7, 0), (array[0], array[399_999_999], array.Kept));
        array.At(399_999_999)++;
        array.At(0) = 3;
        Assert.Equal((3, 7, 8), (array[0], array[1], array[399_999_999]));
        Assert.Equal((true, true, false), (array.Keeps(127), array.Keeps(399_999_999), array.Keeps(128)));
        Assert.Equal(2 * SparseArray<int>.Run, array.Kept);
    }
}
