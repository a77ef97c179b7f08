using System.Globalization;
using System.Text;
using Splitter.Parts;
using Splitter.Stitching;

namespace Splitter.Tests.Parts;

/// <summary>Moves between blocks of one thread: a long one is trimmed, a short one lies flat; the thread is tied either way.</summary>
public sealed class TrimTests
{
    /// <summary>Two lines of one thread that lie some millimetres apart.</summary>
    private static Move[] Sewn(double apart)
    {
        var (one, other) = (20 + apart, 40 + apart);
        var recipe = string.Create(
            CultureInfo.InvariantCulture,
            $$"""
            splitter: 1
            artwork:
              shapes:
                - { wkt: "LINESTRING (0 0, 20 0)", id: one, stroke: "#14304f", stroke-width: 0.5 mm }
                - { wkt: "LINESTRING ({{one}} 0, {{other}} 0)", id: other, stroke: "#14304f", stroke-width: 0.5 mm }
            hoops: [{ name: small, field: 130 x 180 mm }]
            output: { folder: parts, files: [tape] }
            """
        );
        var set = Pipeline.Make(new("lines.yaml", Encoding.UTF8.GetBytes(recipe), _ => default)).Value.Sets.Single();
        return [.. set.Parts.Single().Steps.Single(s => s.Kind == StepKind.Body).Moves];
    }

    /// <summary>
    /// Common practice, no source: a move of 2 mm or less lies flat, a longer one shows. The needle leaves one line and comes to
    /// the other on a tie, 0.7 mm from its end.
    /// </summary>
    [Theory]
    [InlineData(0.5, false)]
    [InlineData(0.6, false)]
    [InlineData(0.7, true)]
    [InlineData(30.0, true)]
    public void MovesLongerThanTwoMillimetresAreTrimmed(double apart, bool trimmed)
    {
        var moves = Sewn(apart);
        Assert.Equal(2, moves.Length);
        Assert.False(moves[0].Trim);
        Assert.Equal((apart + 1.4) * 1000, moves[0].Block.End.DistanceTo(moves[1].Block.Start), 1e-6);
        Assert.Equal(trimmed, moves[1].Trim);
        Assert.All(
            moves,
            move =>
            {
                Assert.All(move.Block.Stitches[..3], s => Assert.Equal(StitchUse.Tie, s.Use));
                Assert.All(move.Block.Stitches[^3..], s => Assert.Equal(StitchUse.Tie, s.Use));
            }
        );
    }
}
