using CsCheck;
using Splitter.Geometry;
using Splitter.Outputs.Pictures;
using Splitter.Tests.Outputs.Sheets;

namespace Splitter.Tests.Outputs;

/// <summary>Words on an overview leave the points free that tacks go through, and each other.</summary>
public sealed class OverviewLabelTests
{
    private const int Letters = 5_000;

    [Fact]
    public void LabelsKeepClearOfEveryPointAndOfEachOther() =>
        Gen.Select(Gen.Int[-9_000, 9_000], Gen.Int[-9_000, 9_000])
            .Array[36]
            .Holds(
                shifts =>
                {
                    var room = new LabelRoom(new Box(0, 0, 400_000, 400_000), Letters);
                    var points = shifts
                        .Select(
                            (s, i) =>
                                new Point(50_000 + (i % 6 * 32_000) + s.Item1, 50_000 + (i / 6 * 32_000) + s.Item2)
                        )
                        .ToList();
                    var corners = points.ConvertAll(p =>
                        Arms(p, p with { X = p.X + Along(p.X) }, p with { Y = p.Y + Along(p.Y) })
                    );
                    foreach (var arm in corners.SelectMany(c => c))
                        room.Take(arm);
                    var labels = points.ConvertAll(p => room.Beside(p, 3 * Letters, Letters, (1, 1)));
                    AllApart(labels, [.. corners.SelectMany(c => c)]);
                },
                cases: 100
            );

    [Fact]
    public void OnTheDemoNoWordHidesTheCornerOfATackOrAnotherWord()
    {
        var outlook = Examples.Planned("lighthouse-bay", "large");
        var plan = Assert.Single(outlook.Plans);
        var picture = OverviewPicture.Of(outlook.Job.Recipe, new(outlook.Job.Drawing, plan), []);
        // Three points in the corners' colour are a corner; the last one is the legend's.
        var corners = picture
            .Items.OfType<PaintedLines>()
            .Where(l => l.Colour == MarkInk.Corner && l.Lines[0].Length == 3)
            .Select(l => l.Lines[0])
            .ToList();
        Assert.Equal(plan.Corners.Length + 1, corners.Count);
        var ids = plan.Corners.Select(c => c.Id).ToHashSet(StringComparer.Ordinal);
        var joins = plan
            .Joins.Select(j => $"{plan.Hoopings[j.Earlier].Letter}-{plan.Hoopings[j.Later].Letter} ")
            .ToList();
        var words = picture
            .Items.OfType<PaintedText>()
            .Where(t => t.Colour != Colour.White)
            .Where(t => ids.Contains(t.Text) || joins.Exists(j => t.Text.StartsWith(j, StringComparison.Ordinal)))
            .Where(t => !t.Text.Contains(':', StringComparison.Ordinal))
            .Select(t => Box.Around([t.At, new(t.At.X + StrokeFont.WidthOf(t.Text, t.Height), t.At.Y - t.Height)]))
            .ToList();
        Assert.Equal(plan.Corners.Length + plan.Joins.Length, words.Count);
        AllApart(words, [.. corners.SelectMany(c => Arms(c[1], c[0], c[2]))]);
    }

    /// <summary>
    /// Thirty fields on a bedspread: their letters are apart, and no corner or figure that the parts' own pictures and
    /// the chart have lies between them.
    /// </summary>
    [Fact]
    public void OfManySmallFieldsAMapShowsTheLettersAlone()
    {
        var (job, plan) = (SheetSamples.Bedspread.Job, SheetSamples.Bedspread.Sets.Single().Plan);
        var picture = OverviewPicture.Of(job.Recipe, new(job.Drawing, plan), []);
        Assert.InRange(plan.Hoopings.Length, 20, 60);
        Assert.DoesNotContain(picture.Items.OfType<PaintedLines>(), line => line.Colour == MarkInk.Corner);
        var largest = picture.Items.OfType<PaintedText>().Where(t => t.Colour != Colour.White).ToList();
        var letters = plan
            .Hoopings.Select(h => largest.Where(t => t.Text == h.Letter).MaxBy(t => t.Height)!)
            .Select(t => Box.Around([t.At, new(t.At.X + StrokeFont.WidthOf(t.Text, t.Height), t.At.Y - t.Height)]))
            .ToList();
        AllApart(letters, []);
    }

    /// <summary>Heights of capitals, 2 mm at least on A4 (ISO 216: 210 x 297 mm).</summary>
    [Fact]
    public void TheDemoIsReadOnASheetOfA4()
    {
        var outlook = Examples.Planned("lighthouse-bay", "large");
        var picture = OverviewPicture.Of(outlook.Job.Recipe, new(outlook.Job.Drawing, outlook.Plans[0]), []);
        var (wide, high) = (Math.Max(picture.Width, picture.Height), Math.Min(picture.Width, picture.Height));
        var scale = Math.Min(297_000.0 / wide, 210_000.0 / high);
        Assert.InRange(picture.Items.OfType<PaintedText>().Min(t => t.Height) * scale, 2000, 4000);
    }

    /// <summary>One way or the other, so that arms point to all four sides.</summary>
    private static int Along(int value) => value % 2 == 0 ? 8_000 : -8_000;

    /// <summary>The two arms of a corner, which meet in its point.</summary>
    private static Box[] Arms(Point at, Point one, Point other) => [Box.Around([at, one]), Box.Around([at, other])];

    private static void AllApart(IReadOnlyList<Box> labels, IReadOnlyList<Box> corners)
    {
        for (var i = 0; i < labels.Count; i++)
        {
            Assert.DoesNotContain(corners, labels[i].Meets);
            for (var k = 0; k < i; k++)
                Assert.False(labels[i].Meets(labels[k]), $"{labels[i]} {labels[k]}");
        }
    }
}
