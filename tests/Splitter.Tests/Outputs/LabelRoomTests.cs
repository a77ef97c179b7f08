using Splitter.Geometry;
using Splitter.Outputs.Pictures;

namespace Splitter.Tests.Outputs;

public sealed class LabelRoomTests
{
    private const int Letters = 1000;

    private static readonly Box Mark = new(8000, 7000, 32_000, 13_000);

    /// <summary>Where marks fill a narrow strip, a length stands beside the strip, with a thin line to its own.</summary>
    [Fact]
    public void ALengthStepsAsideForMarks()
    {
        var (on, words) = Assert.NotNull(Length(new(0, 0, 40_000, 20_000)));
        Assert.False(words.Grown(Letters / 10).Meets(Mark), $"{words}");
        Assert.Equal(10_000, on.Y);
        Assert.InRange(on.X, 10_000, 30_000);
    }

    /// <summary>Where there is no room there either, only the table beside the picture has it.</summary>
    [Fact]
    public void ALengthWithoutRoomIsNotWritten() => Assert.Null(Length(new(0, 6000, 40_000, 14_000)));

    private static (Point On, Box Words)? Length(Box page)
    {
        var room = new LabelRoom(page, Letters);
        room.Take(Mark);
        return room.OnLine((new(10_000, 10_000), new(30_000, 10_000)), 6 * Letters, Letters, []);
    }
}
