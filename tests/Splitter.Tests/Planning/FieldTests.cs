using CsCheck;
using Splitter.Geometry;
using Splitter.Planning;

namespace Splitter.Tests.Planning;

/// <summary>A hoop of 100 x 60 mm on the drawing, turned clockwise; u runs to its right, v to its top.</summary>
public sealed class FieldTests
{
    private static readonly Turn[] Turns = Enum.GetValues<Turn>();

    /// <summary>1 mm to the hoop's right and 2 mm to its top, seen on the drawing, where y runs down.</summary>
    [Theory]
    [InlineData(0, 1, -2)]
    [InlineData(1, 2, 1)]
    [InlineData(2, -1, 2)]
    [InlineData(3, -2, -1)]
    public void AHoopIsTurnedClockwise(int quarters, int x, int y)
    {
        var field = FieldOf(Turns[quarters]);
        Assert.Equal(field.Centre + Point.FromMillimetres(x, y), field.ToDesign(new(1000, 2000)));
    }

    /// <summary>What is laid on the hoop and back lies where it was, and in the field if and only if in the hoop.</summary>
    [Fact]
    public void ToTheHoopAndBackIsNoMove() =>
        Gen.Select(Gen.Int[-80_000, 80_000], Gen.Int[-80_000, 80_000], Gen.Int[0, 3])
            .Holds(t =>
            {
                var (field, at) = (FieldOf(Turns[t.Item3]), new Point(t.Item1, t.Item2));
                var inHoop = field.ToField(at);
                Assert.Equal(at, field.ToDesign(inHoop));
                Assert.Equal(field.Bounds.Contains(at), Math.Abs(inHoop.U) <= 50_000 && Math.Abs(inHoop.V) <= 30_000);
            });

    private static Field FieldOf(Turn turn) => new(Samples.Hoop(100, 60), new(7000, -3000), turn, 0);
}
