using System.Runtime.InteropServices;
using CsCheck;
using Splitter.Planning.Fit;

namespace Splitter.Tests.Planning.Fit;

/// <summary>Diameters of circles around places, by Euclid: given as x1, y1, x2, y2 …</summary>
public sealed class SmallestCircleTests
{
    [Theory]
    [InlineData(5, new double[] { 0, 0, 3, 0, 0, 4 })] // A right angle: the circle of Thales.
    [InlineData(10, new double[] { 7, 7, 17, 7, 12, 8 })] // An obtuse one: the longest side.
    [InlineData(10, new double[] { 0, 0, 6, 0, 3, 9 })] // Acute, sides 6, √90, √90: a b c / 2 K with K = 27.
    [InlineData(10, new double[] { 5, 1, -4, 4, 5, 7 })] // The same on its side.
    [InlineData(4, new double[] { 1, 1, 3, 1, 5, 1 })] // On a line.
    [InlineData(0, new double[] { 2, 3, 2, 3, 2, 3 })]
    [InlineData(10, new double[] { 0, 0, 6, 0, 6, 8, 0, 8 })] // A rectangle.
    [InlineData(10, new double[] { 4, 4, 0, 0, 6, 0, 3, 9, 3, 3 })] // What lies inside changes nothing.
    public void HoldsThemAll(double diameter, double[] places) =>
        Assert.Equal(diameter, SmallestCircle.Diameter(places), 9);

    [Fact]
    public void IsThatOfElzingaAndHearn() =>
        Gen.Select(Gen.Double[-1000, 1000], Gen.Double[-1000, 1000])
            .Array[3, 6]
            .Holds(places =>
                Assert.Equal(
                    EnclosingCircle.Diameter(places),
                    SmallestCircle.Diameter(MemoryMarshal.Cast<(double, double), double>(places.AsSpan())),
                    1e-3
                )
            );
}
