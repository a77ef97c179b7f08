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

    [Fact]
    public void PlacesAreReadAcrossRunsAndBeyondTheEnd()
    {
        const int Run = SparseArray<int>.Run;
        var array = new SparseArray<int>(3 * Run, nothing: 7);
        (array.At(Run - 1), array.At(Run), array.At((3 * Run) - 1)) = (1, 2, 3);
        var read = new int[(4 * Run) + 2];
        array.Read(Run - 2, read);
        Assert.Equal([7, 1, 2, 7], read[..4]);
        Assert.Equal([7, 3, 7], read[(2 * Run)..((2 * Run) + 3)]);
        Assert.All(read[((2 * Run) + 2)..], held => Assert.Equal(7, held));
    }

    [Fact]
    public void ThreadsThatComeToARunAtOnceKeepWhatEachOfThemHolds()
    {
        // In every round two threads come to a new run; few of them meet, and none may lose what it has written.
        const int Rounds = 50_000;
        var array = new SparseArray<byte>(Rounds * SparseArray<byte>.Run);
        var at = new int[2];
        Parallel.For(
            0,
            2,
            new() { MaxDegreeOfParallelism = 2 },
            own =>
            {
                for (var round = 0; round < Rounds; round++)
                {
                    Volatile.Write(ref at[own], round);
                    // Not for ever: one thread may do the work of both.
                    for (var spin = 0; spin < 200 && Volatile.Read(ref at[1 - own]) < round; spin++)
                        Thread.SpinWait(1);
                    array.At((round * SparseArray<byte>.Run) + own)++;
                }
            }
        );
        Assert.DoesNotContain(
            Enumerable.Range(0, Rounds),
            round => array[round * SparseArray<byte>.Run] + array[(round * SparseArray<byte>.Run) + 1] != 2
        );
    }
}
