using System.Collections.Immutable;
using Splitter.Artwork;
using Splitter.Artwork.Tapes;
using Splitter.Geometry;
using Splitter.Planning;

namespace Splitter.Cutting.Tapes;

/// <summary>
/// Divides artwork that came as stitches: every one of them goes to exactly one hooping and stays where it is. A shape
/// that has an owner goes there as it is; others are divided stitch by stitch.
/// </summary>
internal sealed class TapeCutter
{
    private readonly ImmutableArray<Reach> reaches;
    private readonly StitchOwners owners;
    private readonly ImmutableArray<Stretches> stretches;

    /// <summary>For each hooping what lies over the shape that is divided.</summary>
    private readonly ImmutableArray<FinishedWork> finished;

    private TapeCutter(Plan plan, ImmutableArray<Region> territories, ImmutableArray<Reach> reaches)
    {
        finished = [.. plan.Hoopings.Select(h => new FinishedWork(h.Ground))];
        (this.reaches, owners) = (reaches, new(plan, territories, finished));
        stretches = [.. reaches.Select((reach, i) => new Stretches(owners, reach, finished[i], i))];
    }

    /// <summary>Pieces by hooping, then in the tape's sewing order.</summary>
    internal static ImmutableArray<Piece> Cut(
        Drawing drawing,
        Plan plan,
        ImmutableArray<Region> territories,
        ImmutableArray<Reach> reaches
    )
    {
        var cutter = new TapeCutter(plan, territories, reaches);
        var pieces = plan.Hoopings.Select(_ => new List<KeptPiece>()).ToArray();
        // What lies over a shape is known before it is divided.
        for (var i = drawing.Shapes.Length - 1; i >= 0; i--)
        {
            ImmutableArray<KeptPiece> of = [.. cutter.Pieces(drawing.Shapes[i], plan.Owners[i])];
            foreach (var piece in of)
            {
                pieces[piece.Hooping].Add(piece);
                cutter.Finish(piece);
            }
        }
        var ends = new ThreadEnds([.. drawing.Shapes.SelectMany(s => s.Original)]);
        return [.. pieces.SelectMany(kept => ends.Settle(InTapeOrder(kept)))];
    }

    /// <summary>A piece lies over the shapes below it from now on.</summary>
    private void Finish(KeptPiece piece)
    {
        var bounds = piece.Bounds;
        ImmutableArray<FinishedWork> later = [.. finished[(piece.Hooping + 1)..].Where(f => f.Reaches(bounds))];
        foreach (var thread in piece.Threads)
        {
            finished[piece.Hooping].AddOwn(thread.Stitches);
            for (var i = 1; i < thread.Stitches.Length; i++)
                if (thread.Stitches[i].Source is StitchSource.Original or StitchSource.Divided)
                    foreach (var work in later)
                        work.AddEarlier(thread.Stitches[i - 1].At, thread.Stitches[i].At);
        }
    }

    /// <summary>What is sewn between sections of a shape comes between its pieces.</summary>
    private static List<KeptPiece> InTapeOrder(List<KeptPiece> pieces)
    {
        var threads = pieces
            .SelectMany(p => p.Threads.Select(t => (Piece: p, Thread: t)))
            .OrderBy(t => t.Thread.Number)
            .ToArray();
        var ordered = new List<KeptPiece>();
        for (int from = 0, to; from < threads.Length; from = to)
        {
            var piece = threads[from].Piece;
            for (to = from + 1; to < threads.Length && ReferenceEquals(threads[to].Piece, piece); )
                to++;
            ordered.Add(piece with { Threads = [.. threads[from..to].Select(t => t.Thread)] });
        }
        return ordered;
    }

    private IEnumerable<KeptPiece> Pieces(Shape shape, int? owner) =>
        owner is { } hooping
            ?
            [
                new()
                {
                    Shape = shape,
                    Hooping = hooping,
                    Threads = [.. shape.Original.Select(Whole)],
                },
            ]
            : Divided(shape);

    private static KeptThread Whole(OriginalThread thread) =>
        new([
            .. thread.Stitches.Select(
                (s, i) =>
                    new KeptStitch(
                        s.At,
                        s.Kind,
                        i == 0 && thread.Start == ThreadArrival.GoesOn ? StitchSource.Repeated : StitchSource.Original
                    )
            ),
        ])
        {
            Number = thread.Number,
            IsWhole = (true, true),
        };

    private IEnumerable<KeptPiece> Divided(Shape shape)
    {
        var threads = shape
            .Original.Select(thread =>
            {
                var stitches = owners.Divided(thread.Stitches);
                return (Thread: thread, Stitches: stitches, Owners: owners.Of([.. stitches.Select(s => s.Stitch)]));
            })
            .ToList();
        for (var hooping = 0; hooping < stretches.Length; hooping++)
        {
            if (!threads.Exists(t => t.Owners.Contains(hooping)))
                continue;
            var part = hooping;
            var beside = new RowsBeside(
                from thread in threads
                from i in Enumerable.Range(1, thread.Owners.Length - 1)
                where thread.Owners[i] == part
                select (thread.Stitches[i - 1].Stitch.At, thread.Stitches[i].Stitch.At)
            );
            var ways = new SeamWays(Polygons.Intersect(shape.Footprint, reaches[hooping].Lines));
            ImmutableArray<KeptThread> kept =
            [
                .. threads.SelectMany(t =>
                    ways.Joined(stretches[part].Of(t.Thread, t.Stitches, t.Owners).Where(beside.IsWorthSewing))
                ),
            ];
            if (!kept.IsEmpty)
                yield return new()
                {
                    Shape = shape,
                    Hooping = hooping,
                    IsCut = true,
                    Threads = kept,
                };
        }
    }
}
