using System.Collections.Immutable;
using System.Globalization;
using System.Text;
using System.Xml.Linq;
using Splitter.Correcting;
using Splitter.Diagnostics;
using Splitter.Parts;
using Splitter.Texts;

namespace Splitter.Tests.Outputs.Sheets;

/// <summary>General advice is given once, and a part's page has what is its own: edges, crosses, amounts that add up.</summary>
public sealed class SheetAdviceTests
{
    /// <summary>A sentence of that many letters is advice; shorter ones are what one does next.</summary>
    private const int Advice = 100;

    private static PartSet Sails => SheetSamples.Sails.Sets.Single();

    [Fact]
    public void NoAdviceIsGivenOnTwoPages()
    {
        var pages = PartsOf(SheetSamples.PageOf(Sails)).Select(AdviceOf).ToList();
        Assert.True(pages.Count > 2);
        Assert.Equal(pages.SelectMany(p => p).Distinct(StringComparer.Ordinal), pages.SelectMany(p => p));
        var general = AdviceOf(SheetSamples.PageOf(Sails).Descendants("section").Single(s => Id(s) == "every-hooping"));
        Assert.True(general.Count > 5);
        Assert.Empty(general.Intersect(pages.SelectMany(p => p), StringComparer.Ordinal));
    }

    /// <summary>One cross cannot have a mean, and shows no turn.</summary>
    [Fact]
    public void WhatIsSaidOfCrossesFitsTheirNumber()
    {
        var pages = PartsOf(SheetSamples.PageOf(Sails)).ToList();
        var counts = Sails.Parts.Select(p => p.Hooping.Alignments.Length).ToList();
        Assert.Contains(counts, c => c > 1);
        foreach (var (page, count) in pages.Zip(counts))
        {
            Assert.Equal(count > 1, page.Value.Contains("mean", StringComparison.Ordinal));
            Assert.Equal(count == 1, page.Value.Contains("One cross", StringComparison.Ordinal));
            var names = page.Descendants("table").Where(t => t.Element("caption")!.Value == "Does it fit?");
            Assert.Equal(count, names.SelectMany(t => t.Element("tbody")!.Elements("tr")).Count());
        }
    }

    /// <summary>Without a cross there is no stop to look at the fit: where the cloth is set, the needle shows it.</summary>
    [Theory]
    [InlineData(true)]
    [InlineData(false)]
    public void APartWithoutACrossSaysHowToLookOtherwise(bool looks)
    {
        var (recipe, drawing) = (SheetSamples.Sails.Job.Recipe, SheetSamples.Sails.Job.Drawing);
        recipe = recipe with { Registration = recipe.Registration with { Alignment = looks } };
        var plan = Sails.Plan with { Hoopings = [.. Sails.Plan.Hoopings.Select(h => h with { Alignments = [] })] };
        var parts = PartBuilder.Build(
            recipe,
            drawing,
            plan,
            [.. plan.Hoopings.Select(_ => ImmutableArray<BodyStep>.Empty)]
        );
        Assert.All(
            // Without a body the last one ends there, and has no stop.
            parts[1..^1],
            part =>
                Assert.Equal(looks, part.Steps[0].Stop!.Contains("no cross to check the fit", StringComparison.Ordinal))
        );
        Assert.DoesNotContain(
            Sails.Parts,
            part => part.Steps.Any(s => s.Stop?.Contains("no cross to", StringComparison.Ordinal) == true)
        );
    }

    /// <summary>As it stands on the page, realign reads it: hoop, part, and places that it knows.</summary>
    [Fact]
    public void EachPartHasTheWholeLineThatMovesIt()
    {
        foreach (var (i, page) in PartsOf(SheetSamples.PageOf(Sails)).Index().Skip(1))
        {
            var words = page.Descendants("code").Single().Value.Split("--at ");
            Assert.Equal($"splitter realign sails.yaml --hoop small --part {Sails.Parts[i].Letter} ", words[0]);
            var read = OffsetWords.Read(words[1..], Place.Whole("call"));
            var places = MeasurablePlace.Of(SheetSamples.Sails.Job.Drawing, Sails.Plan, i);
            Assert.True(Sighting.Of(places, Sails.Plan.Hoopings[i], read.Value, Place.Whole("call")).Succeeded);
            Assert.All(read.Value, offset => Assert.Contains(offset.At, page.Value, StringComparison.Ordinal));
        }
    }

