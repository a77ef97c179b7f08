using System.Collections.Immutable;
using CsCheck;
using Splitter.Correcting;
using Splitter.Geometry;

namespace Splitter.Tests.Correcting;

public sealed class RigidMoveTests
{
    /// <summary>
    /// Umeyama 1991, IEEE TPAMI 13(4):376-380, the paper's own example, in rigid form: its Y is a mirror image, which a fit that
    /// may mirror takes for a perfect one. Angle, shift and sum of squares were computed outside this code base.
    /// </summary>
    [Fact]
    public void ThePapersExampleIsTurnedAndNotMirrored()
    {
        ImmutableArray<Vector> x = [new(0, 0), new(1, 0), new(0, 2)];
        ImmutableArray<Vector> y = [new(0, 0), new(-1, 0), new(0, 2)];
        var move = RigidMove.Best(x, y);
        Assert.Equal(-33.690067525979785, move.Angle * 180 / Math.PI, 6);
        var shift = move.Of(default(Vector));
        Assert.Equal(-0.980483562263, shift.X, 6);
        Assert.Equal(0.296866535850, shift.Y, 6);
        Assert.Equal(1.859264966048014, x.Zip(y, (p, q) => Math.Pow((move.Of(p) - q).Length, 2)).Sum(), 6);
    }

    /// <summary>0.05 mm is half a step of the tape.</summary>
    [Fact]
    public void ExactOffsetsGiveTheMoveBack() =>
        Gen.Select(
                Gen.Select(
                    Gen.Double[-150_000, 150_000],
                    Gen.Double[-150_000, 150_000],
                    (a, b) => new Vector(a, b)
                ).Array[2, 6],
                Gen.Double[-5000, 5000],
                Gen.Double[-5000, 5000],
                Gen.Double[-0.05, 0.05]
            )
            .Where(c => (c.Item1[0] - c.Item1[1]).Length > 10_000)
            .Holds(
                (places, x, y, angle) =>
                {
                    var (sin, cos) = Math.SinCos(angle);
                    Vector Moved(Vector p) => new((p.X * cos) - (p.Y * sin) + x, (p.X * sin) + (p.Y * cos) + y);
                    // A person reads whole micrometres at best.
                    var move = RigidMove.Best(
                        [.. places],
                        [.. places.Select(Moved).Select(p => new Vector(Math.Round(p.X), Math.Round(p.Y)))]
                    );
                    foreach (
                        var corner in new Vector[] { new(-150_000, -150_000), new(150_000, -150_000), new(0, 150_000) }
                    )
                        Assert.InRange((move.Of(corner) - Moved(corner)).Length, 0, 50);
                },
                cases: 300
            );
}
