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

    internal T this[int place] => runs[(uint)place / Run] is { } run ? run[(uint)place % Run] : nothing;

    /// <summary>What a place and the next one hold.</summary>
    internal (T, T) Two(int place)
    {
        var at = (uint)place % Run;
        if (at + 1 == Run)
            return (this[place], this[place + 1]);
        return runs[(uint)place / Run] is { } run ? (run[at], run[at + 1]) : (nothing, nothing);
    }

    /// <summary>What a place and the next two hold.</summary>
    internal (T, T, T) Three(int place)
    {
        var at = (uint)place % Run;
        if (at + 2 >= Run)
            return (this[place], this[place + 1], this[place + 2]);
        return runs[(uint)place / Run] is { } run ? (run[at], run[at + 1], run[at + 2]) : (nothing, nothing, nothing);
    }

    /// <summary>What a place and those after it hold; beyond the last one nothing.</summary>
    internal void Read(int place, Span<T> into)
    {
        while (!into.IsEmpty)
        {
            var at = (int)((uint)place % Run);
            var count = Math.Min(Run - at, into.Length);
            if ((uint)place / Run < (uint)runs.Length && runs[(uint)place / Run] is { } run)
                run.AsSpan(at, count).CopyTo(into);
            else
                into[..count].Fill(nothing);
            place += count;
            into = into[count..];
        }
    }

    /// <summary>A place to be changed.</summary>
    internal ref T At(int place)
    {
        var run = runs[(uint)place / Run] ?? Keep(ref runs[(uint)place / Run]);
        return ref run[(uint)place % Run];
    }

    /// <summary>Of two threads that come to a run at once both get the same one.</summary>
    private T[] Keep(ref T[]? run)
    {
        var made = new T[Run];
        Array.Fill(made, nothing);
        return Interlocked.CompareExchange(ref run, made, null) ?? made;
    }

    /// <summary>Whether the place is kept: where it is not, there is nothing.</summary>
    internal bool Keeps(int place) => runs[(uint)place / Run] is not null;
}
