namespace Splitter.Checking;

/// <summary>
/// Of two stops only the sentences that differ: most of them are the same at every stop of a kind.
/// </summary>
internal static class StopText
{
    internal static string Of(StopDifference stop)
    {
        if (stop is not { Before: { } before, After: { } after })
            return $": {Quoted(stop.After)}; before: {Quoted(stop.Before)}";
        var (was, now) = (Sentences(before), Sentences(after));
        var (gone, added) = (was.Except(now, StringComparer.Ordinal), now.Except(was, StringComparer.Ordinal));
        return (string.Join(". ", gone), string.Join(". ", added)) switch
        {
            ("", "") => $": {Quoted(after)}; before: {Quoted(before)}",
            ("", var more) => $": {Quoted(more)} as well",
            (var fewer, "") => $": no more {Quoted(fewer)}",
            var (old, other) => $": {Quoted(other)}; before: {Quoted(old)}",
        };
    }

    private static string[] Sentences(string stop) => stop.TrimEnd('.').Split(". ");

    private static string Quoted(string? stop) => stop is null ? "no stop" : $"'{stop.TrimEnd('.')}'";
}