    /// <summary>So is the file that says the same, once for the whole work: of a part that is there.</summary>
    [Fact]
    public void TheFileThatMovesAPartIsOfThisWork()
    {
        var page = SheetSamples.PageOf(Sails).Descendants("section").Single(s => Id(s) == "every-hooping");
        var file = page.Descendants("code").Single(c => c.Value.StartsWith('{')).Value;
        var read = OffsetFile.Read("offsets.yaml", Encoding.UTF8.GetBytes(file)).Value;
        var part = Sails.Parts.Select(p => p.Letter).ToList().IndexOf(read.Part);
        var places = MeasurablePlace.Of(SheetSamples.Sails.Job.Drawing, Sails.Plan, part);
        Assert.True(
            Sighting.Of(places, Sails.Plan.Hoopings[part], read.Offsets, Place.Whole("offsets.yaml")).Succeeded
        );
    }

    [Fact]
    public void ThatPartsLieDifferentWaysIsSaidWhereTheyDo()
    {
        PartSet[] sets = [Sails, SheetSamples.Strip.Sets.Single()];
        foreach (var set in sets)
            Assert.Equal(
                set.Plan.Hoopings.DistinctBy(h => h.Field.Turn).Count() > 1,
                SheetSamples.PageOf(set).Value.Contains("Parts lie different ways", StringComparison.Ordinal)
            );
        Assert.Contains(sets, set => set.Plan.Hoopings.DistinctBy(h => h.Field.Turn).Count() == 1);
    }

    /// <summary>The overlap runs along a line: what it covers hides no step across.</summary>
    [Fact]
    public void WhereALineIsCutNoMoreIsGoodThanPeopleNotice()
    {
        var (stem, sails) = (SheetSamples.Strip.Sets.Single(), Sails);
        Assert.All(stem.Plan.Joins.Concat(sails.Plan.Joins), join => Assert.True(join.Covers > 500));
        Assert.All(GoodWithin(stem), good => Assert.Equal("0.5", good));
        Assert.Contains(GoodWithin(sails), good => good != "0.5");

        static IEnumerable<string> GoodWithin(PartSet set) =>
            PartsOf(SheetSamples.PageOf(set))
                .SelectMany(page => page.Descendants("table"))
                .Where(t => t.Element("caption")!.Value == "Does it fit?")
                .SelectMany(t => t.Element("tbody")!.Elements("tr"))
                .Select(row => Cells(row)[2].Split('\u00a0')[0]);
    }

    /// <summary>Half of what a distance is off lies at each of its corners, and shows as it does at a cross.</summary>
    [Fact]
    public void NoMoreIsGoodBetweenCornersThanAtBothOfThem()
    {
        var set = SheetSamples.OverlappingStrip.Sets.Single();
        Assert.All(set.Plan.Joins, join => Assert.True(join.Covers > 2000));
        var page = PartsOf(SheetSamples.PageOf(set)).Last();
        Assert.Contains("good within 1.0\u00a0mm", page.Value, StringComparison.Ordinal);
    }

    /// <summary>Both ways are asked for where a hole shows both; on an edge only what it shows.</summary>
    [Fact]
    public void AnEdgeIsMeasuredAcrossOnly()
    {
        foreach (var (part, page) in Sails.Parts.Zip(PartsOf(SheetSamples.PageOf(Sails))).Skip(1))
        {
            var asked = page.Descendants("td").Select(td => td.Elements("span").Count(s => s.Value.Contains("mm")));
            Assert.Equal(
                part.Hooping.Alignments.Select(a => Sails.Plan.Corners.Any(c => c.Id == a.On) ? 2 : 1),
                asked.Where(count => count > 0)
            );
        }
        var crosses = Sails.Parts.SelectMany(p => p.Hooping.Alignments).ToList();
        Assert.Contains(crosses, a => Sails.Plan.Corners.All(c => c.Id != a.On));
    }

