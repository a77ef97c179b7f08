using System.Collections.Immutable;

namespace Splitter.Recipes.Language;

/// <summary>Lists of words in messages, and the nearest of several words.</summary>
internal static class Words
{
    /// <summary>No word of the language is longer; it bounds the work on hostile input.</summary>
    private const int LongestWord = 30;

    /// <summary><c>a, b or c</c>.</summary>
    internal static string List(IEnumerable<string> words, string and)
    {
        var all = words.ToArray();
        return all.Length < 2 ? string.Concat(all) : $"{string.Join(", ", all[..^1])} {and} {all[^1]}";
    }

    /// <summary>What to write in place of a word: the nearest one, or all there are.</summary>
    /// <param name="all">What they are called: <c>the keys here are</c>.</param>
    internal static string Instead(string word, ImmutableArray<string> known, string all, string and) =>
        Nearest(word, known) is { } nearest ? $"did you mean '{nearest}'?" : $"{all} {List(known, and)}";

    /// <summary>
    /// The word that was probably meant; null when none is near: at most one letter in three differs.
    /// </summary>
    internal static string? Nearest(string word, IEnumerable<string> known)
    {
        if (word.Length > LongestWord)
            return null;
        var nearest = known
            .Where(k => k.Length <= 2 * LongestWord)
            .Select(k => (Word: k, Distance: Distance(word.ToLowerInvariant(), k)))
            .DefaultIfEmpty((Word: "", Distance: int.MaxValue))
            .MinBy(k => k.Distance);
        return nearest.Distance <= Math.Max(1, Math.Max(word.Length, nearest.Word.Length) / 3) ? nearest.Word : null;
    }

    /// <summary>
    /// Letters put in, left out, changed or swapped with their neighbour on the way from one word to the other (the
    /// optimal string alignment distance).
    /// </summary>
    internal static int Distance(string a, string b)
    {
        var d = new int[a.Length + 1, b.Length + 1];
        for (var i = 0; i <= a.Length; i++)
            d[i, 0] = i;
        for (var j = 0; j <= b.Length; j++)
            d[0, j] = j;
        for (var i = 1; i <= a.Length; i++)
        {
            for (var j = 1; j <= b.Length; j++)
            {
                var change = d[i - 1, j - 1] + (a[i - 1] == b[j - 1] ? 0 : 1);
                d[i, j] = Math.Min(Math.Min(d[i - 1, j] + 1, d[i, j - 1] + 1), change);
                if (i > 1 && j > 1 && a[i - 1] == b[j - 2] && a[i - 2] == b[j - 1])
                    d[i, j] = Math.Min(d[i, j], d[i - 2, j - 2] + 1);
            }
        }
        return d[a.Length, b.Length];
    }
}
