namespace Splitter.Geometry;

/// <summary>
/// An array of which places side by side are kept together, and only where one of them was asked to hold something: for
/// lattices over large cloth with little on it. Several threads may change places of their own at once, as in an array.
/// </summary>
/// <param name="length">How many places it has.</param>
/// <param name="nothing">What places hold at first.</param>
internal sealed class SparseArray<T>(int length, T nothing = default)
    where T : struct
{
    /// <summary>Places that are kept together.</summary>
    internal const int Run = 128;

    private readonly T[]?[] runs = new T[]?[((long)length + Run - 1) / Run];

    /// <summary>How many places are kept.</summary>
    internal long Kept => runs.LongCount(run => run is not null) * Run;

    internal T this[int place] => runs[place / Run] is { } run ? run[place % Run] : nothing;

    /// <summary>A place to be changed.</summary>
    internal ref T At(int place)
    {
        ref var run = ref runs[place / Run];
        return ref (run ?? Keep(ref run))[place % Run];
    }

    /// <summary>Of two threads that come to a run at once both get the same one.</summary>
    private T[] Keep(ref T[]? run)
    {
        var made = new T[Run];
        Array.Fill(made, nothing);
        return Interlocked.CompareExchange(ref run, made, null) ?? made;
    }

    /// <summary>Whether the place is kept: where it is not, there is nothing.</summary>
    internal bool Keeps(int place) => runs[place / Run] is not null;
}
