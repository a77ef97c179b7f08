using Splitter.Starting;

namespace Splitter.Tests.Starting;

public class ColourNamesTests
{
    // Source: CSS Color Module Level 4, section 6.1, named colours; the names here are those or plainer ones.
    [Theory]
    [InlineData("#000000", "black")]
    [InlineData("#ffffff", "white")]
    [InlineData("#808080", "grey")]
    [InlineData("#d3d3d3", "light grey")]
    [InlineData("#ff0000", "red")]
    [InlineData("#8b0000", "dark red")]
    [InlineData("#ffa500", "orange")]
    [InlineData("#8b4513", "brown")]
    [InlineData("#f5f5dc", "cream")]
    [InlineData("#ffff00", "yellow")]
    [InlineData("#008000", "dark green")]
    [InlineData("#90ee90", "light green")]
    [InlineData("#008080", "dark teal")]
    [InlineData("#0000ff", "blue")]
    [InlineData("#000080", "dark blue")]
    [InlineData("#ee82ee", "light pink")]
    public void AColourHasAPlainName(string colour, string name) => Assert.Equal(name, ColourNames.Of(colour));

    [Fact]
    public void ColoursOfOneNameAreNumbered() =>
        Assert.Equal(
            ["blue", "red", "blue 2", "blue 3"],
            ColourNames.Of(["#0000ff", "#ff0000", "#0000ee", "#0000dd"]).AsEnumerable()
        );
}
