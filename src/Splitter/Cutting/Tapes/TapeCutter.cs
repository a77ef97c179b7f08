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
    /// <summary>
    /// From the end of a row at a seam to the start of the next one the thread goes on if it is no farther, µm: the
    /// seam would be all knots. Farther ways show beside the rows. Common practice, no source.
    /// </summary>
    private const int LongestWay = 3 * Units.Millimetre;

    private readonly Plan plan;
    private readonly StitchOwners owners;
    private readonly ImmutableArray<Stretches> stretches;

    private TapeCutter(Plan plan, ImmutableArray<Region> territories, ImmutableArray<Reach> reaches)
    {
        (this.plan, owners) = (plan, new(plan, territories));
        stretches = [.. reaches.Select((reach, i) => new Stretches(owners, reach, i))];
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
        for (var i = 0; i < drawing.Shapes.Length; i++)
            foreach (var piece in cutter.Pieces(drawing.Shapes[i], plan.Owners[i]))
                pieces[piece.Hooping].Add(piece);
        var ends = new ThreadEnds([.. drawing.Shapes.SelectMany(s => s.Original)]);
        return [.. pieces.SelectMany(ends.Settle)];
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
            ImmutableArray<KeptThread> kept =
            [
                .. threads
                    .Where(t => t.Owners.Contains(hooping))
                    .SelectMany(t => Joined(stretches[hooping].Of(t.Thread, t.Stitches, t.Owners))),
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

    /// <summary>Stretches of rows in one go where the next one begins beside the last one's end.</summary>
    private static List<KeptThread> Joined(IEnumerable<KeptThread> stretches)
    {
        var joined = new List<KeptThread>();
        foreach (var next in stretches)
            if (joined.Count > 0 && joined[^1] is var last && AreRows(last.Stitches[^1], next.Stitches[0]))
                joined[^1] = last with
                {
                    Stitches =
                    [
                        .. last.Stitches,
                        .. Way(last.Stitches[^1], next.Stitches[0]),
                        .. next.Stitches.Skip(1),
                    ],
                    IsWhole = (last.IsWhole.Starts, next.IsWhole.Ends),
                };
            else
                joined.Add(next);
        return joined;
    }

    private static IEnumerable<KeptStitch> Way(KeptStitch end, KeptStitch start) =>
        end.At == start.At ? [] : [start with { Kind = StitchKind.Travel }];

    private static bool AreRows(KeptStitch end, KeptStitch start) =>
        end.Kind is StitchKind.Fill or StitchKind.Underlay
        && start.Kind is StitchKind.Fill or StitchKind.Underlay
        && end.At.DistanceTo(start.At) <= LongestWay;
}
