using System.Collections.Immutable;
using Splitter.Diagnostics;
using Splitter.Geometry;
using Splitter.Recipes.Language;

namespace Splitter.Correcting;

/// <summary>Measured offsets as they are said in a call: <c>1 0.6 mm right 0.2 mm down 2 0.1 mm left</c>.</summary>
internal static class OffsetWords
{
    private static readonly ImmutableDictionary<string, (int Right, int Up)> Ways = ImmutableDictionary
        .Create<string, (int, int)>(StringComparer.Ordinal)
        .Add("right", (1, 0))
        .Add("left", (-1, 0))
        .Add("up", (0, 1))
        .Add("down", (0, -1));

    private static readonly ImmutableDictionary<string, int> Lengths = ImmutableDictionary
        .Create<string, int>(StringComparer.Ordinal)
        .Add("mm", Units.Millimetre)
        .Add("cm", 10 * Units.Millimetre)
        .Add("in", Units.Inch);

    /// <summary>A place, then one or two lengths with their way; and so on.</summary>
    internal static Result<ImmutableArray<MeasuredOffset>> Read(IEnumerable<string> given, Place call)
    {
        var words = new Queue<string>(
            given.SelectMany(text => text.Split((char[])[' ', ',', '\t'], StringSplitOptions.RemoveEmptyEntries))
        );
        var offsets = ImmutableArray.CreateBuilder<MeasuredOffset>();
        while (words.TryDequeue(out var at))
        {
            var offset = new MeasuredOffset(at, 0, 0, call);
            var axes = new HashSet<bool>();
            while (TakeLength(words) is { } length)
            {
                // One length sideways and one upwards, as in a file.
                if (
                    !words.TryDequeue(out var word)
                    || !Ways.TryGetValue(word, out var way)
                    || !axes.Add(way.Right != 0)
                )
                    return NotUnderstood(call, at);
                offset = offset with
                {
                    Right = offset.Right + (way.Right * length),
                    Up = offset.Up + (way.Up * length),
                };
            }
            // A way follows a length only, never the number of a cross.
            if (words.TryPeek(out var number) && IsBare(number) && Ways.ContainsKey(words.ElementAtOrDefault(1) ?? ""))
                return Result.Fail<ImmutableArray<MeasuredOffset>>(
                    CorrectionProblems.NoUnit(call, at, number, words.ElementAt(1))
                );
            if (axes.Count == 0)
                return NotUnderstood(call, at);
            offsets.Add(offset);
        }
        return Result.Of(offsets.ToImmutable());
    }

    /// <summary>A number and its unit, in one word or two; null when something else comes next.</summary>
    private static int? TakeLength(Queue<string> words)
    {
        if (!words.TryPeek(out var first) || !Quantity.TryParse(first, out var quantity))
            return null;
        var two = quantity.Unit.Length == 0;
        // A bare number is a length if a unit follows it, else the number of a cross.
        var unit = two ? words.Skip(1).FirstOrDefault() ?? "" : quantity.Unit;
        if (!Lengths.TryGetValue(unit, out var factor) || quantity.Number < 0 || quantity.Number > 1000)
            return null;
        words.Dequeue();
        if (two)
            words.Dequeue();
        return (int)decimal.Round(quantity.Number * factor, MidpointRounding.AwayFromZero);
    }

    private static bool IsBare(string word) => Quantity.TryParse(word, out var quantity) && quantity.Unit.Length == 0;

    private static Result<ImmutableArray<MeasuredOffset>> NotUnderstood(Place call, string at) =>
        Result.Fail<ImmutableArray<MeasuredOffset>>(CorrectionProblems.NotUnderstood(call, at));
}
