using CsCheck;
using Splitter.Geometry;
using Splitter.Tests.Stitching.Fills;

namespace Splitter.Tests.Geometry;

public sealed class GuideTests
{
    /// <summary>Ribs do not quite meet in an arc's centre, since their directions have nine decimals; µm.</summary>
    private const double There = 0.01;

    [Fact]
    public void TheWayToTheFrameAndBackEndsWhereItBegan() =>
        GuidedCases.Drawn.Holds(c =>
        {
            var guide = GuidedCases.Guide(c.Line);
            foreach (var p in c.Ground.Rings.SelectMany(r => r.Points))
            {
                var (u, v) = guide.Of(p);
                Assert.InRange((guide.At(u, v) - new Vector(p.X, p.Y)).Length, 0, There);
            }
        });

    /// <summary>A step along a row is as long as the stretch says and goes in its direction; one across is itself.</summary>
    [Fact]
    public void StepsAreAsLongAsTheyAreSaidToBe() =>
        GuidedCases.Drawn.Holds(c =>
        {
            const double Step = 10;
            var guide = GuidedCases.Guide(c.Line);
            foreach (var p in c.Ground.Rings.SelectMany(r => r.Points))
            {
                var (u, v) = guide.Of(p);
                var (along, across) = (guide.At(u + Step, v) - guide.At(u, v), guide.At(u, v + Step) - guide.At(u, v));
                Assert.InRange(across.Length, Step * 0.999, Step * 1.001);
                // From one rib to the next the stretch may change: on straight legs between arcs it is 1.
                var stretches = new[] { guide.Stretch(u, v), guide.Stretch(u + Step, v) };
                Assert.InRange(along.Length / Step, stretches.Min() - 0.01, stretches.Max() + 0.01);
                Assert.InRange(Vector.Dot(along.Unit, guide.Direction(u, v)), 0.999, 1.001);
                Assert.InRange(Vector.Cross(guide.Direction(u, v), across.Unit), 0.999, 1.001);
            }
        });

    /// <summary>As the area of a ring sector: along an arc of radius r, from r - a to r + b, the level width is the arc.</summary>
    [Fact]
    public void GroundBesideAnArcIsARectangleWhenUnrolled()
    {
        // A quarter of a circle of 40 mm round the origin, from 10 mm within to 10 mm without.
        var arc = new Polyline([
            .. Enumerable.Range(0, 46).Select(i => Point.FromMillimetres(40 * Cos(2 * i), 40 * Sin(2 * i))),
        ]);
        var sector = Samples.Ground([
            .. Enumerable.Range(0, 91).SelectMany(i => new[] { 30 * Cos(i), 30 * Sin(i) }),
            .. Enumerable.Range(0, 91).SelectMany(i => new[] { 50 * Cos(90 - i), 50 * Sin(90 - i) }),
        ]);
        var guide = GuidedCases.Guide(arc);
        var unrolled = guide.Unrolled(sector);
        Assert.InRange(unrolled.Area / (40_000 * Math.PI / 2 * 20_000), 0.999, 1.001);
        // The guide's ends are half a side of 2 degrees, whose ribs lie 1 degree off the sector's straight edges.
        Assert.InRange(unrolled.Area / ((double)unrolled.Bounds.Width * unrolled.Bounds.Height), 0.99, 1);
        Assert.InRange(guide.Rolled(unrolled).Area / sector.Area, 0.9999, 1.0001);

        static double Cos(int degrees) => Math.Cos(degrees * Math.PI / 180);
        static double Sin(int degrees) => Math.Sin(degrees * Math.PI / 180);
    }

    /// <summary>A right angle between sides of 30 and 20 mm is an arc of 20 mm, which both sides touch.</summary>
    [Fact]
    public void ACornerIsRoundedAsFarAsItsSidesAllow()
    {
        var line = new RoundedLine(new([new(0, 0), new(30_000, 0), new(30_000, 20_000)]));
        Assert.Equal(20_000, line.Tightest.Radius, 0.01);
        Assert.Equal(10_000, line.Vertices[1].At.X, 0.01);
        Assert.All(line.Vertices.Skip(1), v => Assert.Equal(20_000, (v.At - new Vector(10_000, 20_000)).Length, 0.01));
        Assert.All(
            line.Vertices.Skip(1),
            v => Assert.Equal(0, Vector.Dot(v.Way, (v.At - new Vector(10_000, 20_000)).Unit), 1e-6)
        );
    }
}
