using System.Collections.Immutable;
using Splitter.Diagnostics;
using Splitter.Geometry;
using Splitter.Recipes.Language;

namespace Splitter.Correcting;

/// <summary>Measured offsets as they are said in a call: <c>1 0.6 mm right 0.2 mm down 2 0.1 mm left</c>.</summary>
internal sealed class OffsetWords
{
    /// <summary>A larger number is no length that was measured, whatever its unit.</summary>
    private const int Most = 1000;

    private static readonly ImmutableArray<string> WayNames = ["right", "left", "up", "down"];

    private static readonly ImmutableDictionary<string, int> Lengths = ImmutableDictionary
        .Create<string, int>(StringComparer.Ordinal)
        .Add("mm", Units.Millimetre)
        .Add("cm", 10 * Units.Millimetre)
        .Add("in", Units.Inch);

    private readonly ImmutableArray<string> words;
    private int next;

    private OffsetWords(IEnumerable<string> given) =>
        words = [
            .. given
                .SelectMany(text => text.Split((char[])[' ', '\t'], StringSplitOptions.RemoveEmptyEntries))
                .Select(word => word.TrimEnd(','))
                .Where(word => word.Length > 0),
        ];

    /// <summary>A place, then one or two lengths with their way; and so on.</summary>
    internal static Result<ImmutableArray<MeasuredOffset>> Read(IEnumerable<string> given, Place call)
    {
        var reader = new OffsetWords(given);
        var offsets = ImmutableArray.CreateBuilder<MeasuredOffset>();
        while (reader.Word(0) is { } at)
        {
            reader.next++;
            if (reader.Ways(at, call, out var offset) is { } problem)
                return Result.Fail<ImmutableArray<MeasuredOffset>>(problem);
            offsets.Add(offset);
        }
        return Result.Of(offsets.ToImmutable());
    }

    private string? Word(int ahead) => next + ahead < words.Length ? words[next + ahead] : null;

    /// <summary>One length sideways and one upwards, as in a file.</summary>
    private Diagnostic? Ways(string at, Place call, out MeasuredOffset offset)
    {
        offset = new(at, 0, 0, call);
        var (sideways, upwards) = ("", "");
        while (true)
        {
            if (Length(out var length, out var count) is { } wrong)
                return CorrectionProblems.NotUnderstood(call, at, wrong);
            if (count == 0)
                break;
            next += count;
            if (Word(0) is not { } way || !WayNames.Contains(way))
                return CorrectionProblems.NotUnderstood(call, at, NoWay(Word(0)));
            next++;
            ref var axis = ref (way is "right" or "left" ? ref sideways : ref upwards);
            if (axis.Length > 0)
                return CorrectionProblems.NotUnderstood(
                    call,
                    at,
                    $"'{axis}' and then '{way}'; an offset lies to one side, so leave one of the two out"
                );
            axis = way;
            offset = way switch
            {
                "right" => offset with { Right = length },
                "left" => offset with { Right = -length },
                "up" => offset with { Up = length },
                _ => offset with { Up = -length },
            };
        }
        offset = offset with { IsOneWay = sideways.Length == 0 || upwards.Length == 0 };
        // A way follows a length only, never the number of a cross.
        if (Word(0) is { } number && IsBare(number) && Word(1) is { } after && WayNames.Contains(after))
            return CorrectionProblems.NoUnit(call, at, number, after);
        return sideways.Length + upwards.Length > 0
            ? null
            : CorrectionProblems.NotUnderstood(
                call,
                at,
                Word(0) is { } other ? $"'{other}' is no length, such as 0.6 mm" : "nothing follows"
            );
    }

    private static string NoWay(string? word) =>
        word is null
            ? "it does not say which way; add right, left, up or down"
            : $"'{word}' is no way; {Words.Instead(word, WayNames, "write", "or")}";

    /// <summary>
    /// A number and its unit, in one word or two; no words where something else comes next. Says what is wrong with
    /// what was meant for a length.
    /// </summary>
    private string? Length(out int length, out int count)
    {
        (length, count) = (0, 0);
        if (Word(0) is not { } first)
            return null;
        if (first is ['-' or '+', ..])
            return $"'{first}' has a sign; write the length alone, and right, left, up or down after its unit";
        if (Quantity.WithPoint(first) is var plain && plain != first)
            return $"'{first}' has a comma; write '{plain}'";
        if (!Quantity.TryParse(first, out var quantity))
            return null;
        var isTwo = quantity.Unit.Length == 0;
        // A bare number is a length if a unit follows it, else the number of a cross.
        var unit = isTwo ? Word(1) ?? "" : quantity.Unit;
        if (!Lengths.TryGetValue(unit, out var factor))
        {
            // Nor is it one where the next word is a length itself, number and unit in one.
            var isMeant =
                !isTwo
                || (unit.Length > 0 && !Quantity.TryParse(unit, out _) && Word(2) is { } way && WayNames.Contains(way));
            return isMeant ? $"'{unit}' is no unit; write mm, cm or in" : null;
        }
        if (quantity.Number > Most)
            return $"'{first}' is more than can be meant";
        (length, count) = ((int)decimal.Round(quantity.Number * factor, MidpointRounding.AwayFromZero), isTwo ? 2 : 1);
        return null;
    }

    private static bool IsBare(string word) => Quantity.TryParse(word, out var quantity) && quantity.Unit.Length == 0;
}
