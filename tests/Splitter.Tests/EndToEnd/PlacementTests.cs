using System.Text.Json;

namespace Splitter.Tests.EndToEnd;

/// <summary>Where the first part sews the lines that the cloth's folds are laid on, read from its tape.</summary>
public sealed class PlacementTests
{
    /// <summary>The demo's cloth is 620 mm high and its artwork begins 30 mm below the cloth's top edge.</summary>
    private const double BottomEdge = 620 - 30;

    /// <summary>The demo's upright fold: half of 460 mm, less the 20 mm left of the artwork.</summary>
    private const double Middle = (460 / 2.0) - 20;

    /// <summary>
    /// A fold one inch up from the bottom edge is 25.4 mm from it, whichever way the hoop lies (international yard and
    /// pound agreement, 1959; one inch is the trade's usual fold: common practice, no source).
    /// </summary>
    [Theory]
    [InlineData("small")]
    [InlineData("large")]
    public void TheFoldsLieWhereThePersonFolds(string hoop)
    {
        var files = Examples
            .Made("lighthouse-bay", hoop)
            .Sets.Single()
            .Files.ToDictionary(f => f.Path.Split('/')[^1], f => f.Bytes.ToArray());
        using var manifest = JsonDocument.Parse(files["manifest.json"]);
        var first = manifest.RootElement.GetProperty("parts")[0];
        Assert.Equal("placement", first.GetProperty("steps")[0].GetProperty("kind").GetString());

        var lines = PlainTape
            .Steps(files["part-A.dst"])[0]
            .Select(run => run.Select(p => LaidBack.OnDrawing(first, p)).ToList())
            .ToList();
        var level = Assert.Single(lines, line => line[0].Y == line[^1].Y);
        var upright = Assert.Single(lines, line => line[0].X == line[^1].X);
        Assert.All(level, p => Assert.Equal(25.4, BottomEdge - (p.Y / 10.0), 6));
        Assert.All(upright, p => Assert.Equal(Middle, p.X / 10.0, 6));
        // The two cross, with enough of both to lay a fold on: 30 mm of each (common practice, no source).
        Assert.True(level.Max(p => p.X) - level.Min(p => p.X) >= 300);
        Assert.True(upright.Max(p => p.Y) - upright.Min(p => p.Y) >= 300);
        Assert.InRange(upright[0].X, level.Min(p => p.X), level.Max(p => p.X));
        Assert.InRange(level[0].Y, upright.Min(p => p.Y), upright.Max(p => p.Y));
    }
}
