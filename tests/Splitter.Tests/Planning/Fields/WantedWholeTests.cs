using Splitter.Diagnostics;
using Splitter.Planning;
using Splitter.Planning.Fields;
using Splitter.Tests.Artwork.Tapes;

namespace Splitter.Tests.Planning.Fields;

/// <summary>Columns of a tape, and small things, stay whole where that takes no hooping more.</summary>
public sealed class WantedWholeTests
{
    /// <summary>Two fields of 70 mm hold the fill; a column of 60 mm lies upon it.</summary>
    private static Result<Production> Made(double y, double height, string rule = "") =>
        HandTape.Make(Tape(y, height), 2, 70, 70, artwork: rule);

    private static byte[] Tape(double y, double height) =>
        new HandTape().Rows(0, 0, 30, height).Stop().Jump(10, y, 12).Column(10, y, 3, 60).Bytes;

    private static bool IsCut(Result<Production> made) =>
        made.Value.Sets.Single()
            .Parts.Count(part => part.Steps.Any(step => step.Thread?.Name == "t2" && step.Moves.Length > 0)) > 1;

    private static bool IsTold(Diagnostic diagnostic) => diagnostic.Code == "SPL3019";

    /// <summary>What holds all of them in as many fields comes first, else what holds the small ones.</summary>
    [Theory]
    [InlineData(2, 2, 0)]
    [InlineData(3, 2, 1)]
    [InlineData(3, 3, 2)]
    public void LayoutsThatHoldThemComeFirst(int all, int small, int expected)
    {
        var drawing = Samples.Drawing(Samples.Rectangle("column", 10, 25, 60, 3) with { WantsWhole = true });
        Layout Of(int fields, int bound) => new([.. Enumerable.Repeat(default(Field)!, fields)], [], bound);
        var any = Of(2, 2);
        Layout[] holding = [Of(all, all), Of(small, small)];
        var kept = WantedWhole.Kept(
            drawing,
            [any],
            wanted => [holding[wanted(new(0, 0, 60_000, 3000)) ? 0 : 1]],
            _ => true
        );
        Layout[] first = expected == 2 ? [any] : [holding[expected], any];
        Assert.Equal(first.Select(l => l.Fields), kept.Select(l => l.Fields));
    }

    [Fact]
    public void AColumnThatAFieldCanHoldIsWhole()
    {
        var made = Made(38, 100);
        Assert.DoesNotContain(made.Diagnostics, IsTold);
        Assert.False(IsCut(made));
        Assert.Equal(2, made.Value.Sets.Single().Parts.Length);
    }

    [Fact]
    public void AColumnThatWouldTakeAHoopingMoreIsCutAndThatIsTold()
    {
        var made = Made(25, 110);
        var told = Assert.Single(made.Diagnostics, IsTold);
        Assert.True(IsCut(made));
        Assert.Contains("{ match: { id: block-2-satin-1 }, keep-whole: true }", told.Message, StringComparison.Ordinal);
        var asked = Made(25, 110, ", sew: [{ match: { id: block-2-satin-1 }, keep-whole: true }]");
        Assert.DoesNotContain(asked.Diagnostics, IsTold);
        Assert.False(IsCut(asked));
        Assert.Equal(3, asked.Value.Sets.Single().Parts.Length);
        var bidden = Made(25, 110, ", sew: [{ match: { id: block-2-satin-1 }, keep-whole: false }]");
        Assert.DoesNotContain(bidden.Diagnostics, IsTold);
    }
}
