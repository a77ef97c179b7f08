using System.Collections.Immutable;
using System.Globalization;
using Splitter.Geometry;
using Splitter.Outputs;
using Splitter.Outputs.Pictures;
using Splitter.Outputs.Sheets;
using Splitter.Outputs.Tapes;
using Splitter.Parts;
using Splitter.Planning;
using Splitter.Tests.Outputs.Sheets;

namespace Splitter.Tests.Outputs;

/// <summary>
/// Names of corners, numbers of crosses and distances between corners, in the pictures that a person sews by: none hides
/// another or a mark, none leaves the page, and one that stands far off has a line to what it names.
/// </summary>
public sealed class MarkLabelTests
{
    public static TheoryData<string> Works =>
        ["lighthouse-bay small", "lighthouse-bay large", "faroe-islands small", "sails", "strip"];

    [Theory]
    [MemberData(nameof(Works))]
    public void InTheHoopOfTheSheetWordsKeepClear(string name)
    {
        var (job, set) = Made(name);
        var listed = set.Parts.Select(part => new ListedPart(part, FiguresOf(job, part), [])).ToImmutableArray();
        var work = WorkFigures.Of(job.Recipe, job.Drawing, listed);
        var sheet = new SheetContent(job.Recipe, job.Drawing, set.Plan, listed, work) { RecipeFile = "work.yaml" };
        foreach (var part in set.Parts)
        {
            var items = new HoopView(sheet, part).Paint().ToList();
            Check($"{name}, hoop of {part.Letter}", items, part, part.TakenOut, set.Plan);
            // The hoop's outline is drawn first.
            var hoop = Box.Around(((PaintedLines)items[0]).Lines.SelectMany(l => l));
            CheckLengths($"{name}, hoop of {part.Letter}", items);
            var words = items.OfType<PaintedText>().Where(t => t.Colour != Colour.White && IsOfMarks(t));
            Assert.All(words, word => Assert.True(hoop.Contains(BoxOf(word)), $"{name}, {part.Letter}: {word.Text}"));
        }
    }

    [Theory]
    [MemberData(nameof(Works))]
    public void InThePictureOfAPartWordsKeepClear(string name)
    {
        var (job, set) = Made(name);
        foreach (var part in set.Parts)
        {
            var picture = PartPicture.Of(job.Recipe, set.Plan, part, FiguresOf(job, part), "1 min");
            Check($"{name}, part {part.Letter}", [.. picture.Items], part, [], set.Plan);
        }
    }

    private static PartFigures FiguresOf(Job job, Part part) =>
        PartFigures.Of(job.Recipe, part, PartTape.Of(part, job.Recipe.Title));

    private static (Job Job, PartSet Set) Made(string work)
    {
        var production = work switch
        {
            "sails" => SheetSamples.Sails,
            "strip" => SheetSamples.Strip,
            _ => Examples.Made(work.Split(' ')[0], work.Split(' ')[1]),
        };
        return (production.Job, production.Sets.Single());
    }

    private static void Check(string where, List<Item> items, Part part, IEnumerable<string> shown, Plan plan)
    {
        var hooping = part.Hooping;
        var names = hooping.Takes.Concat(hooping.Gives).Select(i => plan.Corners[i].Id).Union(shown).ToList();
        var words = items.OfType<PaintedText>().Where(t => t.Colour != Colour.White).Where(IsOfMarks).ToList();
        var numbers = Enumerable.Range(1, hooping.Alignments.Length).Select(i => $"{i}");
        Assert.Equal(
            names.Concat(numbers).Order(StringComparer.Ordinal),
            words.Where(w => w.Colour != Colour.Ink).Select(w => w.Text).Order(StringComparer.Ordinal)
        );
        var marks = items.SelectMany(MarksIn).ToList();
        Assert.True(marks.Count >= names.Count);
        var boxes = words.ConvertAll(BoxOf);
        foreach (var (i, box) in boxes.Index())
        {
            Assert.True(!marks.Exists(box.Meets), $"{where}: {words[i].Text} hides a mark");
            for (var k = 0; k < i; k++)
                Assert.False(box.Meets(boxes[k]), $"{where}: {words[i].Text} and {words[k].Text}");
        }
    }

    /// <summary>How long a line is stands on no other dashed line, which it would seem to be the length of.</summary>
    private static void CheckLengths(string where, List<Item> items)
    {
        var dashed = items
            .OfType<PaintedLines>()
            .Where(l => l.Colour == MarkInk.Corner && l.Lines.Length > 2 && l.Lines.All(dash => dash.Length == 2))
            .ToList();
        foreach (
            var word in items.OfType<PaintedText>().Where(t => t.Text.EndsWith("\u00a0mm", StringComparison.Ordinal))
        )
        {
            var millimetres = double.Parse(word.Text.Split(' ')[^1][..^3], CultureInfo.InvariantCulture);
            // The last dash may end short of the line's own end by a gap.
            var own = dashed.Where(line =>
                Math.Abs(line.Lines[0][0].DistanceTo(line.Lines[^1][1]) - (millimetres * 1000)) <= word.Height
            );
            Assert.NotEmpty(own);
            var others = dashed.Except(own).SelectMany(line => line.Lines).SelectMany(dash => dash);
            Assert.False(others.Any(BoxOf(word).Contains), $"{where}: {word.Text}");
        }
    }

    private static bool IsOfMarks(PaintedText text) =>
        text.Colour == MarkInk.Corner
        || text.Colour == MarkInk.Alignment
        || text.Text.EndsWith("\u00a0mm", StringComparison.Ordinal);

    private static Box BoxOf(PaintedText text) =>
        Box.Around([text.At, new(text.At.X + StrokeFont.WidthOf(text.Text, text.Height), text.At.Y - text.Height)]);

    /// <summary>Arms, rings and crosses, by their colours; lines of two points lead to names or carry distances.</summary>
    private static IEnumerable<Box> MarksIn(Item item)
    {
        if (item.Colour != MarkInk.Corner && item.Colour != MarkInk.Alignment)
            return [];
        return item switch
        {
            PaintedThread thread => thread.Lines.SelectMany(line => Stretches([.. line], 0)),
            PaintedLines { Lines: [{ Length: 2 }] } => [],
            PaintedLines { Lines: [{ Length: 3 } arms] } corner => Stretches([.. arms], corner.Width / 2),
            PaintedLines { Lines: [{ Length: 2 }, { Length: 2 }] } cross when cross.Colour == MarkInk.Alignment =>
                cross.Lines.SelectMany(l => Stretches([.. l], cross.Width / 2)),
            PaintedLines ring when ring.Lines.Any(l => l.Length > 2) =>
            [
                Box.Around(ring.Lines.SelectMany(l => l)).Grown(ring.Width / 2),
            ],
            _ => [],
        };
    }

    private static IEnumerable<Box> Stretches(List<Point> line, int pen) =>
        line.Skip(1).Select((to, i) => Box.Around([line[i], to]).Grown(pen));
}
