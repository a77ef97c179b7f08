using System.Globalization;
using System.Text;
using System.Text.Json;
using Splitter.Artwork;
using Xunit.Abstractions;

namespace Splitter.Tests.EndToEnd;

/// <summary>Ends of satin strokes and middles of stars, where columns are hardest, against what librsvg draws.</summary>
public sealed class CapsAndStarsTests(ITestOutputHelper output)
{
    private static Production Made(string artwork, string sew)
    {
        var recipe = $$"""
            splitter: 1
            artwork: { file: drawing.svg, sew: [{{sew}}] }
            hoops: [{ name: small, field: 130 x 180 mm }]
            output: { folder: parts, files: [tape] }
            """;
        var svg = Encoding.UTF8.GetBytes(artwork);
        var made = Pipeline.Make(new("drawing.yaml", Encoding.UTF8.GetBytes(recipe), _ => new(svg, null)));
        // That thread lies thickly in the middle of a star is told; how much of it there is, is tested there.
        Assert.DoesNotContain(made.Diagnostics, d => d.Code != "SPL3030");
        return made.Value;
    }

    /// <summary>
    /// Strokes hardly longer than they are wide, in many directions, so that half of what is drawn is caps (SVG 1.1 and 2,
    /// 'stroke-linecap'), and lines without length, of which nothing but caps is drawn.
    /// </summary>
    private static string Strokes(string cap)
    {
        var lines = Enumerable
            .Range(0, 12)
            .Select(i =>
            {
                var (sin, cos) = Math.SinCos(i * 15 * Math.PI / 180);
                var (x, y) = (10 + (20 * (i % 4)), 10 + (20 * (i / 4)));
                return string.Create(
                    CultureInfo.InvariantCulture,
                    $"M {x - (3 * cos):0.###} {y - (3 * sin):0.###} L {x + (3 * cos):0.###} {y + (3 * sin):0.###}"
                );
            });
        return $"""
            <svg xmlns="http://www.w3.org/2000/svg" width="90mm" height="80mm" viewBox="0 0 90 80">
              <path fill="none" stroke="#14304f" stroke-width="5" stroke-linecap="{cap}"
                d="{string.Join(' ', lines)} M 10 70 h 0 M 30 70 L 30 70"/>
            </svg>
            """;
    }

    [SkippableTheory]
    [InlineData("butt")]
    [InlineData("round")]
    [InlineData("square")]
    public void CapsAreSewnAsTheyAreDrawn(string cap)
    {
        Skip.IfNot(Renderer.IsThere, "rsvg-convert is not installed (Debian package librsvg2-bin).");
        var made = Made(Strokes(cap), "");
        Assert.All(made.Job.Drawing.Shapes, s => Assert.IsType<SatinShape>(s));
        var cloth = SewnCloth.Of(made.Sets.Single());
        foreach (var drawn in (string[])["butt", "round", "square"])
        {
            var (covered, spilled, _) = Agreement.Of(cloth, Strokes(drawn));
            output.WriteLine(FormattableString.Invariant($"{cap} against {drawn}: {covered:P2}, {spilled:P2}"));
            Assert.Equal(drawn == cap, covered >= 0.985 && spilled <= 0.001);
        }
    }

    /// <summary>More than three layers lie on no more than this of a star's middle, mm².</summary>
    private const int MostThick = 9;

    /// <summary>Where many arms meet there is no room for all: the middle is covered all the same, and not too thick.</summary>
    [SkippableTheory]
    [InlineData(10)]
    [InlineData(12)]
    [InlineData(16)]
    public void StarsOfManyArmsAreCoveredAndNotTooThick(int arms)
    {
        Skip.IfNot(Renderer.IsThere, "rsvg-convert is not installed (Debian package librsvg2-bin).");
        var corners = Enumerable
            .Range(0, 2 * arms)
            .Select(i =>
            {
                var (sin, cos) = Math.SinCos(i * Math.PI / arms);
                var radius = i % 2 == 0 ? 28 : arms * 0.4;
                return string.Create(
                    CultureInfo.InvariantCulture,
                    $"{30 + (radius * cos):0.###},{30 + (radius * sin):0.###}"
                );
            });
        var artwork = $"""
            <svg xmlns="http://www.w3.org/2000/svg" width="60mm" height="60mm" viewBox="0 0 60 60">
              <polygon id="star" fill="#14304f" points="{string.Join(' ', corners)}"/>
            </svg>
            """;
        var made = Made(artwork, "{ match: { id: star }, as: satin }");
        var cloth = SewnCloth.Of(made.Sets.Single());
        var (covered, spilled, _) = Agreement.Of(cloth, artwork);
        var map = new ThreadMap(cloth);
        output.WriteLine(
            FormattableString.Invariant(
                $"{arms} arms: {covered:P2}, {spilled:P2}, {map.Most:0.0} layers, {map.MostHoles} holes, {cloth.Runs.Count} runs"
            )
        );
        Assert.IsType<SatinShape>(Assert.Single(made.Job.Drawing.Shapes));
        Assert.InRange(covered, 0.985, 1);
        Assert.InRange(spilled, 0, 0.01);
        Assert.InRange(Told(made.Sets.Single()), 0, MostThick);
    }

    /// <summary>What the manifest lists as too thick, mm².</summary>
    private static double Told(PartSet set)
    {
        var file = set.Files.Single(f => f.Path.EndsWith("manifest.json", StringComparison.Ordinal));
        using var manifest = JsonDocument.Parse(file.Bytes);
        return manifest.RootElement.TryGetProperty("dense", out var dense)
            ? dense.EnumerateArray().Sum(spot => spot.GetProperty("area_mm2").GetDouble())
            : 0;
    }
}
