using System.Collections.Immutable;

namespace Splitter.Stitching.Fills;

/// <summary>
/// Hidden travel: a short way over a walk of spans that stays inside the ground. Between two rows it keeps to where
/// both lie side by side; along a row it keeps to the row; where the ground is narrower than a row it follows the
/// outline.
/// </summary>
internal sealed class Trail
{
    /// <summary>
    /// How far travel stays inside the edge, along the row, µm: nearer, it shows beside the row ends of the stitches
    /// that cover it; further, it takes detours.
    /// </summary>
    private const double Inset = 600;

    /// <summary>The share of narrow ground that is kept free on either side instead.</summary>
    private const double NarrowInset = 0.4;

    private readonly FillGround ground;
    private readonly List<Place> places = [];
    private readonly List<Gate> gates = [];

    private Trail(FillGround ground) => this.ground = ground;

    /// <summary>Where the way crosses a row.</summary>
    private readonly record struct Gate(int Row, double From, double To);

    /// <summary>The corners of the way, its start among them.</summary>
    /// <param name="walk">Spans from the start's to the end's, each beside the next or joined to it by a bank.</param>
    internal static ImmutableArray<Place> Over(FillGround ground, List<int> walk, double start, double end)
    {
        var trail = new Trail(ground);
        trail.Lay(walk, start, end);
        return [.. trail.places];
    }

    private void Lay(List<int> walk, double start, double end)
    {
        var spans = ground.Scan.Spans;
        var at = new Place(spans[walk[0]].Row, start);
        places.Add(at);
        for (var i = 1; i < walk.Count; i++)
        {
            var (a, b) = (spans[walk[i - 1]], spans[walk[i]]);
            if (a.IsBeside(b))
            {
                var (from, to) = Narrowed(Math.Max(a.From, b.From), Math.Min(a.To, b.To));
                Pass(new(a.Row, from, to));
                Pass(new(b.Row, from, to));
                continue;
            }
            var bank = ground.BankBetween(walk[i - 1], walk[i]);
            var (off, on) = (Inside(a, bank[0].U), Inside(b, bank[^1].U));
            at = Follow(at, new(a.Row, off, off));
            places.AddRange(bank.Skip(1).SkipLast(1));
            at = MoveTo(at, new(b.Row, on));
        }
        Follow(at, new(spans[walk[^1]].Row, end, end));
    }

    /// <summary>Two gates on one row, passed in one direction, are one as far as they overlap.</summary>
    private void Pass(Gate gate)
    {
        if (
            gates.Count > 0
            && gates[^1] is var last
            && last.Row == gate.Row
            && Math.Max(last.From, gate.From) is var from
            && Math.Min(last.To, gate.To) is var to
            && from <= to
        )
            gates[^1] = new(gate.Row, from, to);
        else
            gates.Add(gate);
    }

    /// <summary>
    /// Goes straight for as long as the gates allow, then turns in the last one that still lay ahead.
    /// </summary>
    private Place Follow(Place at, Gate end)
    {
        gates.Add(end);
        for (var i = 0; i < gates.Count; )
        {
            if (gates[i].Row == at.T)
            {
                at = MoveTo(at, new(at.T, Math.Clamp(at.U, gates[i].From, gates[i].To)));
                i++;
                continue;
            }
            var (low, high, way) = (double.NegativeInfinity, double.PositiveInfinity, Math.Sign(gates[i].Row - at.T));
            var j = i;
            double? turn = null;
            for (; j < gates.Count && turn is null; j++)
            {
                var rows = (gates[j].Row - at.T) * way;
                if (rows <= 0 || (j > i && gates[j].Row == gates[j - 1].Row))
                    break;
                var (from, to) = ((gates[j].From - at.U) / rows, (gates[j].To - at.U) / rows);
                if (from > high)
                    turn = high;
                else if (to < low)
                    turn = low;
                else
                    (low, high) = (Math.Max(low, from), Math.Min(high, to));
            }
            // The loop has gone one gate too far when it found a turn.
            var last = turn is null ? j - 1 : j - 2;
            var slope = turn ?? Math.Clamp(Ahead(at, last, way), low, high);
            at = MoveTo(at, new(gates[last].Row, at.U + (slope * (gates[last].Row - at.T) * way)));
            i = last + 1;
        }
        gates.Clear();
        return at;
    }

    /// <summary>The slope that leads towards the next gate along the last gate's row.</summary>
    private double Ahead(Place at, int last, int way)
    {
        var rows = (gates[last].Row - at.T) * way;
        return last + 1 == gates.Count ? 0 : (Math.Clamp(at.U, gates[last + 1].From, gates[last + 1].To) - at.U) / rows;
    }

    private Place MoveTo(Place at, Place to)
    {
        if (to != at)
            places.Add(to);
        return to;
    }

    /// <summary>A little inside the end of a span where the outline leads on to another one.</summary>
    private static double Inside(Span span, double end)
    {
        var (from, to) = Narrowed(span.From, span.To);
        return end - span.From < span.To - end ? from : to;
    }

    private static (double From, double To) Narrowed(double from, double to)
    {
        var inset = Math.Min(Inset, (to - from) * NarrowInset);
        return (from + inset, to - inset);
    }
}
