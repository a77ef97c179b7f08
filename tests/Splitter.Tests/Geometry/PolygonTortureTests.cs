using System.Collections.Immutable;
using System.Globalization;
using Splitter.Geometry;

namespace Splitter.Tests.Geometry;

/// <summary>
/// Two thousand pairs of outlines that are hard to cut: crossing themselves, corner on corner, edge on edge, needles. Their
/// areas were computed by an engine outside .NET, npm's clipper2-wasm 0.4.0 (<c>Torture/areas.mjs</c> draws the same pairs).
/// </summary>
public sealed class PolygonTortureTests
{
    /// <summary>
    /// Both engines move where edges cross to a whole micrometre, by 0.7 µm at most, each in its own way: an outline may lie so
    /// far elsewhere along all its length.
    /// </summary>
    private const double MostMoved = 0.7;

    /// <summary>
    /// Rows in which the other engine contradicts itself, A + B = (A and B) + (A or B): outlines that lie on each other nearly
    /// everywhere are hard for it. What it says there is no evidence; ours must agree with itself in all. 14 of
    /// the 4,000 rows; more than one in a hundred, and the comparison says little.
    /// </summary>
    private const double MostContradicting = 0.01;

    /// <summary>Of the pairs one in so many is cut on every run, all of them where somebody explores: it takes a minute.</summary>
    private static readonly int Every = Property.Exploring is null ? 5 : 1;

    /// <summary>
    /// Rows in which the engines differ and neither contradicts itself: the exact area of the first outline, computed in
    /// rational numbers by <c>Torture/exact.py</c>.
    /// </summary>
    private static readonly Dictionary<(int Pair, string Rule), double> Exact = new()
    {
        [(861, "NonZero")] = 53278586.434685,
        [(1729, "NonZero")] = 36019172.34864433,
    };

    [Fact]
    public void AreasAreThoseOfAnIndependentEngine()
    {
        var draw = new Draw();
        var rows = File.ReadLines(Golden.Source("Geometry", "Torture", "areas.csv")).Skip(1).ToArray();
        Assert.Equal(4000, rows.Length);
        var contradicting = 0;
        foreach (var (pair, given) in rows.Chunk(2).Index())
        {
            var a = draw.Ring(pair % 4, default);
            var b = draw.Ring(pair % 4, a);
            if (pair % Every != 861 % Every)
                continue;
            var room = MostMoved * (Length(a) + Length(b));
            foreach (var cells in given.Select(row => row.Split(',')))
            {
                Assert.Equal(pair, int.Parse(cells[0], CultureInfo.InvariantCulture));
                var ours = Areas.Of(Enum.Parse<FillRule>(cells[1]), a, b);
                var theirs = Areas.Of(cells[2..]);
                var said = $"pair {pair}, {cells[1]}: {ours}; the other engine: {theirs}; {room:F0} µm² allowed";
                Assert.True(ours.Contradiction <= room, said);
                if (Exact.TryGetValue((pair, cells[1]), out var exact))
                    Assert.True(Math.Abs(ours.A - exact) <= room && Math.Abs(theirs.A - exact) > room, said);
                else if (theirs.Contradiction > room)
                    contradicting++;
                else
                    Assert.True(ours.FarthestFrom(theirs) <= room, said);
            }
        }
        Assert.True(contradicting <= MostContradicting * rows.Length / Every, $"{contradicting} rows are no evidence");
    }

    /// <summary>Of two outlines, in square micrometres.</summary>
    private sealed record Areas(double A, double B, double Intersection, double Union, double Difference)
    {
        internal double Contradiction =>
            Math.Max(Math.Abs(A + B - Intersection - Union), Math.Abs(A - Intersection - Difference));

        internal double FarthestFrom(Areas other) =>
            new[]
            {
                A - other.A,
                B - other.B,
                Intersection - other.Intersection,
                Union - other.Union,
                Difference - other.Difference,
            }.Max(Math.Abs);

        internal static Areas Of(FillRule rule, ImmutableArray<Point> a, ImmutableArray<Point> b)
        {
            var (inA, inB) = (Inside(a, rule), Inside(b, rule));
            return new(
                inA.Area,
                inB.Area,
                Polygons.Intersect(inA, inB).Area,
                Polygons.Union(inA, inB).Area,
                Polygons.Subtract(inA, inB).Area
            );
        }

        internal static Areas Of(string[] cells) =>
            cells.Select(cell => double.Parse(cell, CultureInfo.InvariantCulture)).ToArray()
                is [var a, var b, var i, var u, var d]
                ? new(a, b, i, u, d)
                : throw new FormatException("a row has five areas");
    }

    private static Region Inside(ImmutableArray<Point> ring, FillRule rule) =>
        Polygons.FromRings([new Ring(ring)], rule);

    private static double Length(ImmutableArray<Point> ring) =>
        ring.Select((p, i) => p.DistanceTo(ring[(i + 1) % ring.Length])).Sum();

    /// <summary>The same rings as the script draws: Numerical Recipes' generator, whose whole state is 32 bits.</summary>
    private sealed class Draw
    {
        private uint state = 1;

        internal ImmutableArray<Point> Ring(int kind, ImmutableArray<Point> first)
        {
            if (kind == 2 && !first.IsDefault)
                return [.. first.Select(p => new Point(p.X + Next(3) - 1, p.Y + Next(3) - 1))];
            var corners = 3 + Next(kind == 0 ? 12 : 24);
            return
            [
                .. Enumerable
                    .Range(0, corners)
                    .Select(i =>
                        kind switch
                        {
                            1 => new Point(Next(9) * 1250, Next(9) * 1250),
                            3 => new Point((i % 2 * 10_000) + Next(5), Next(400)),
                            _ => new Point(Next(10_001), Next(10_001)),
                        }
                    ),
            ];
        }

        private int Next(int below)
        {
            state = unchecked((state * 1_664_525) + 1_013_904_223);
            return (int)Math.Floor(state / 4_294_967_296.0 * below);
        }
    }
}
