using System.Globalization;
using System.Text;
using Splitter.Diagnostics;

namespace Splitter.Tests.Artwork;

/// <summary>Outlines that cross themselves in one place again and again are small to write and endless to divide.</summary>
public sealed class TangleTests
{
    /// <summary>Diameters of a circle: each crosses each in its middle.</summary>
    [Theory]
    [InlineData(250, "")]
    [InlineData(800, "SPL2122")]
    public void ATangledOutlineOfARecipeIsRefused(int diameters, string code)
    {
        var recipe = $"""
            splitter: 1
            artwork:
              width: 100 mm
              shapes: [{"{"} wkt: "POLYGON (({Star(diameters)}))", fill: "#14304f" {"}"}]
            hoops: [{"{"} name: small, field: 130 x 180 mm {"}"}]
            """;
        var read = Pipeline.Plan(new("recipe.yaml", Encoding.UTF8.GetBytes(recipe), _ => default));
        Assert.Equal(
            code,
            string.Join(' ', read.Diagnostics.Where(d => d.Severity == Severity.Error).Select(d => d.Code))
        );
    }

    [Theory]
    [InlineData(20, "")]
    [InlineData(800, "SPL2122")]
    public void ATangledOutlineOfAFileIsRefused(int diameters, string code)
    {
        var ring = string.Join(',', Star(diameters).Split(", ").Select(p => $"[{p.Replace(' ', ',')}]"));
        var json = $$"""{ "type": "Polygon", "coordinates": [[{{ring}}]] }""";
        var recipe = """
            splitter: 1
            artwork: { file: star.geojson, width: 100 mm }
            hoops: [{ name: small, field: 130 x 180 mm }]
            """;
        var read = Pipeline.Plan(
            new("recipe.yaml", Encoding.UTF8.GetBytes(recipe), _ => new(Encoding.UTF8.GetBytes(json), null))
        );
        Assert.Equal(
            code,
            string.Join(' ', read.Diagnostics.Where(d => d.Severity == Severity.Error).Select(d => d.Code))
        );
    }

    private static string Star(int diameters)
    {
        var ends =
            from i in Enumerable.Range(0, diameters)
            let angle = Math.PI * i / diameters
            let way = i % 2 == 0 ? 1 : -1
            from end in new[] { way, -way }
            select string.Create(
                CultureInfo.InvariantCulture,
                $"{5 + (end * 4 * Math.Cos(angle)):0.0000} {5 + (end * 4 * Math.Sin(angle)):0.0000}"
            );
        var places = ends.ToList();
        return string.Join(", ", places.Append(places[0]));
    }
}
