using System.Collections.Immutable;
using Splitter.Geometry;
using Splitter.Outputs;
using Splitter.Parts;
using Splitter.Tapes;

namespace Splitter.Checking;

/// <summary>
/// A part of an earlier set against the same of a later one, shape by shape. A tape names no shapes, so its runs are
/// paired with those of the later part and take their names; then the distance between both, each way, says how far a
/// shape moved.
/// </summary>
internal static class PartComparer
{
    /// <summary>
    /// A run of the tape without a partner belongs to the shape whose stitches lie within this, µm: a fill that was
    /// sewn in one more run. Farther away, what it sewed is gone.
    /// </summary>
    private const double Near = 2 * Units.Millimetre;

    /// <summary>Null when nothing differs that a person at the machine would see.</summary>
    internal static PartDifference? Compare(string letter, SetSide old, SetSide now)
    {
        var (known, knownNow) = (old.Manifest.Part(letter), now.Manifest.Part(letter));
        var laid = now.FieldOf(letter);
        var lay = old.FieldOf(letter, laid);
        var sewsSame = TapeHeader.IsAllThatDiffers(old.Tape(letter), now.Tape(letter));
        var read = from before in old.Runs(letter, lay) from after in now.Runs(letter, laid) select (before, after);
        var (earlier, later) = read.TryGet(out var runs) ? runs : ([], []);
        var partner = RunPairing.Pair(earlier, later);
        var pairs = StepPairing.Pair(known.Steps, knownNow.Steps, earlier, later, partner);
        var both = pairs
            .Where(pair => pair is { Was: > 0, Now: > 0 })
            .Select(pair => (pair.Now, Was: known.Steps[pair.Was - 1], Is: knownNow.Steps[pair.Now - 1]))
            .ToList();
        var corners = Corners(known, knownNow);
        ImmutableArray<ThreadDifference> threads =
        [
            .. both.Where(step => step.Was.Thread is not null && step.Was.Thread != step.Is.Thread)
                .Select(step => new ThreadDifference(step.Now, step.Was.Thread, step.Is.Thread)),
        ];
        ImmutableArray<StopDifference> stops =
        [
            .. both.Where(step => step.Was.Stop != step.Is.Stop)
                .Select(step => new StopDifference(step.Now, step.Was.Stop, step.Is.Stop)),
        ];
        var otherSteps = OtherSteps(pairs, known, knownNow);
        if (
            sewsSame
            && lay.Centre == laid.Centre
            && lay.Turn == laid.Turn
            && corners.IsEmpty
            && threads.IsEmpty
            && stops.IsEmpty
            && otherSteps.IsEmpty
        )
            return null;
        var (shapes, gone) = Shapes(earlier, later, partner, known);
        var holes = NeedleHoles.Of(earlier, later);
        return new()
        {
            Letter = letter,
            StitchesBefore = earlier.Sum(r => r.Points.Length),
            StitchesAfter = later.Sum(r => r.Points.Length),
            StitchesAdded = holes.New,
            StitchesRemoved = holes.Gone,
            FieldMovedMm = Millimetres(lay.Centre.DistanceTo(laid.Centre)),
            TurnBefore = (int)lay.Turn,
            TurnAfter = (int)laid.Turn,
            Shapes = shapes,
            Gone = gone,
            Threads = threads,
            Corners = corners,
            StepsBefore = known.Steps.Length,
            StepsAfter = knownNow.Steps.Length,
            OtherSteps = otherSteps,
            OtherStops = stops,
            Unreadable = read.Succeeded ? null : read.Diagnostics[0].Message,
        };
    }

    /// <summary>Of a part whose manifest is not known on one side, nothing is said.</summary>
    private static ImmutableArray<CornerDifference> Corners(KnownPart was, KnownPart now) =>
        was.Steps.IsEmpty || now.Steps.IsEmpty
            ? []
            :
            [
                .. was
                    .Corners.Keys.Union(now.Corners.Keys, StringComparer.Ordinal)
                    .Order(StringComparer.Ordinal)
                    .Select(id =>
                        was.Corners.TryGetValue(id, out var from) && now.Corners.TryGetValue(id, out var to)
                            ? new CornerDifference(id, Millimetres(from.DistanceTo(to)), IsNew: false)
                            : new CornerDifference(id, null, now.Corners.ContainsKey(id))
                    )
                    .Where(corner => corner.MovedMm is null or > 0),
            ];

    /// <summary>Of a part whose manifest is not known on one side, nothing is said.</summary>
    private static ImmutableArray<StepDifference> OtherSteps(
        ImmutableArray<StepPair> pairs,
        KnownPart was,
        KnownPart now
    ) =>
        was.Steps.IsEmpty || now.Steps.IsEmpty
            ? []
            :
            [
                .. pairs
                    .Where(pair => pair.Was == 0 || pair.Now == 0)
                    .Select(pair =>
                        pair.Was == 0
                            ? new StepDifference(pair.Now, now.Steps[pair.Now - 1].Thread, IsNew: true)
                            : new StepDifference(pair.Was, was.Steps[pair.Was - 1].Thread, IsNew: false)
                    ),
            ];

    private static (ImmutableArray<ShapeDifference>, ImmutableArray<GoneStitches>) Shapes(
        ImmutableArray<SewnRun> before,
        ImmutableArray<SewnRun> after,
        int[] partner,
        KnownPart known
    )
    {
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
                gone.Add(Gone(run, known));
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

    private static GoneStitches Gone(SewnRun run, KnownPart known)
    {
        var at = run.Bounds.Centre;
        var kind = run.Step <= known.Steps.Length ? known.Steps[run.Step - 1].Kind : null;
        var corner =
            kind == Words.Of(StepKind.Corners) || kind == Words.Of(StepKind.NextCorners)
                ? known.Corners.OrderBy(c => c.Value.DistanceTo(at)).Select(c => c.Key).FirstOrDefault()
                : null;
        return new(
            run.Points.Length,
            Millimetres(at.X),
            Millimetres(at.Y),
            corner is null ? run.Shapes[0] : CornerDifference.MarkOf(corner)
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
