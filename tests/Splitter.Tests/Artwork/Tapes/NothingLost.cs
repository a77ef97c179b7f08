using System.Text.Json;
using Splitter.Cutting.Tapes;
using Splitter.Outputs.Tapes;
using Splitter.Parts;

namespace Splitter.Tests.Artwork.Tapes;

/// <summary>
/// Every stitch of a tape is in exactly one part, where it was: looked at from outside, on the tapes of the parts, with
/// the tests' own reader, and by what the parts say of their stitches.
/// </summary>
internal static class NothingLost
{
    internal static void Check(byte[] tape, PartSet set)
    {
        var steps = PlainTape.Steps(tape);
        var all = steps.SelectMany(step => step).SelectMany(run => run).ToList();
        var (left, top) = (all.Min(p => p.U), all.Max(p => p.V));
        var original = steps
            .Select(step => step.Select(run => run.Select(p => (X: p.U - left, Y: top - p.V)).ToList()).ToList())
            .ToList();
        Tapes(original, set);
        Sources(original, set);
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
        foreach (var (stitch, count) in Stitches(original.SelectMany(step => step)).CountBy(s => s))
            Assert.True(
                there.GetValueOrDefault(stitch) >= count || IsThereInTwo(stitch, there, 0),
                $"{stitch} is {count} times on the tape and {there.GetValueOrDefault(stitch)} times in the parts"
            );
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

    /// <summary>
    /// A stitch that no field holds whole is sewn as two, or as two of which one is, with a hole in its middle.
    /// </summary>
    private static bool IsThereInTwo(
        ((int X, int Y) From, (int X, int Y) To) stitch,
        Dictionary<((int, int), (int, int)), int> there,
        int depth
    ) =>
        depth < 3
        && there.Keys.Any(first =>
            first.Item1 == stitch.From
            && first.Item2 is var (x, y)
            && Math.Abs((2 * x) - stitch.From.X - stitch.To.X) <= 1
            && Math.Abs((2 * y) - stitch.From.Y - stitch.To.Y) <= 1
            && (there.ContainsKey(((x, y), stitch.To)) || IsThereInTwo(((x, y), stitch.To), there, depth + 1))
        );

    /// <summary>
    /// No hole is the tape's own in two parts; their thread adds up; each part keeps the tape's order and stops.
    /// </summary>
    private static void Sources(List<List<List<(int X, int Y)>>> original, PartSet set)
    {
        var holes = original
            .Select(step => step.SelectMany(run => run).CountBy(h => h).ToDictionary())
            .Where(s => s.Count > 0)
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
                // A thread stands for one colour block here, and blocks keep their order.
                var next = int.Parse(step.Thread!.Name[1..]) - 1;
                Assert.True(next > block);
                block = next;
                foreach (var hole in own)
                    kept[block][hole] = kept[block].GetValueOrDefault(hole) + 1;
            }
            foreach (var stitches in part.Steps.SelectMany(s => s.Moves).Select(m => m.Block.Stitches))
                for (var i = 1; i < stitches.Length; i++)
                    if (stitches[i].Source is StitchSource.Original or StitchSource.Divided)
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
