using CsCheck;
using Xunit.Sdk;

namespace Splitter.Tests;

/// <summary>
/// Laws that must hold for every input. Every run draws the same cases, so a test that passed keeps passing until the code
/// changes. <c>SPLITTER_EXPLORE=N</c> draws N times as many from fresh seeds instead and makes a failing case as small as
/// it can; <c>CsCheck_Seed</c> repeats the one that it names. What is found so becomes a fixed example of its own.
/// </summary>
internal static class Property
{
    /// <summary>Where all cases come from: the first digits of the golden ratio. Any other number would do.</summary>
    private const ulong Seed = 1_618_033_988;

    /// <summary>Enough for laws that take no time.</summary>
    private const int Some = 100;

    /// <summary>How many times as much is asked for, if anything is.</summary>
    internal static int? Exploring { get; } =
        int.TryParse(Environment.GetEnvironmentVariable("SPLITTER_EXPLORE"), out var times) ? times : null;

    /// <summary>The first cases of a generator, the same on every run; with the seed that draws each.</summary>
    internal static IEnumerable<(T Case, string Seed)> Drawn<T>(this Gen<T> gen, int cases)
    {
        var random = new PCG(stream: 1, Seed);
        for (var i = 0; i < cases; i++)
        {
            var seed = random.ToString();
            yield return (gen.Generate(random, null, out _), seed);
        }
    }

    internal static void Holds<T>(this Gen<T> gen, Action<T> assert, int cases = Some, Func<T, string>? print = null)
    {
        // One thread: a law may count over its cases.
        if (Exploring is { } times)
        {
            gen.Sample(assert, iter: (long)times * cases, threads: 1, print: print ?? CasePrint.Of);
            return;
        }
        foreach (var (drawn, seed) in gen.Drawn(cases))
            try
            {
                assert(drawn);
            }
            catch (Exception e)
            {
                throw new XunitException($"does not hold for (seed {seed})\n{(print ?? CasePrint.Of)(drawn)}", e);
            }
    }

    internal static void Holds<T>(
        this Gen<T> gen,
        Func<T, bool> holds,
        int cases = Some,
        Func<T, string>? print = null
    ) => gen.Holds((T t) => Assert.True(holds(t)), cases, print);

    internal static void Holds<T1, T2>(this Gen<(T1, T2)> gen, Action<T1, T2> assert, int cases = Some) =>
        gen.Holds(((T1, T2) t) => assert(t.Item1, t.Item2), cases);

    internal static void Holds<T1, T2, T3>(this Gen<(T1, T2, T3)> gen, Action<T1, T2, T3> assert, int cases = Some) =>
        gen.Holds(((T1, T2, T3) t) => assert(t.Item1, t.Item2, t.Item3), cases);

    internal static void Holds<T1, T2, T3, T4>(
        this Gen<(T1, T2, T3, T4)> gen,
        Action<T1, T2, T3, T4> assert,
        int cases = Some
    ) => gen.Holds(((T1, T2, T3, T4) t) => assert(t.Item1, t.Item2, t.Item3, t.Item4), cases);
}
