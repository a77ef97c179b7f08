using System.Globalization;
using System.Text;
using Splitter.Outputs;

namespace Splitter.Tests.Outputs;

/// <summary>Text is the same in however many pieces it is written.</summary>
public sealed class TextBytesTests
{
    /// <summary>Begun with little room, so that all ways to add come upon the end of a piece, and go past the largest.</summary>
    [Fact]
    public void LongTextIsAsItWasAdded()
    {
        var (text, expected) = (new TextBytes(room: 16), new StringBuilder());
        for (var i = 0; i < 200_000; i++)
        {
            text.Add("Fläche ").Add(i).Add(',').AddTenths(-i).Add("; "u8);
            expected.Append(CultureInfo.InvariantCulture, $"Fläche {i},{(i == 0 ? "" : "-")}{i / 10}.{i % 10}; ");
        }
        Assert.Equal(expected.ToString(), Encoding.UTF8.GetString(text.ToArray()));
        Assert.Equal("anew", Encoding.UTF8.GetString(text.Add("anew").ToArray()));
    }
}
