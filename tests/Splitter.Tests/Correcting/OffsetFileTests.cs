using System.Text;
using Splitter.Correcting;

namespace Splitter.Tests.Correcting;

/// <summary>What was measured, in a file.</summary>
public sealed class OffsetFileTests
{
    [Fact]
    public void RightAndUpCountAndLeftAndDownAreTheirOpposites()
    {
        var read = OffsetFile.Read(
            "offsets.yaml",
            Encoding.UTF8.GetBytes(
                "{ part: D, offsets: [{ at: 1, right: 0.6 mm, down: 0.2 mm }, { at: A2, left: 0.1 mm }] }"
            )
        );
        Assert.Empty(read.Diagnostics);
        Assert.Equal("D", read.Value.Part);
        Assert.Equal([("1", 600, -200), ("A2", -100, 0)], read.Value.Offsets.Select(o => (o.At, o.Right, o.Up)));
    }

    /// <summary>All that is wrong with it is told at once, and nothing of it is used.</summary>
    [Theory]
    [InlineData("{ part: D, offsets: [{ at: 1, right: 1 mm, left: 1 mm }, { at: 2 }] }", 2)]
    [InlineData("{ part: D }", 1)]
    [InlineData("{ offsets: [{ at: 1, right: 1 mm }, { at: 2, up: 1 mm }] }", 1)]
    [InlineData("[", 1)]
    public void AMistakeIsTold(string text, int mistakes)
    {
        var read = OffsetFile.Read("offsets.yaml", Encoding.UTF8.GetBytes(text));
        Assert.False(read.Succeeded);
        Assert.Equal(mistakes, read.Diagnostics.Length);
    }
}
