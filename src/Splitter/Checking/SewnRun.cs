using System.Collections.Immutable;
using Splitter.Geometry;
using Splitter.Outputs.Tapes;
using Splitter.Parts;
using Splitter.Planning;
using Splitter.Tapes;

namespace Splitter.Checking;

/// <summary>What is sewn between two moves, on the drawing.</summary>
/// <param name="Shapes">For each stitch the shape or mark it sews; its step where only a tape is known.</param>
internal sealed record SewnRun(int Step, ImmutableArray<Point> Points, ImmutableArray<string> Shapes)
{
    internal Box Bounds { get; } = Box.Around(Points);

    internal bool SameAs(SewnRun other) => Step == other.Step && Points.AsSpan().SequenceEqual(other.Points.AsSpan());

    internal static ImmutableArray<SewnRun> Of(Part part)
    {
        var runs = ImmutableArray.CreateBuilder<SewnRun>();
        var points = ImmutableArray.CreateBuilder<Point>();
        var shapes = ImmutableArray.CreateBuilder<string>();
        var step = 1;
        foreach (var needle in NeedleWalk.Of(part))
        {
            if (needle.Arrival != Arrival.Sewn)
                End();
            step = needle.Step.Number;
            points.Add(needle.Stitch.At);
            shapes.Add(needle.Block.Of);
        }
        End();
        return runs.ToImmutable();

        void End()
        {
            if (points.Count > 0)
                runs.Add(new(step, points.ToImmutable(), shapes.ToImmutable()));
            points.Clear();
            shapes.Clear();
        }
    }

    /// <summary>The runs of a tape, laid on the drawing by a field.</summary>
    /// <param name="nameOf">What a step is called, as a tape knows no shapes.</param>
    internal static ImmutableArray<SewnRun> Of(Tape tape, Field field, Func<int, string> nameOf)
    {
        var runs = ImmutableArray.CreateBuilder<SewnRun>();
        var points = ImmutableArray.CreateBuilder<Point>();
        var (u, v, step) = (0, 0, 1);
        foreach (var record in tape.Records)
        {
            (u, v) = (u + record.U, v + record.V);
            if (record.Command == TapeCommand.Stitch)
                points.Add(field.ToDesign(new(u * Units.TapeStep, v * Units.TapeStep)));
            else
                End();
            step += record.Command == TapeCommand.Stop ? 1 : 0;
        }
        End();
        return runs.ToImmutable();

        void End()
        {
            if (points.Count > 0)
                runs.Add(new(step, points.ToImmutable(), [.. Enumerable.Repeat(nameOf(step), points.Count)]));
            points.Clear();
        }
    }
}
