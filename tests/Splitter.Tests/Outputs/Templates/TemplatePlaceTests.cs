using System.Globalization;
using System.Text.Json;
using SkiaSharp;
using Splitter.Geometry;
using Splitter.Outputs.Templates;
using Splitter.Recipes;

namespace Splitter.Tests.Outputs.Templates;

/// <summary>Where things lie on paper, measured in pixels of 0.1 mm as poppler draws them.</summary>
public sealed class TemplatePlaceTests(HedgeTemplate template) : IClassFixture<HedgeTemplate>
{
    /// <summary>Stretch of an arm that is measured, pixels from its corner: beyond the ring, short of the end.</summary>
    private const int ArmFrom = 25,
        ArmTo = 60;

    /// <summary>How far off an arm is looked for, pixels.</summary>
    private const int Reach = 8;

    /// <summary>Pixels: 0.1 mm.</summary>
    private const double Near = 1.0;

    [SkippableTheory]
    [InlineData(Paper.A4)]
    [InlineData(Paper.Letter)]
    internal async Task CornersOfTheDesignLieWhereTheManifestSays(Paper paper)
    {
        PrintedPdf.SkipWithout("pdftoppm", "poppler-utils");
        var design = HedgeTemplate.Tilings(paper)[0];
        var measured = new HashSet<string>(StringComparer.Ordinal);
        foreach (var sheet in design.Printed)
        {
            using var drawn = await template.Printed(paper).Page(HedgeTemplate.PageOf(sheet));
            foreach (var part in HedgeTemplate.Manifest.GetProperty("parts").EnumerateArray())
            foreach (var corner in part.GetProperty("corners").EnumerateArray())
            {
                var at = Place(corner);
                var plan = HedgeTemplate.Set.Plan.Corners.Single(c => c.Id == Id(corner));
                if (!sheet.Shown.Grown(-Units.Millimetre).Contains(Box.Around([plan.At, plan.ArmX, plan.ArmY])))
                    continue;
                Check(drawn, OnPage(design, sheet, at.X, at.Y), plan.ArmX - plan.At, plan.ArmY - plan.At, Id(corner));
                measured.Add(Id(corner));
            }
        }
        Assert.Equal(HedgeTemplate.Set.Plan.Corners.Length, measured.Count);
    }

    /// <summary>As the contract has it: with w = -v, x = c.x + u cos t - w sin t, y = c.y + u sin t + w cos t.</summary>
    [SkippableFact]
    public async Task CornersOfPartsLieWhereTheManifestSays()
    {
        PrintedPdf.SkipWithout("pdftoppm", "poppler-utils");
        var tilings = HedgeTemplate.Tilings(Paper.A4);
        var (measured, turned) = (0, 0);
        foreach (var (part, i) in HedgeTemplate.Manifest.GetProperty("parts").EnumerateArray().Select((p, i) => (p, i)))
        {
            var sheet = tilings[i + 1].Printed.Single();
            using var drawn = await template.Printed(Paper.A4).Page(HedgeTemplate.PageOf(sheet));
            var field = part.GetProperty("field");
            var centre = field.GetProperty("center_mm");
            var turn = field.GetProperty("turn_deg").GetInt32();
            var (sin, cos) = (
                (int)Math.Round(Math.Sin(turn * Math.PI / 180)),
                (int)Math.Round(Math.Cos(turn * Math.PI / 180))
            );
            foreach (var corner in part.GetProperty("corners").EnumerateArray())
            {
                var (x, y) = (Place(corner).X - centre[0].GetDouble(), Place(corner).Y - centre[1].GetDouble());
                var plan = HedgeTemplate.Set.Plan.Corners.Single(c => c.Id == Id(corner));
                var arms = new[] { plan.ArmX - plan.At, plan.ArmY - plan.At }
                    .Select(a => new Point((a.X * cos) + (a.Y * sin), (a.Y * cos) - (a.X * sin)))
                    .OrderBy(a => a.X == 0)
                    .ToList();
                var at = OnPage(tilings[i + 1], sheet, (x * cos) + (y * sin), (y * cos) - (x * sin));
                Check(drawn, at, arms[0], arms[1], $"{Id(corner)} of part {part.GetProperty("letter")}");
                measured++;
            }
            turned += turn == 0 ? 0 : 1;
        }
        Assert.True(measured > 0 && turned > 0);
    }

    /// <summary>Laid over each other mark on mark, what two sheets show is the same, pixel by pixel.</summary>
    [SkippableTheory]
    [InlineData(Paper.A4)]
    [InlineData(Paper.Letter)]
    internal async Task SheetsLaidOnTheirMarksShowTheSame(Paper paper)
    {
        PrintedPdf.SkipWithout("pdftoppm", "poppler-utils");
        var design = HedgeTemplate.Tilings(paper)[0];
        Assert.NotEmpty(design.Marks);
        foreach (var pair in design.Marks.GroupBy(m => (m.First, m.Second)))
        {
            var (first, second) = (Sheet(design, pair.Key.First), Sheet(design, pair.Key.Second));
            using var one = await template.Printed(paper).Page(HedgeTemplate.PageOf(first));
            using var other = await template.Printed(paper).Page(HedgeTemplate.PageOf(second));
            Assert.Equal(2, pair.Count());
            var offsets = pair.Select(m => Middle(one, design, first, m) - Middle(other, design, second, m)).ToList();
            // Both marks give the same offset, and it lays what both sheets show on itself.
            Assert.Single(offsets.Distinct());
            var (ink, different) = Compare(design, one, first, other, second, offsets[0]);
            Assert.True(ink > 100, $"only {ink} pixels are inked where sheets {pair.Key} overlap");
            Assert.InRange((double)different / ink, 0, 0.01);
            var (_, wrong) = Compare(design, one, first, other, second, offsets[0] + new Point(3, 3));
            Assert.True(wrong > ink / 2, "a misfit would not show");
        }
    }

