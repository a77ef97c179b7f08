using System.Collections.Immutable;
using Splitter.Geometry;
using Splitter.Outputs.Tapes;
using Splitter.Parts;

namespace Splitter.Checking;

/// <summary>
/// A tape on disk against a part as it is now, shape by shape. A tape names no shapes, so its runs are paired with those of
/// the part and take their names; then the distance between both, each way, says how far a shape moved.
/// </summary>
internal static class PartComparer
{
    /// <summary>
    /// A run of the tape without a partner belongs to the shape whose stitches lie within this, µm: a fill that was sewn in
    /// one more run. Farther away, what it sewed is gone.
    /// </summary>
    private const double Near = 2 * Units.Millimetre;

    internal static PartDifference Compare(Part part, OldPart old, byte[] bytes)
    {
        var read = TapeReader.Read($"part-{part.Letter}.dst", bytes);
        var field = part.Field with { Centre = old.Centre ?? part.Field.Centre, Turn = old.Turn ?? part.Field.Turn };
        var after = SewnRun.Of(part);
        var before = read.TryGet(out var tape) ? SewnRun.Of(tape, field) : [];
        var (shapes, gone) = read.Succeeded ? Shapes(before, after) : ([], []);
        return new()
        {
            Letter = part.Letter,
            StitchesBefore = before.Sum(r => r.Points.Length),
            StitchesAfter = after.Sum(r => r.Points.Length),
            FieldMovedMm = Millimetres(field.Centre.DistanceTo(part.Field.Centre)),
            TurnBefore = (int)field.Turn,
            TurnAfter = (int)part.Field.Turn,
            Shapes = shapes,
            Gone = gone,
            Threads = old.ThreadsOf(part),
            Unreadable = read.Succeeded ? null : read.Diagnostics[0].Message,
        };
    }

    private static (ImmutableArray<ShapeDifference>, ImmutableArray<GoneStitches>) Shapes(
        ImmutableArray<SewnRun> before,
        ImmutableArray<SewnRun> after
    )
    {
        var partner = RunPairing.Pair(before, after);
        var same = Enumerable
            .Range(0, before.Length)
            .Where(i => partner[i] >= 0 && before[i].Points.AsSpan().SequenceEqual(after[partner[i]].Points.AsSpan()))
            .ToHashSet();
        var kept = same.Select(i => partner[i]).ToHashSet();
        var now = after.Where((_, i) => !kept.Contains(i)).SelectMany(Named).ToList();
        var was = new List<(Point At, string Shape)>();
        var gone = ImmutableArray.CreateBuilder<GoneStitches>();
        var anywhere = new NearestPoint(now);
        for (var i = 0; i < before.Length; i++)
        {
            if (same.Contains(i))
                continue;
            var run = before[i];
            if (partner[i] >= 0)
            {
                var beside = new NearestPoint(Named(after[partner[i]]));
                was.AddRange(run.Points.Select(p => (p, beside.To(p).Shape)));
            }
            else if (run.Points.Max(p => anywhere.To(p).Distance) <= Near)
                was.AddRange(run.Points.Select(p => (p, anywhere.To(p).Shape)));
            else
                gone.Add(new(run.Points.Length, Millimetres(run.Bounds.Centre.X), Millimetres(run.Bounds.Centre.Y)));
        }
        return (
            [
                .. now.Select(n => n.Shape)
                    .Distinct(StringComparer.Ordinal)
                    .Select(shape =>
                        Difference(shape, [.. was.Where(w => w.Shape == shape)], [.. now.Where(n => n.Shape == shape)])
                    ),
            ],
            gone.ToImmutable()
        );
    }

    private static IEnumerable<(Point At, string Shape)> Named(SewnRun run) =>
        run.Points.Select((p, i) => (p, run.Shapes[i]));

    private static ShapeDifference Difference(
        string shape,
        ImmutableArray<(Point At, string Shape)> was,
        ImmutableArray<(Point At, string Shape)> now
    )
    {
        if (was.IsEmpty)
            return new(shape, null, 0, now.Length);
        var (from, to) = (new NearestPoint(was), new NearestPoint(now));
        var moved = Math.Max(now.Max(p => from.To(p.At).Distance), was.Max(p => to.To(p.At).Distance));
        return new(shape, Millimetres(moved), was.Length, now.Length);
    }

    private static double Millimetres(double micrometres) =>
        Math.Round(micrometres / Units.Millimetre, 2, MidpointRounding.AwayFromZero);
}
