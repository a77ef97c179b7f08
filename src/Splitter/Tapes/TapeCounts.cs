using System.Collections.Immutable;

namespace Splitter.Tapes;

/// <summary>A box on a tape, steps of 0.1 mm.</summary>
internal readonly record struct TapeBox(int Left, int Bottom, int Right, int Top);

/// <summary>What a tape holds, counted from its records alone.</summary>
internal sealed record TapeCounts
{
    internal required int Stitches { get; init; }

    internal required int Jumps { get; init; }

    /// <summary>
    /// Runs of jumps that cut a thread. A run right after a stop is none: the thread is off already.
    /// </summary>
    internal required int Trims { get; init; }

    internal required int Stops { get; init; }

    /// <summary>Around all stitches; a point at the centre when there are none.</summary>
    internal required TapeBox Bounds { get; init; }

    /// <summary>
    /// The longest sewn stitch, steps of 0.1 mm: from one penetration to the next without a jump between.
    /// </summary>
    internal required double Longest { get; init; }

    /// <summary>Stitches of each step.</summary>
    internal required ImmutableArray<int> Steps { get; init; }

    /// <summary>Trims of each step.</summary>
    internal required ImmutableArray<int> StepTrims { get; init; }

    internal static TapeCounts Of(Tape tape)
    {
        var (u, v, jumps, inRow) = (0, 0, 0, 0);
        var (left, bottom, right, top) = (int.MaxValue, int.MaxValue, int.MinValue, int.MinValue);
        var longest = 0.0;
        var (steps, trims) = (new List<int> { 0 }, new List<int> { 0 });
        foreach (var record in tape.Records)
        {
            (u, v) = (u + record.U, v + record.V);
            switch (record.Command)
            {
                case TapeCommand.Stop:
                    steps.Add(0);
                    trims.Add(0);
                    inRow = 0;
                    break;
                case TapeCommand.Jump:
                    jumps++;
                    inRow++;
                    trims[^1] += inRow == TapeRecord.TrimJumps && steps[^1] > 0 ? 1 : 0;
                    break;
                default:
                    if (inRow == 0 && steps[^1] > 0)
                        longest = Math.Max(
                            longest,
                            Math.Sqrt(((double)record.U * record.U) + ((double)record.V * record.V))
                        );
                    steps[^1]++;
                    inRow = 0;
                    (left, right) = (Math.Min(left, u), Math.Max(right, u));
                    (bottom, top) = (Math.Min(bottom, v), Math.Max(top, v));
                    break;
            }
        }
        var stitches = steps.Sum();
        return new()
        {
            Stitches = stitches,
            Jumps = jumps,
            Trims = trims.Sum(),
            Stops = steps.Count - 1,
            Bounds = stitches == 0 ? default : new(left, bottom, right, top),
            Longest = longest,
            Steps = [.. steps],
            StepTrims = [.. trims],
        };
    }
}
