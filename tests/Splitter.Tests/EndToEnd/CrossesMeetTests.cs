using Splitter.Geometry;
using Splitter.Parts;
using Splitter.Tests.Outputs.Sheets;

namespace Splitter.Tests.EndToEnd;

/// <summary>What a cross should meet is there: the earlier part has sewn that shape up to the place.</summary>
public sealed class CrossesMeetTests
{
    /// <summary>
    /// Thread of the shape lies at least so near to the cross, µm: parts overlap by 0.8 mm and more, of which rows at a seam
    /// leave out every other one, and stitches at an edge end up to half of their length inside.
    /// </summary>
    private const double Near = 1000;

    public static TheoryData<string> Works =>
        ["lighthouse-bay small", "lighthouse-bay large", "faroe-islands small", "sails"];

    [Theory]
    [MemberData(nameof(Works))]
    public void EveryCrossHasWhatItShouldMeet(string work)
    {
        var made = work == "sails" ? SheetSamples.Sails : Examples.Made(work.Split(' ')[0], work.Split(' ')[1]);
        var set = made.Sets.Single();
        var corners = set.Plan.Corners.Select(c => c.Id).ToHashSet(StringComparer.Ordinal);
        var crosses = set
            .Parts.SelectMany(p => p.Hooping.Alignments, (part, cross) => (part.Letter, Cross: cross))
            .ToList();
        Assert.NotEmpty(crosses);
        foreach (var (letter, cross) in crosses.Where(c => !corners.Contains(c.Cross.On)))
        {
            var blocks = set.Parts[cross.With]
                .Steps.Where(s => s.Kind == StepKind.Body)
                .SelectMany(s => s.Moves)
                .Select(m => m.Block)
                .Where(b => b.Of == cross.On);
            var nearest = blocks
                .SelectMany(b => b.Stitches.Zip(b.Stitches.Skip(1)))
                .Select(s => Polygons.Distance(cross.At, cross.At, s.First.At, s.Second.At))
                .DefaultIfEmpty(double.PositiveInfinity)
                .Min();
            Assert.True(nearest <= Near, $"{work}, part {letter}: {cross} has {nearest} µm to it");
        }
    }
}
