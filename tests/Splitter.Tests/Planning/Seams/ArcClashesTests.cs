using Splitter.Geometry;
using Splitter.Planning.Seams;

namespace Splitter.Tests.Planning.Seams;

/// <summary>Which boundaries run into each other. Places in millimetres: x and y in turn.</summary>
public sealed class ArcClashesTests
{
    [Theory]
    [InlineData("50 50 70 70", "50 70 70 50", "0 1")] // They cross.
    [InlineData("50 50 70 50", "60 50 60 70", "0 1")] // One ends amid the other.
    [InlineData("50 50 70 50", "60 50 90 50", "0 1")] // They lie on each other.
    [InlineData("50 50 70 50", "50 50 60 50", "0 1")] // The same from a shared end.
    [InlineData("50 50 70 50", "60 50 50 50", "0 1")]
    [InlineData("70 50 50 50", "50 50 60 50", "0 1")]
    [InlineData("70 50 50 50", "60 50 50 50", "0 1")]
    [InlineData("50 50 70 50", "70 50 90 50", "")] // One goes on from the other.
    [InlineData("50 50 70 50", "90 50 70 50", "")]
    [InlineData("70 50 50 50", "70 50 90 50", "")]
    [InlineData("70 50 50 50", "90 50 70 50", "")]
    [InlineData("50 50 50 70", "50 70 50 90", "")] // The same upright.
    [InlineData("50 50 70 70", "70 70 90 50", "")] // They meet at their ends.
    [InlineData("50 50 70 50", "50 51 70 51", "")] // Side by side.
    [InlineData("50 50 70 70", "62 60 90 40", "")] // Only their boxes meet.
    public void BoundariesMayMeetAtTheirEndsOnly(string one, string other, string clashing) =>
        Assert.Equal(clashing, Found(one, other));

    /// <summary>A boundary that crosses itself, and one that goes back over itself.</summary>
    [Theory]
    [InlineData("50 50 70 50 70 70 60 40", "0")]
    [InlineData("50 50 70 50 60 50", "0")]
    [InlineData("50 50 70 50 70 70 50 70 50 50", "")] // A closed one meets itself at its ends.
    public void NorDoesOneRunIntoItself(string arc, string clashing) => Assert.Equal(clashing, Found(arc, "0 0 1 0"));

    private static string Found(params string[] arcs) =>
        string.Join(
            ' ',
            ArcClashes
                .Find([
                    .. arcs.Select(arc =>
                    {
                        int[] at = [.. arc.Split(' ').Select(int.Parse)];
                        return new SeamArc(
                            0,
                            1,
                            [
                                .. Enumerable
                                    .Range(0, at.Length / 2)
                                    .Select(i => Point.FromMillimetres(at[2 * i], at[(2 * i) + 1])),
                            ]
                        );
                    }),
                ])
                .Order()
        );
}
