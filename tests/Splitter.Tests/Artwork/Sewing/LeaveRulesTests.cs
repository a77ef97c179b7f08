using System.Collections.Immutable;
using Splitter.Artwork;
using Splitter.Artwork.Sewing;

namespace Splitter.Tests.Artwork.Sewing;

/// <summary>
/// Drawings nearly all of which is left out. Each of it is told how to leave it on purpose, which looks at no other: were it
/// otherwise, these would take minutes. That they end is the test.
/// </summary>
public sealed class LeaveRulesTests
{
    [Fact]
    public void TwoHundredThousandSpecks()
    {
        var specks = Specks(200_000, i => FormattableString.Invariant($"speck-{i}"));
        var rules = new LeaveRules(specks);
        foreach (var speck in specks.Elements)
            Assert.Contains(
                $"match: {{ id: \"{speck.Id}\"",
                rules.For(speck.Place, "#0000ff", speck.Id!),
                StringComparison.Ordinal
            );
        Assert.Single(ShapeMaker.Make(Samples.Recipe(Samples.Hoop(130, 180)), specks).Diagnostics);
    }

    /// <summary>As copies of one group are: none can be left alone.</summary>
    [Fact]
    public void TwoHundredThousandOfOneName()
    {
        var rules = new LeaveRules(Specks(200_000, _ => "speck"));
        for (var i = 0; i < 200_000; i++)
            Assert.Null(rules.For(new("test.svg", i + 1, 1), "#0000ff", "speck"));
    }

    [Fact]
    public void TwoThousandUnderACover()
    {
        var drawn = Specks(200_000, i => FormattableString.Invariant($"speck-{i}"));
        ImmutableArray<Shape> shapes =
        [
            .. drawn
                .Elements.Take(2000)
                .Select((e, i) => Samples.Rectangle(e.Id!, i % 50, i / 50, 0.8, 0.8) with { Place = e.Place }),
            Samples.Rectangle("cover", 0, 0, 60, 60),
        ];
        var cut = Layers.CutAway(drawn, shapes);
        Assert.Equal("cover", Assert.Single(cut.Value).Id);
        Assert.Equal(2000, cut.Diagnostics.Length);
        Assert.Contains("match: { id: \"speck-1999\" }", cut.Diagnostics[^1].Message, StringComparison.Ordinal);
    }

    /// <summary>Each on a line of its own; the ground holds no stitch.</summary>
    private static Sheet Specks(int count, Func<int, string> id)
    {
        var ground = Samples.Ground(0, 0, 0.1, 0, 0.1, 0.1, 0, 0.1);
        return new(
            1000,
            1000,
            [
                .. Enumerable
                    .Range(0, count)
                    .Select(i => new DrawnArea
                    {
                        Id = id(i),
                        Ids = [id(i)],
                        Classes = [],
                        Place = new("test.svg", i + 1, 1),
                        Color = "#0000ff",
                        Ground = ground,
                    }),
            ]
        );
    }
}
