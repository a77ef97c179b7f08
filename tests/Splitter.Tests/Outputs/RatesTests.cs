using Splitter.Outputs;
using Splitter.Outputs.Tapes;

namespace Splitter.Tests.Outputs;

/// <summary>
/// Thread against what handbooks of sewing give for stitch type 301 of ISO 4915 (lockstitch); time by hand.
/// </summary>
public sealed class RatesTests
{
    /// <summary>
    /// Needle thread of a stitch: its length and the cloth's thickness, L + T; 4.6 and 3.5 m for a thousand stitches of
    /// 4 and 3 mm in cloth of 0.6 and 0.5 mm. What is added for waste: 10 to 20 %.
    /// </summary>
    [Theory]
    [InlineData(4000, 600, 4.6)]
    [InlineData(3000, 500, 3.5)]
    public void AThousandStitchesTakeTheHandbooksThread(int length, int thickness, double metres)
    {
        Assert.Equal(metres, 1000 * Rates.NeedleThread(length, thickness) / 1e6, 12);
        Assert.InRange(Rates.ThreadWaste, 0.10, 0.20);
    }

    /// <summary>
    /// Both threads of an inch of seam, C = 2 + 2TS: S stitches an inch, T inches of cloth; 2.2 inches for T = 0.01, S
    /// = 10. In a balanced seam the needle thread is half of it.
    /// </summary>
    [Fact]
    public void AnInchOfSeamTakesTheHandbooksThread()
    {
        const double Inch = 25_400;
        Assert.Equal(2.2, 2 * 10 * Rates.NeedleThread(Inch / 10, 254) / Inch, 12);
    }

    /// <summary>
    /// 4 to 6 m of needle thread a thousand stitches, bobbin a third to a half: common practice, no source.
    /// </summary>
    [Theory]
    [InlineData("lighthouse-bay", "large")]
    [InlineData("faroe-islands", "large")]
    public void TheDemosTakeWhatIsUsual(string recipe, string hoop)
    {
        var set = Examples.Made(recipe, hoop);
        var metres = 0.0;
        var stitches = 0;
        foreach (var part in set.Sets.Single().Parts)
        {
            var figures = PartFigures.Of(set.Job.Recipe, part, PartTape.Of(part, ""));
            metres += figures.StepMetres.Sum();
            stitches += figures.Counts.Stitches;
            Assert.Equal(figures.StepMetres.Sum(), figures.Threads.Sum(t => t.Metres), 6);
            Assert.Equal(figures.StepMetres.Sum() / 2, figures.BobbinMetres, 6);
        }
        Assert.InRange(1000 * metres / stitches, 3.0, 6.0);
    }

    /// <summary>700 stitches are a minute; two stops are 3, six trims 0.7 minutes.</summary>
    [Fact]
    public void TimesAddUp()
    {
        Assert.Equal(1 + 3 + 0.7, Rates.Minutes(new(), 700, 2, 6), 12);
        Assert.Equal(45, Rates.HoopingMinutes(new(), 3), 12);
        Assert.Equal(2, Rates.Minutes(new() { Speed = 350 }, 700, 0, 0), 12);
    }

    /// <summary>Steps and stops of a part make up its time, threads of a work its stitches.</summary>
    [Fact]
    public void TheWholeIsTheSumOfItsSteps()
    {
        var recipe = HandMade.Recipe;
        var parts = HandMade
            .Parts.Select(p => new ListedPart(p, PartFigures.Of(recipe, p, PartTape.Of(p, "")), []))
            .ToList();
        foreach (var part in parts)
        {
            var steps = part.Part.Steps.Sum(s => part.Figures.StepMinutes(recipe.Machine, s));
            Assert.Equal(part.Figures.Minutes, steps + (part.Figures.Counts.Stops * 1.5), 9);
        }
        var work = WorkFigures.Of(recipe, HandMade.Drawing, [.. parts]);
        Assert.Equal(["deep water", "brick", "marking thread"], work.Threads.Select(t => t.Name));
        Assert.Equal(work.Stitches, work.Threads.Sum(t => t.Stitches));
        Assert.Equal(parts.Sum(p => p.Figures.Threads.Sum(t => t.Metres)), work.Metres, 9);
        Assert.Equal(["A", "B"], work.Threads[0].Letters.AsEnumerable());
    }
}
