using Splitter.Recipes;
using Splitter.Texts;

namespace Splitter.Tests.Texts;

public sealed class PhrasebookTests
{
    private static Phrasebook In(SheetLanguage language, LengthUnit unit = LengthUnit.Millimetres) =>
        new(
            new()
            {
                Folder = "",
                Language = language,
                Lengths = unit,
            }
        );

    [Fact]
    public void LengthsAreInTheRecipesUnitWithTheLanguagesDecimalMark()
    {
        Assert.Equal("12.3\u00a0mm", In(SheetLanguage.English).Numbers.Length(12_340));
        Assert.Equal("12,3\u00a0mm", In(SheetLanguage.German).Numbers.Length(12_340));
        // One inch is 25.4 mm exactly.
        Assert.Equal("5.00\u00a0in", In(SheetLanguage.English, LengthUnit.Inches).Numbers.Length(127_000));
        Assert.Equal("0,020\u00a0in", In(SheetLanguage.German, LengthUnit.Inches).Numbers.Fine(508));
        Assert.Equal("0.0\u00a0mm", In(SheetLanguage.English).Numbers.Fine(0));
        Assert.Equal("230\u00a0×\u00a0280\u00a0mm", In(SheetLanguage.German).Numbers.RoughSize(230_000, 280_400));
    }

    [Theory]
    [InlineData(0.2, "1\u00a0min")]
    [InlineData(59.2, "1\u00a0h")]
    [InlineData(60.1, "1\u00a0h\u00a001\u00a0min")]
    [InlineData(725, "12\u00a0h\u00a005\u00a0min")]
    public void TimesAreRoundedUp(double minutes, string expected) => Assert.Equal(expected, Numbers.Time(minutes));

    /// <summary>A yard is 0.9144 m.</summary>
    [Fact]
    public void ThreadIsRoundedUp()
    {
        Assert.Equal("10\u00a0m", In(SheetLanguage.English).Numbers.Thread(9.01));
        Assert.Equal("11\u00a0yd", In(SheetLanguage.English, LengthUnit.Inches).Numbers.Thread(9.2));
    }

    [Fact]
    public void WhatATextDoesNotAskForIsADefect()
    {
        var say = In(SheetLanguage.English);
        Assert.Throws<InvalidOperationException>(() => say.Say("no such text"));
        Assert.Throws<InvalidOperationException>(() => say.Say("stop.thread"));
        Assert.Throws<InvalidOperationException>(() => say.Say("stop.unfold", ("thread", "blue")));
        Assert.Equal("Change to thread: {x}.", say.Say("stop.thread", ("thread", "{x}")));
        Assert.Equal("A1, A2 and B1", say.Listed(["A1", "A2", "B1"]));
        Assert.Equal("1 tack", say.Many("tacks", 1));
        Assert.Equal("12\u00a0345 tacks", say.Many("tacks", 12_345));
    }
}
