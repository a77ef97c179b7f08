using System.Collections.Immutable;
using Splitter.Cutting;
using Splitter.Cutting.Tapes;
using Splitter.Geometry;
using Splitter.Planning;
using Splitter.Stitching;
using Splitter.Stitching.Density;

namespace Splitter.Parts;

/// <summary>What a hooping sews of the artwork with one thread, without a stop.</summary>
/// <param name="Thread">By its place in the drawing.</param>
/// <param name="Sewn">In sewing order, each with the piece that it is of.</param>
internal sealed record BodyStep(int Thread, ImmutableArray<(Piece Piece, Block Block)> Sewn)
{
    internal IEnumerable<Block> Blocks => Sewn.Select(s => s.Block);
}

/// <summary>Puts the blocks of each hooping in order: few threads, few jumps, hidden ways instead of trims.</summary>
internal static class BodySteps
{
    /// <summary>
    /// A part's travel has to do with the cloth no further than this beside its stitches, µm: a cell of hidden ground,
    /// a thread and a square that layers are counted on.
    /// </summary>
    private const int Beside = HiddenGround.Cell + ThreadGrid.ThreadWidth + Units.Millimetre;

    /// <summary>What one piece of thread leaves is room for others: so often all parts are gone through.</summary>
    private const int RoomPasses = 2;

    /// <summary>For each hooping its steps.</summary>
    /// <param name="mostLayers">That cloth and needle bear.</param>
    /// <param name="jobs">How many threads may work.</param>
    internal static ImmutableArray<ImmutableArray<BodyStep>> Of(
        Plan plan,
        ImmutableArray<SewnPiece> sewn,
        int mostLayers,
        int jobs = 1
    )
    {
        if (sewn.All(s => s.Blocks.IsEmpty))
            return [.. plan.Hoopings.Select(_ => ImmutableArray<BodyStep>.Empty)];
        var wished = mostLayers - Square.Between;
        var layers = ClothLayers.ThreadOf(sewn, jobs);
        // What came as stitches stays as it is, and only what we tie is joined.
        var isKept = sewn[0].Piece is KeptPiece;
        if (!isKept)
            sewn = new RoomyRings(layers, wished).Begun(sewn);
        var (byHooping, overlaps) = (sewn.ToLookup(s => s.Piece.Hooping), new ShapeOverlaps());
        var ordered = InOrder.Select(
            [.. plan.Hoopings.Select((_, i) => byHooping[i])],
            jobs,
            pieces => Ordered(pieces, overlaps)
        );
        // Where runs begin, and are tied, is known only now.
        LayRuns(sewn.SelectMany(s => s.Blocks), layers, -1);
        LayRuns(ordered.SelectMany(steps => steps).SelectMany(s => s.Blocks), layers, 1);
        Box[] boxes = [.. ordered.Select(Around)];
        var parts = InTurn(part => Joined(ordered[part], layers, wished, isSpread: !isKept));
        if (isKept)
            return [.. ordered.Select((steps, i) => With(steps, parts[i].Blocks))];
        // Once more, now that all others' thread lies where it will.
        parts = InTurn(part =>
            Spread(parts[part].Blocks, parts[part].Ground, new(new(parts[part].Ground, layers, wished), layers, wished))
        );
        ImmutableArray<AlignmentStitch> crosses = [.. plan.Hoopings.SelectMany(h => h.Alignments)];
        for (var pass = 0; pass < RoomPasses; pass++)
            MakeRoom(wished);
        var pierced = HolesNow();
        Relief.Relieve(parts, pierced, layers);
        OnEach((blocks, _) => new ShortTies(layers, pierced, wished).Shorten(blocks));
        MovedHoles[] moved = [.. parts.Select(_ => new MovedHoles())];
        for (var pass = 0; pass < RoomPasses && IsTold(); pass++)
            pierced = MakeLastRoom();
        if (IsTold())
            MoveALittle(mostLayers);
        MoveALittle(wished);
        if (IsTold())
            MakeLastRoom();
        return [.. ordered.Select((steps, i) => With(steps, parts[i].Blocks))];

        Point[] MetOf(int part) => [.. crosses.Where(cross => cross.With == part).Select(cross => cross.At)];

        bool IsTold() => layers.Fuller(mostLayers).Count > 0;

        // What is kept free for squares between is used up where else too many layers would be told.
        ThreadGrid MakeLastRoom()
        {
            var holes = MakeRoom(mostLayers);
            var (moves, crowded) = (
                new SmallMoves(layers, holes, mostLayers, mostLayers),
                new CrowdedSquares(layers, holes, mostLayers)
            );
            OnEach(
                (blocks, part) =>
                    moves.MoveHidden(blocks, new(crowded.CoverOf(blocks), moved[part], MetOf(part)), moved[part])
            );
            return holes;
        }

        void MoveALittle(double most)
        {
            var moves = new SmallMoves(layers, pierced, most, mostLayers);
            foreach (var round in SmallMoves.Rounds)
                OnEach((blocks, part) => moves.Move(blocks, round, moved[part], MetOf(part)));
        }

        ThreadGrid MakeRoom(double most)
        {
            var rows = new SpareRows(new([.. parts.Select(p => p.Blocks)], layers, most), layers, most);
            OnEach((blocks, part) => rows.LeaveOut(blocks, part, crosses));
            var holes = HolesNow();
            var crowded = new CrowdedSquares(layers, holes, most);
            OnEach(
                (blocks, _) =>
                {
                    var cover = crowded.CoverOf(blocks);
                    new RoomyTies(cover, layers, holes, most).Retie(blocks);
                    new RoomyTravel(crowded, layers, holes, most).Move(blocks, cover);
                }
            );
            return holes;
        }

        void OnEach(Action<Block[], int> work) =>
            InTurn(part =>
            {
                work(parts[part].Blocks, part);
                return parts[part];
            });

        ThreadGrid HolesNow() =>
            ClothLayers.HolesOf(Pieces([.. ordered.Select((s, i) => With(s, parts[i].Blocks))]), jobs);

        // What lies apart has to do with other squares of the grids.
        ImmutableArray<(Block[] Blocks, HiddenGround Ground)> InTurn(Func<int, (Block[], HiddenGround)> work) =>
            InOrder.Select(
                [.. Enumerable.Range(0, ordered.Length)],
                jobs,
                (one, earlier) => boxes[one].Meets(boxes[earlier]),
                work
            );
    }

