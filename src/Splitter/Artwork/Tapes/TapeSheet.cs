using System.Collections.Immutable;
using Splitter.Geometry;
using Splitter.Tapes;

namespace Splitter.Artwork.Tapes;

/// <summary>Needle holes between two moves.</summary>
/// <param name="Holes">On the drawing.</param>
/// <param name="Records">For each the number of the record that makes it.</param>
internal sealed record TapeThread(ImmutableArray<Point> Holes, ThreadArrival Start, ImmutableArray<int> Records);

/// <summary>What a tape sews without a stop.</summary>
/// <param name="Number">From 1; blocks without a stitch have none.</param>
internal sealed record ColourBlock(int Number, ImmutableArray<TapeThread> Threads);

/// <summary>A tape laid on the drawing: its outermost holes touch the edges.</summary>
/// <param name="EmptyStops">Stops with nothing sewn since the one before.</param>
internal sealed record TapeSheet(int Width, int Height, ImmutableArray<ColourBlock> Blocks, int EmptyStops)
{
    /// <summary>
    /// A move that is longer than this, µm, and no stitch, is cut by hand where the machine does not: so it is when the
    /// thread is tied before it. Common practice, no source.
    /// </summary>
    private const int LongestAfterTie = 2 * Units.Millimetre;

    /// <summary>Stitches that tie are shorter than this, µm. Common practice, no source: 0.6 to 0.8 mm.</summary>
    internal const int LongestTie = 1200;

    /// <summary>The fewest stitches that tie.</summary>
    private const int TieStitches = 3;

    /// <param name="width">Finished width, µm; null for its own.</param>
    internal static TapeSheet Of(Tape tape, int? width = null)
    {
        var bounds = TapeCounts.Of(tape).Bounds;
        var own = OwnWidth(bounds);
        var scale = width is { } asked && own > 0 ? (double)asked / own : 1;
        var reader = new Reading(tape.Blank, bounds.Left, bounds.Top, scale);
        foreach (var record in tape.Records)
            reader.Take(record);
        reader.Stop();
        return new(
            Scaled(bounds.Right - bounds.Left, scale),
            Scaled(bounds.Top - bounds.Bottom, scale),
            [.. reader.Blocks],
            reader.EmptyStops
        );
    }

    /// <summary>µm.</summary>
    internal static int OwnWidth(TapeBox bounds) => (bounds.Right - bounds.Left) * Units.TapeStep;

    /// <summary>Steps of the tape to µm on its grid.</summary>
    private static int Scaled(int steps, double scale) => Units.OnTape(Units.Round(steps * Units.TapeStep * scale));

    /// <summary>Where the needle is while records are read.</summary>
    private sealed class Reading(ImmutableArray<int> blank, int left, int top, double scale)
    {
        private readonly List<TapeThread> threads = [];
        private readonly List<Point> holes = [];
        private readonly List<int> records = [];

        /// <summary>Numbers of holes that it came to over jumps, since the thread was cut.</summary>
        private readonly List<int> moved = [];
        private int u,
            v,
            record,
            passedOver,
            jumps;

        internal List<ColourBlock> Blocks { get; } = [];

        internal int EmptyStops { get; private set; }

        internal void Take(TapeRecord next)
        {
            for (record++; passedOver < blank.Length && blank[passedOver] == record; record++)
                passedOver++;
            (u, v) = (u + next.U, v + next.V);
            switch (next.Command)
            {
                case TapeCommand.Stop:
                    Stop();
                    break;
                case TapeCommand.Jump:
                    jumps++;
                    break;
                default:
                    Sew(new(Scaled(u - left, scale), Scaled(top - v, scale)));
                    break;
            }
        }

        internal void Stop()
        {
            End();
            if (threads.Count > 0)
                Blocks.Add(new(Blocks.Count + 1, [.. threads]));
            else
                EmptyStops++;
            threads.Clear();
            jumps = 0;
        }

        private void Sew(Point at)
        {
            if (jumps > 0 && holes.Count > 0)
            {
                if (jumps >= TapeRecord.TrimJumps || (IsTied() && holes[^1].DistanceTo(at) > LongestAfterTie))
                    End();
                else
                    moved.Add(holes.Count);
            }
            holes.Add(at);
            records.Add(record);
            jumps = 0;
        }

        private void End()
        {
            var from = 0;
            foreach (var to in holes.Count == 0 ? [] : LongStitches.Moves([.. holes], [.. moved]).Add(holes.Count))
            {
                threads.Add(
                    new(
                        [.. holes[from..to]],
                        from == 0 ? ThreadArrival.Cut : ThreadArrival.Loose,
                        [.. records[from..to]]
                    )
                );
                from = to;
            }
            holes.Clear();
            records.Clear();
            moved.Clear();
        }

        /// <summary>The last stitches are short, and lead to and fro.</summary>
        private bool IsTied()
        {
            if (holes.Count - moved.LastOrDefault() <= TieStitches)
                return false;
            var (length, last) = (0.0, holes[^(TieStitches + 1)]);
            foreach (var hole in holes.Skip(holes.Count - TieStitches))
            {
                if (last.DistanceTo(hole) > LongestTie)
                    return false;
                (length, last) = (length + last.DistanceTo(hole), hole);
            }
            return length >= 2 * holes[^(TieStitches + 1)].DistanceTo(last);
        }
    }
}
