using System.Text.Json;
using Splitter.Cutting.Tapes;
using Splitter.Outputs.Tapes;
using Splitter.Parts;
using Splitter.Stitching;

namespace Splitter.Tests.Artwork.Tapes;

/// <summary>
/// Every stitch of a tape is in exactly one part, where it was: looked at from outside, on the tapes of the parts, with
/// the tests' own reader, and by what the parts say of their stitches.
/// </summary>
internal static class NothingLost
{
    /// <param name="width">That it is made, mm; its own if left out.</param>
    /// <param name="threads">For each colour block its thread; one each if left out.</param>
    internal static void Check(byte[] tape, PartSet set, int? width = null, int[]? threads = null)
    {
        var steps = PlainTape.Steps(tape);
        var all = steps.SelectMany(step => step).SelectMany(run => run).ToList();
        var (left, top) = (all.Min(p => p.U), all.Max(p => p.V));
        long own = all.Max(p => p.U) - left;
        var asked = width * 10 ?? own;
        // To whole micrometres, and from there to tenths; halves go to the right and down.
        int Scaled(int tenths) => (int)(((((200 * tenths * asked) + own) / (2 * own)) + 50) / 100);
        var original = steps
            .Select(step =>
                step.Select(run => run.Select(p => (X: Scaled(p.U - left), Y: Scaled(top - p.V))).ToList()).ToList()
            )
            .Where(step => step.Count > 0)
            .ToList();
        Tapes(original, set);
        Sources(original, threads ?? [.. original.Select((_, i) => i)], set);
    }

    /// <summary>Each stitch from hole to hole lies on the tape of some part, as often as it did.</summary>
    private static void Tapes(List<List<List<(int X, int Y)>>> original, PartSet set)
    {
        var files = set.Files.ToDictionary(f => f.Path.Split('/')[^1], f => f.Bytes.ToArray());
        using var manifest = JsonDocument.Parse(files["manifest.json"]);
        var sewn = new List<((int, int), (int, int))>();
        foreach (var part in manifest.RootElement.GetProperty("parts").EnumerateArray())
        foreach (
            var (step, runs) in part.GetProperty("steps")
                .EnumerateArray()
                .Zip(PlainTape.Steps(files[$"part-{part.GetProperty("letter").GetString()}.dst"]))
        )
            if (step.GetProperty("kind").GetString() == "body")
                sewn.AddRange(Stitches(runs.Select(run => run.Select(p => LaidBack.OnDrawing(part, p)).ToList())));
        var hoop = manifest.RootElement.GetProperty("hoop");
        foreach (var part in manifest.RootElement.GetProperty("parts").EnumerateArray())
        foreach (var (bound, i) in part.GetProperty("bounds_mm").EnumerateArray().Select((b, i) => (b.GetDouble(), i)))
            Assert.InRange(Math.Abs(bound), 0, hoop.GetProperty(i % 2 == 0 ? "width_mm" : "height_mm").GetDouble() / 2);
        var there = sewn.CountBy(s => s).ToDictionary();
        var asked = Stitches(original.SelectMany(step => step)).CountBy(s => s).ToList();
        // What is there as it was is taken first: halves of other stitches may look like it.
        var missing = asked.Select(s => (Stitch: s.Key, Count: s.Value - Take(s.Key, s.Value, there))).ToList();
        foreach (var (stitch, count) in missing)
            for (var i = 0; i < count; i++)
                Assert.True(TakeInTwo(stitch, there, 0), $"{stitch} is on the tape more often than in the parts");
        Assert.Equal(
            original.Sum(step => step.Sum(run => run.Count)),
            manifest
                .RootElement.GetProperty("parts")
                .EnumerateArray()
                .Sum(p => p.GetProperty("original_stitches").GetInt32())
        );
        Assert.Equal(
            original.Sum(step => step.Sum(run => run.Count)),
            manifest.RootElement.GetProperty("artwork").GetProperty("stitches").GetInt32()
        );
    }

