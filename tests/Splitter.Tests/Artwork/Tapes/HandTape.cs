using System.Collections.Immutable;
using System.Text;
using Splitter.Diagnostics;
using Splitter.Tapes;

namespace Splitter.Tests.Artwork.Tapes;

/// <summary>
/// A tape made by hand, places in millimetres, y down as on the drawing; and what comes of it as artwork.
/// </summary>
internal sealed class HandTape
{
    private readonly ImmutableArray<TapeRecord>.Builder records = ImmutableArray.CreateBuilder<TapeRecord>();
    private (int U, int V) at;

    internal Tape Tape => new("by hand", records.ToImmutable());

    internal byte[] Bytes => TapeWriter.Write(Tape);

    internal HandTape Sew(params ReadOnlySpan<(double X, double Y)> places)
    {
        foreach (var (x, y) in places)
            Move(TapeCommand.Stitch, x, y);
        return this;
    }

    /// <summary>In as many records as are asked for; the stitch behind it puts the needle in.</summary>
    internal HandTape Jump(double x, double y, int jumps)
    {
        var (fromX, fromY) = (at.U / 10.0, -at.V / 10.0);
        for (var i = 1; i <= jumps; i++)
            Move(TapeCommand.Jump, fromX + ((x - fromX) * i / jumps), fromY + ((y - fromY) * i / jumps));
        return Sew((x, y));
    }

    /// <summary>A record for each place; what comes behind them is sewn from there.</summary>
    internal HandTape Jumps(params ReadOnlySpan<(double X, double Y)> places)
    {
        foreach (var (x, y) in places)
            Move(TapeCommand.Jump, x, y);
        return this;
    }

    internal HandTape Stop()
    {
        records.Add(new(TapeCommand.Stop, 0, 0));
        return this;
    }

    /// <summary>Level rows from the top, to and fro, stitches of 4 mm at most, staggered.</summary>
    internal HandTape Rows(double x, double y, double width, double height, double spacing = 0.4)
    {
        var right = true;
        for (var row = 0; row * spacing <= height; row++, right = !right)
        {
            var holes = Enumerable
                .Range(0, 1 + (int)(width / 4))
                .Select(i => (i * 4.0) + (row % 3 * 1.3))
                .Where(h => h < width - 0.5);
            double[] along = [0, .. holes.Where(h => h > 0.5), width];
            foreach (var h in right ? along : along.Reverse())
                Sew((x + h, y + (row * spacing)));
        }
        return this;
    }

    /// <summary>
    /// Rows that follow arcs round a centre, from the innermost, to and fro, stitches of 3 mm; they begin in the corner.
    /// </summary>
    /// <param name="angle">From one end to the other, the middle of it upwards, degrees.</param>
    internal HandTape Arcs(double inner, double outer, double angle)
    {
        var (x, y) = (inner * Math.Sin(angle * Math.PI / 360), inner * Math.Cos(angle * Math.PI / 360));
        var forwards = true;
        for (var row = 0; inner + (row * 0.4) <= outer; row++, forwards = !forwards)
        {
            var radius = inner + (row * 0.4);
            var count = (int)Math.Ceiling(radius * angle * Math.PI / 180 / 3);
            for (var i = 0; i <= count; i++)
            {
                var bend = Math.PI / 180 * angle * (((forwards ? i : count - i) / (double)count) - 0.5);
                Sew((x + (radius * Math.Sin(bend)), y - (radius * Math.Cos(bend))));
            }
        }
        return this;
    }

    /// <summary>An upright column from the top.</summary>
    internal HandTape Column(double x, double y, double width, double height, double advance = 0.2)
    {
        for (var i = 0; i * advance <= height; i++)
            Sew((x + (i % 2 == 0 ? 0 : width), y + (i * advance)));
        return this;
    }

    /// <summary>A line of stitches.</summary>
    internal HandTape Run(double toX, double toY, double stitch = 2.5)
    {
        var (x, y) = (at.U / 10.0, -at.V / 10.0);
        var count = Math.Max(
            1,
            (int)Math.Ceiling(Math.Sqrt(((toX - x) * (toX - x)) + ((toY - y) * (toY - y))) / stitch)
        );
        for (var i = 1; i <= count; i++)
            Sew((x + ((toX - x) * i / count), y + ((toY - y) * i / count)));
        return this;
    }

    private void Move(TapeCommand command, double x, double y)
    {
        var to = ((int)Math.Round(x * 10), (int)Math.Round(-y * 10));
        records.Add(new(command, to.Item1 - at.U, to.Item2 - at.V));
        at = to;
    }

    /// <summary>The parts of a tape for a hoop, with a thread for each colour block.</summary>
    internal static Result<Production> Make(
        byte[] tape,
        int blocks,
        double width,
        double height,
        string more = "",
        string artwork = ""
    ) =>
        Pipeline.Make(
            new(
                "recipe.yaml",
                Encoding.UTF8.GetBytes(
                    FormattableString.Invariant(
                        $"""
                        splitter: 1
                        artwork: {"{"} file: hand.dst{artwork} {"}"}
                        threads: [{string.Join(
                            ", ",
                            Enumerable.Range(1, blocks).Select(i => $"{{ name: t{i}, color: '#0000{i:x2}' }}")
                        )}]
                        hoops: [{"{"} name: small, field: {width} x {height} mm {"}"}]
                        output: {"{"} folder: parts, files: [tape] {"}"}
                        {more}
                        """
                    )
                ),
                _ => new(tape, null)
            )
        );
}
