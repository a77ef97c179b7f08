using System.Collections.Immutable;

namespace Splitter.Texts;

/// <summary>
/// Amounts of a table in whole numbers that add up: their sum is rounded up and shared out by the largest remainders,
/// as seats are (Hamilton's method, from memory).
/// </summary>
/// <param name="All">What the rows add up to.</param>
internal sealed record Summed(ImmutableArray<string> Rows, string All)
{
    internal static Summed Of(IEnumerable<double> amounts, Func<int, string> say)
    {
        var shares = Shares([.. amounts]);
        return new([.. shares.Select(say)], say(shares.Sum()));
    }

    /// <summary>Of very many small amounts the sum may become larger: what is there is never told as nothing.</summary>
    internal static ImmutableArray<int> Shares(ImmutableArray<double> amounts)
    {
        var shares = amounts.Select(a => Math.Max((int)Math.Floor(a), a > 0 ? 1 : 0)).ToArray();
        var rest = (int)Math.Ceiling(amounts.Sum()) - shares.Sum();
        foreach (var i in Enumerable.Range(0, shares.Length).OrderByDescending(i => amounts[i] - shares[i]))
            if (rest-- > 0)
                shares[i]++;
        return [.. shares];
    }
}