    /// <summary>All ground that a hooping lays thread on, or asks how much lies there.</summary>
    private static Box Around(ImmutableArray<BodyStep> steps) =>
        Box.Around(steps.SelectMany(s => s.Blocks).Select(b => b.Bounds)).Grown(Beside);

    private static void LayRuns(IEnumerable<Block> blocks, ThreadGrid layers, int sign)
    {
        foreach (var run in blocks.Where(block => !block.Line.IsEmpty))
            ClothLayers.Lay(layers, run, sign);
    }

    /// <summary>All blocks again by the pieces that they are of.</summary>
    internal static ImmutableArray<SewnPiece> Pieces(ImmutableArray<ImmutableArray<BodyStep>> steps) =>
        [
            .. from hooping in steps
            from step in hooping
            from sewn in step.Sewn
            select new SewnPiece(sewn.Piece, [sewn.Block]),
        ];

    private static ImmutableArray<BodyStep> Ordered(IEnumerable<SewnPiece> sewn, ShapeOverlaps overlaps)
    {
        var steps = ImmutableArray.CreateBuilder<BodyStep>();
        Point? needle = null;
        foreach (var group in ThreadOrder.Group(sewn.Where(s => !s.Blocks.IsEmpty), overlaps, s => s.Piece))
        {
            if (group[0].Piece is KeptPiece)
            {
                steps.Add(
                    new(group[0].Piece.Shape.Thread, [.. group.SelectMany(s => s.Blocks.Select(b => (s.Piece, b)))])
                );
                continue;
            }
            var blocks = JumpOrder.Of(
                [.. group.Select(s => s.Blocks)],
                overlaps.Below([.. group.Select(s => s.Piece)]),
                needle
            );
            needle = blocks[^1].End;
            var pieceOf = group.ToLookup(s => s.Piece.Shape.Id, s => s.Piece);
            steps.Add(new(group[0].Piece.Shape.Thread, [.. blocks.Select(b => (pieceOf[b.Of].First(), b))]));
        }
        return steps.ToImmutable();
    }

    /// <summary>
    /// The blocks of a hooping, the thread left uncut wherever a hidden way leads on, and what they hide.
    /// </summary>
    /// <param name="isSpread">Travel within a block goes where fewer layers are.</param>
    private static (Block[] Blocks, HiddenGround Ground) Joined(
        ImmutableArray<BodyStep> steps,
        ThreadGrid layers,
        double mostLayers,
        bool isSpread
    )
    {
        Block[] blocks = [.. steps.SelectMany(s => s.Blocks)];
        var ground = new HiddenGround(blocks);
        var travel = new HiddenTravel(new(ground, layers, mostLayers), layers, mostLayers);
        if (isSpread)
            Spread(blocks, ground, travel);
        var first = 0;
        foreach (var step in steps)
        {
            for (var i = first + 1; i < first + step.Sewn.Length; i++)
                if (blocks[i - 1].IsTied.End && blocks[i].IsTied.Start)
                    (blocks[i - 1], blocks[i]) = travel.Joined(blocks[i - 1], blocks[i], ground.FirstOf(i));
            first += step.Sewn.Length;
        }
        return (blocks, ground);
    }

    /// <summary>The blocks of a part, what lies hidden of them spread, and what they hide.</summary>
    private static (Block[] Blocks, HiddenGround Ground) Spread(
        Block[] blocks,
        HiddenGround ground,
        HiddenTravel travel
    )
    {
        for (var i = 0; i < blocks.Length; i++)
            blocks[i] = travel.Spread(blocks[i], ground.FirstOf(i));
        return (blocks, ground);
    }

    /// <summary>The steps with other stitches.</summary>
    private static ImmutableArray<BodyStep> With(ImmutableArray<BodyStep> steps, Block[] blocks)
    {
        var next = 0;
        return [.. steps.Select(s => s with { Sewn = [.. s.Sewn.Select(sewn => (sewn.Piece, blocks[next++]))] })];
    }
}
