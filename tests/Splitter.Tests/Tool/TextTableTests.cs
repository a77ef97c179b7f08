using Splitter.Tool.Commands;

namespace Splitter.Tests.Tool;

public sealed class TextTableTests
{
    [Fact]
    public void NumbersStandOnTheRightAlsoBelowNothing()
    {
        var table = new TextTable("part", "centre x", "set by");
        table.Add("A", "-12.5", "-");
        table.Add("B", "7.0", "A");
        Assert.Equal("part  centre x  set by\nA        -12.5  -\nB          7.0  A\n", table.ToString());
    }
}