    /// <summary>Takes a stitch away as often as it is there, up to a number; and says how often.</summary>
    private static int Take(
        ((int X, int Y) From, (int X, int Y) To) stitch,
        int most,
        Dictionary<((int, int), (int, int)), int> there
    )
    {
        var taken = Math.Min(most, there.GetValueOrDefault(stitch));
        there[stitch] = there.GetValueOrDefault(stitch) - taken;
        return taken;
    }

    /// <summary>
    /// A stitch that no field holds whole, or no record, is sewn as two, each of which may be two again, with a hole in
    /// its middle.
    /// </summary>
    private static bool TakeInTwo(
        ((int X, int Y) From, (int X, int Y) To) stitch,
        Dictionary<((int, int), (int, int)), int> there,
        int depth
    )
    {
        if (depth == 3)
            return false;
        var (x, y) = ((stitch.From.X + stitch.To.X) / 2, (stitch.From.Y + stitch.To.Y) / 2);
        foreach (var right in (ReadOnlySpan<int>)[0, 1, -1])
        foreach (var down in (ReadOnlySpan<int>)[0, 1, -1])
        {
            var middle = (X: x + right, Y: y + down);
            if (middle == stitch.From || middle == stitch.To)
                continue;
            var (one, other) = ((stitch.From, middle), (middle, stitch.To));
            var isWhole = Take(one, 1, there) == 1;
            if (!isWhole && !TakeInTwo(one, there, depth + 1))
                continue;
            if (Take(other, 1, there) == 1 || TakeInTwo(other, there, depth + 1))
                return true;
            there[one] += isWhole ? 1 : 0;
        }
        return false;
    }

    /// <summary>
    /// No hole is the tape's own in two parts; their thread adds up; each part keeps the tape's order and stops.
    /// </summary>
    private static void Sources(List<List<List<(int X, int Y)>>> original, int[] threads, PartSet set)
    {
        var holes = threads
            .Distinct()
            .Order()
            .Select(thread =>
                original
                    .Where((_, block) => threads[block] == thread)
                    .SelectMany(step => step.SelectMany(run => run))
                    .CountBy(h => h)
                    .ToDictionary()
            )
            .ToList();
        var kept = holes.Select(_ => new Dictionary<(int, int), int>()).ToList();
        var length = 0.0;
        foreach (var part in set.Parts)
        {
            var block = -1;
            foreach (var step in part.Steps.Where(s => s.Kind == StepKind.Body))
            {
                var own = NeedleWalk
                    .Of(part)
                    .Where(n => n.Step == step && n.Stitch.Source == StitchSource.Original)
                    .Select(n => (n.Stitch.At.X / 100, n.Stitch.At.Y / 100))
                    .ToList();
                // Blocks keep their order.
                var thread = int.Parse(step.Thread!.Name[1..]) - 1;
                block = Array.IndexOf(threads, thread, block + 1);
                Assert.True(block >= 0);
                foreach (var hole in own)
                    kept[thread][hole] = kept[thread].GetValueOrDefault(hole) + 1;
            }
            foreach (var stitches in part.Steps.SelectMany(s => s.Moves).Select(m => m.Block.Stitches))
                for (var i = 1; i < stitches.Length; i++)
                    // The way back from a tie to where the thread begins is no stitch of the tape.
                    if (
                        stitches[i].Source is StitchSource.Original or StitchSource.Divided
                        && stitches[i - 1] is not { Use: StitchUse.Tie, Source: StitchSource.Made }
                    )
                        length += stitches[i - 1].At.DistanceTo(stitches[i].At);
        }
        Assert.Equal(holes, kept);
        var asked = Stitches(original.SelectMany(step => step))
            .Sum(s => Math.Sqrt(Square(s.From.X - s.To.X) + Square(s.From.Y - s.To.Y)) * 100);
        Assert.Equal(asked, length, asked * 1e-9);
    }

    private static double Square(double x) => x * x;

    private static IEnumerable<((int X, int Y) From, (int X, int Y) To)> Stitches(
        IEnumerable<List<(int X, int Y)>> runs
    ) => runs.SelectMany(run => run.Zip(run.Skip(1)));
}