    /// <summary>The cloth is 30 mm narrower than the hoop: each part says so at the stop when the cloth is put on.</summary>
    [Fact]
    public void WhereTheClothEndsInTheHoopThePartSaysWhatToDo()
    {
        var set = SheetSamples.Strip.Sets.Single();
        Assert.Equal(2, set.Parts.Length);
        foreach (var part in set.Parts)
        {
            var sides = ClothEdge.Of(SheetSamples.Strip.Job.Recipe.Cloth, part.Field);
            Assert.Equal(30_000, sides.Sum(s => s.Bare));
            Assert.Single(part.Steps[0].Actions, a => a.Contains("baste", StringComparison.Ordinal));
        }
        var page = SheetSamples.PageOf(set);
        Assert.Contains("part A and B", page.Value, StringComparison.Ordinal);
        foreach (var (shown, part) in PartsOf(page).Zip(set.Parts))
        {
            var sides = ClothEdge.Of(SheetSamples.Strip.Job.Recipe.Cloth, part.Field);
            var told = ClothEdge.Says(new(SheetSamples.Strip.Job.Recipe.Output), sides);
            Assert.Matches("\\d\u00a0mm from the (left|right) side of the hoop", told);
            Assert.Contains(told, shown.Value, StringComparison.Ordinal);
        }
        Assert.DoesNotContain(
            "baste",
            SheetSamples.PageOf(Sails).Descendants("section").Last().Value,
            StringComparison.Ordinal
        );
        Assert.All(Sails.Parts, part => Assert.Empty(ClothEdge.Of(SheetSamples.Sails.Job.Recipe.Cloth, part.Field)));
    }

    [Fact]
    public void RowsAddUpToWhatIsBelowThem()
    {
        var tables = SheetSamples
            .PageOf(Sails)
            .Descendants("table")
            .Where(t => t.Element("tfoot") is not null)
            .ToList();
        Assert.Equal(2, tables.Count);
        foreach (var table in tables)
        {
            var rows = table.Element("tbody")!.Elements("tr").Select(Cells).ToList();
            var sums = Cells(table.Element("tfoot")!.Elements("tr").Single());
            var checkedColumns = 0;
            for (var column = 1; column < sums.Count; column++)
                if (sums[column].Length > 0)
                {
                    Assert.Equal(Number(sums[column]), rows.Sum(row => Number(row[column])));
                    checkedColumns++;
                }
            Assert.True(checkedColumns >= 3);
        }
    }

    [Theory]
    [InlineData(new[] { 0.4, 0.4, 0.2 }, new[] { 1, 1, 1 })]
    [InlineData(new[] { 1.5, 2.5, 0.0 }, new[] { 2, 2, 0 })]
    [InlineData(new[] { 3.2, 4.3, 5.1 }, new[] { 3, 5, 5 })]
    public void WholeSharesAreThoseOfTheLargestRemainders(double[] amounts, int[] expected) =>
        Assert.Equal(expected, Summed.Shares([.. amounts]));

    private static IEnumerable<XElement> PartsOf(XElement page) =>
        page.Descendants("section").Where(s => Id(s).StartsWith("part-", StringComparison.Ordinal));

    private static string Id(XElement element) => (string?)element.Attribute("id") ?? "";

    /// <summary>Stops are those of the tape, whatever they say.</summary>
    private static List<string> AdviceOf(XElement page) =>
        [
            .. page.Descendants()
                .Where(e => e.Name.LocalName is "p" or "li")
                .Where(e =>
                    !e.Ancestors().Any(a => ((string?)a.Attribute("class"))?.Split(' ').Contains("stop") == true)
                )
                .Select(e => e.Value.Trim())
                .Where(text => text.Length > Advice),
        ];

    private static List<string> Cells(XElement row) => [.. row.Elements().Select(cell => cell.Value.Trim())];

    /// <summary>Minutes of <c>1 h 05 min</c>, and any other number.</summary>
    private static int Number(string text)
    {
        var plain = text.Replace("\u00a0", "", StringComparison.Ordinal);
        var hours = plain.IndexOf('h', StringComparison.Ordinal);
        var minutes = string.Concat(plain[(hours + 1)..].Where(char.IsAsciiDigit));
        return (hours < 0 ? 0 : 60 * int.Parse(plain[..hours], CultureInfo.InvariantCulture))
            + (minutes.Length == 0 ? 0 : int.Parse(minutes, CultureInfo.InvariantCulture));
    }
}
