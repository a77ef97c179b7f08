using System.Collections.Immutable;
using Splitter.Diagnostics;
using Splitter.Geometry;

namespace Splitter.Artwork.Tapes;

/// <summary>Objects of a tape to shapes, each with its original stitches.</summary>
/// <param name="file">The tape's name.</param>
/// <param name="threadOf">For each colour block, by its number less one, its thread in the drawing.</param>
internal sealed class TapeShapes(string file, ImmutableArray<int> threadOf)
{
    /// <summary>Rungs of a column need be no closer than this, µm: they tell planning where it lies.</summary>
    private const double RungSpacing = Units.Millimetre;

    /// <summary>For each colour block how often there was one of its thread just before another, up to it.</summary>
    private readonly ImmutableArray<int> pauses = PausesOf(threadOf);

    private readonly Dictionary<string, int> names = new(StringComparer.Ordinal);
    private int threads;

    /// <summary>Block by block, each from the lowest up.</summary>
    internal IEnumerable<Shape> Of(TapeSheet sheet)
    {
        foreach (var block in sheet.Blocks)
        {
            var objects = TapeObjects.Of(block).ToList();
            var numbers = objects
                .SelectMany(found => found.Stretches)
                .Select(stretch => stretch[0].Phase.Phase)
                .OrderBy(phase => phase.Thread)
                .ThenBy(phase => phase.From)
                .Index()
                .ToDictionary(phase => phase.Item, phase => threads + phase.Index);
            threads += numbers.Count;
            foreach (var found in objects)
                yield return Of(block, found, numbers);
        }
    }

    /// <param name="numbers">Those of threads, by the phases that they begin with.</param>
    private Shape Of(ColourBlock block, TapeObject found, Dictionary<Phase, int> numbers)
    {
        var first = found.Phases[0].Phase.Phase;
        var (id, thread) = (Name(block, found.Kind), threadOf[block.Number - 1]);
        var place = TapeProblems.At(file, block.Threads[first.Thread].Records[first.From]);
        var (style, original, footprint) = (
            Style(block, found),
            Original(block, found, numbers),
            found.Ground.ToRegion()
        );
        return found.Kind switch
        {
            StitchKind.Fill => new FillShape
            {
                Id = id,
                Place = place,
                Thread = thread,
                Style = style,
                Footprint = footprint,
                Original = original,
            },
            StitchKind.Satin => new SatinShape
            {
                Id = id,
                Place = place,
                Thread = thread,
                Style = style,
                Footprint = footprint,
                Original = original,
                Columns = [.. found.Main.Select(ColumnOf)],
            },
            _ => new RunShape
            {
                Id = id,
                Place = place,
                Thread = thread,
                Style = style,
                Footprint = footprint,
                Original = original,
                Lines =
                [
                    .. original
                        .Where(t => t.Stitches.Length > 1)
                        .Select(t => new Polyline([.. t.Stitches.Select(s => s.At)])),
                ],
            },
        };
    }

    private static ImmutableArray<int> PausesOf(ImmutableArray<int> threadOf)
    {
        var soFar = new int[threadOf.Length];
        return
        [
            .. threadOf.Select((thread, i) => i > 0 && threadOf[i - 1] == thread ? ++soFar[thread] : soFar[thread]),
        ];
    }

    private string Name(ColourBlock block, StitchKind kind)
    {
        var word = kind switch
        {
            StitchKind.Fill => "fill",
            StitchKind.Satin => "satin",
            _ => "run",
        };
        var stem = FormattableString.Invariant($"block-{block.Number}-{word}");
        names[stem] = names.GetValueOrDefault(stem) + 1;
        return FormattableString.Invariant($"{stem}-{names[stem]}");
    }

    private static SewStyle Style(ColourBlock block, TapeObject found)
    {
        var longest = found.Main.Max(phase =>
        {
            var holes = block.Threads[phase.Thread].Holes.AsSpan(phase.From, phase.To - phase.From + 1);
            var length = 0.0;
            for (var i = 1; i < holes.Length; i++)
                length = Math.Max(length, holes[i - 1].DistanceTo(holes[i]));
            return length;
        });
        return new()
        {
            Angle =
                found.Kind == StitchKind.Fill ? Math.Round(Math.Atan2(found.Way.Y, found.Way.X) * 180 / Math.PI, 1) : 0,
            // A column is sewn to and fro once for each spacing.
            RowSpacing = Math.Max(
                Units.TapeStep,
                Units.Round(found.Spacing * (found.Kind == StitchKind.Satin ? 2 : 1))
            ),
            StitchLength = Math.Max(Units.TapeStep, Units.Round(longest)),
        };
    }

    /// <summary>Every other hole lies at the same edge.</summary>
    private static Column ColumnOf(Phase column)
    {
        var rungs = ImmutableArray.CreateBuilder<Rung>();
        for (var i = 0; i < column.Passes.Length; i += 2)
        {
            var rung = new Rung(column.Passes[i].Start, column.Passes[i].End);
            if (
                rungs.Count == 0
                || i + 2 >= column.Passes.Length
                || rungs[^1].Middle.DistanceTo(rung.Middle) >= RungSpacing
            )
                rungs.Add(rung);
        }
        return new(rungs.ToImmutable());
    }

    private ImmutableArray<OriginalThread> Original(ColourBlock block, TapeObject found, Dictionary<Phase, int> numbers)
    {
        var original = ImmutableArray.CreateBuilder<OriginalThread>();
        foreach (var phases in found.Stretches)
        {
            var first = phases[0].Phase.Phase;
            var thread = block.Threads[first.Thread];
            var stitches = ImmutableArray.CreateBuilder<OriginalStitch>();
            stitches.Add(new(thread.Holes[first.From], StitchKind.Tie, 0));
            foreach (var (phase, use) in phases)
                stitches.AddRange(Stitches(thread.Holes, phase.Phase, use));
            if (stitches.Count > 1)
                stitches[0] = stitches[0] with { Kind = stitches[1].Kind, Row = stitches[1].Row };
            original.Add(
                new(
                    numbers[first],
                    block.Number,
                    first.From == 0 ? thread.Start : ThreadArrival.GoesOn,
                    stitches.ToImmutable()
                )
                {
                    Pauses = pauses[block.Number - 1],
                }
            );
        }
        return original.ToImmutable();
    }

    /// <summary>Without the hole that a phase begins in.</summary>
    private static IEnumerable<OriginalStitch> Stitches(ImmutableArray<Point> holes, Phase phase, PhaseUse use)
    {
        var kind = use switch
        {
            PhaseUse.Main => phase.Kind,
            PhaseUse.Tie => StitchKind.Tie,
            PhaseUse.Travel => StitchKind.Travel,
            _ => StitchKind.Underlay,
        };
        var row = 0;
        for (var i = phase.From + 1; i <= phase.To; i++)
        {
            while (row + 1 < phase.Passes.Length && i > phase.Passes[row].To)
                row++;
            yield return new(holes[i], kind, row);
        }
    }
}