    /// <summary>Where a mark's lines cross on the page, from its ink alone, pixels.</summary>
    private static Point Middle(SKBitmap drawn, Tiling tiling, Sheet sheet, JoiningMark mark)
    {
        var near = OnPage(tiling, sheet, Units.ToMillimetres(mark.At.X), Units.ToMillimetres(mark.At.Y));
        var (x, y) = ((int)near.X, (int)near.Y);
        // A level and an upright stretch of 3 mm each way is inked nowhere else so long.
        const int Arm = 30;
        var row = Enumerable.Range(y - 20, 40).MaxBy(r => Ink(i => drawn.GetPixel(x + i, r)));
        var column = Enumerable.Range(x - 20, 40).MaxBy(c => Ink(i => drawn.GetPixel(c, y + i)));
        return new(column, row);

        static int Ink(Func<int, SKColor> pixel) => Enumerable.Range(-Arm, 2 * Arm).Sum(i => 255 - pixel(i).Red);
    }

    private static (int Ink, int Different) Compare(
        Tiling tiling,
        SKBitmap one,
        Sheet first,
        SKBitmap other,
        Sheet second,
        Point offset
    )
    {
        var common = first.Shown.Common(second.Shown).Grown(-Units.Millimetre);
        var (ink, different) = (0, 0);
        for (var y = common.Top; y < common.Bottom; y += 100)
        for (var x = common.Left; x < common.Right; x += 100)
        {
            if (IsSignOfASheet(tiling, first, new(x, y)) || IsSignOfASheet(tiling, second, new(x, y)))
                continue;
            var at = OnPage(tiling, first, Units.ToMillimetres(x), Units.ToMillimetres(y));
            var (a, b) = (
                one.GetPixel((int)at.X, (int)at.Y),
                other.GetPixel((int)at.X - offset.X, (int)at.Y - offset.Y)
            );
            if (Math.Min(a.Green, b.Green) < 200)
                ink++;
            if (Math.Abs(a.Green - b.Green) > 64)
                different++;
        }
        return (ink, different);
    }

    /// <summary>Cut lines, and marks with their names, which tell of the other sheet.</summary>
    private static bool IsSignOfASheet(Tiling tiling, Sheet sheet, Point at) =>
        Math.Abs(at.X - sheet.Own.Left) < 500
        || Math.Abs(at.X - sheet.Own.Right) < 500
        || Math.Abs(at.Y - sheet.Own.Top) < 500
        || Math.Abs(at.Y - sheet.Own.Bottom) < 500
        || tiling.Marks.Any(m => Math.Abs(at.Y - m.At.Y) < 9_000 && Math.Abs(at.X - m.At.X) < 30_000);

    private static void Check(SKBitmap drawn, (double X, double Y) at, Point armX, Point armY, string corner)
    {
        var (right, down) = (Math.Sign(armX.X), Math.Sign(armY.Y));
        var level = Centroid(drawn, i => (at.X + (right * i), at.Y), (x, y) => (x, y), t => t.Y, at.Y);
        var upright = Centroid(drawn, i => (at.X, at.Y + (down * i)), (x, y) => (y, x), t => t.X, at.X);
        Assert.True(Math.Abs(level - at.Y) <= Near, $"{corner}: level arm at {level}, not {at.Y}");
        Assert.True(Math.Abs(upright - at.X) <= Near, $"{corner}: upright arm at {upright}, not {at.X}");
    }

    /// <summary>The middle, across an arm, of the ink of a corner's colour.</summary>
    private static double Centroid(
        SKBitmap drawn,
        Func<int, (double X, double Y)> along,
        Func<int, int, (int, int)> order,
        Func<(double X, double Y), double> across,
        double expected
    )
    {
        double sum = 0,
            weight = 0;
        for (var i = ArmFrom; i < ArmTo; i++)
        for (var off = -Reach; off <= Reach; off++)
        {
            var at = along(i);
            var (u, v) = order(0, off);
            var (x, y) = ((int)Math.Floor(at.X) + u, (int)Math.Floor(at.Y) + v);
            var ink = CornerInk(drawn.GetPixel(x, y));
            sum += ink * (across((x, y)) + 0.5);
            weight += ink;
        }
        Assert.True(weight > 0, $"no arm near {expected.ToString(CultureInfo.InvariantCulture)}");
        return sum / weight;
    }

    /// <summary>How much of a corner's colour, a red that is rather blue than green, is on a pixel.</summary>
    private static int CornerInk(SKColor pixel) =>
        pixel.Red - pixel.Green > 40 && pixel.Blue > pixel.Green && pixel.Red > pixel.Blue ? 255 - pixel.Green : 0;

    private static Sheet Sheet(Tiling tiling, int number) => tiling.Printed.Single(s => s.Number == number);

    /// <summary>From millimetres of a board to pixels of a page.</summary>
    private static (double X, double Y) OnPage(Tiling tiling, Sheet sheet, double x, double y) =>
        (
            (x * 10) + ((tiling.Form.Window.Left - sheet.Shown.Left) / 100.0),
            (y * 10) + ((tiling.Form.Window.Top - sheet.Shown.Top) / 100.0)
        );

    private static (double X, double Y) Place(JsonElement corner) =>
        (corner.GetProperty("x_mm").GetDouble(), corner.GetProperty("y_mm").GetDouble());

    private static string Id(JsonElement corner) => corner.GetProperty("id").GetString()!;
}
