using System.Text.Json;
using Splitter.Artwork;
using Splitter.Artwork.Columns;
using Splitter.Geometry;
using Xunit.Abstractions;
using Point = Splitter.Geometry.Point;

namespace Splitter.Tests.Artwork.Columns;

/// <summary>Outlines that other people or the demo drew.</summary>
public class LetteringTests(ITestOutputHelper output)
{
    [Fact]
    public void The_demo_s_letters_become_columns()
    {
        var file = Repository.Path("examples", "artwork", "lighthouse-bay.svg");
        var letters = PathReader.Paths(file, p => (string?)p.Parent!.Attribute("class") == "lettering", 1).ToList();
        Assert.True(letters.Count >= 13);
        var sewn = letters.ConvertAll(l => (l.Name, l.Ground, Columns: OutlineColumns.From(l.Ground, 8000)));
        OutlineSamples.Picture("lettering", sewn.Select(l => (l.Ground, (IEnumerable<Column>)l.Columns)));
        foreach (var letter in sewn)
            OutlineSamples.Picture(letter.Name, (letter.Ground, letter.Columns));
        foreach (var letter in sewn.Where(l => !l.Columns.IsEmpty))
        {
            ColumnChecks.Fit(letter.Ground, letter.Columns);
            ColumnChecks.KeepOrder(letter.Columns);
        }
        foreach (var letter in sewn.Where(l => l.Columns.IsEmpty))
            output.WriteLine($"no columns: {letter.Name}");
        Assert.True(sewn.Count(l => !l.Columns.IsEmpty) >= 0.95 * letters.Count);
    }

    /// <summary>Icons of several grounds: what columns are given must fit; some have wide areas and are left to rows.</summary>
    [Fact]
    public void Icons_are_sewn_well_or_left_to_rows()
    {
        var sewn = 0;
        foreach (
            var (name, ground) in Directory
                .EnumerateFiles(Golden.Source("Icons"), "*.svg")
                .Order(StringComparer.Ordinal)
                .SelectMany(file => PathReader.Paths(file, _ => true, 4))
        )
        {
            var columns = OutlineColumns.From(ground, 16_000);
            output.WriteLine($"{name}: {columns.Length} columns");
            OutlineSamples.Picture($"icon-{name}", (ground, columns));
            if (columns.IsEmpty)
                continue;
            sewn++;
            ColumnChecks.Fit(ground, columns);
            ColumnChecks.KeepOrder(columns);
        }
        Assert.True(sewn >= 4, $"{sewn} icons have columns");
    }

    /// <summary>An island's coast is no stroke: either columns fit it or it is left to rows, and neither takes long or fails.</summary>
    [Fact]
    public void Islands_are_sewn_well_or_left_to_rows()
    {
        using var data = JsonDocument.Parse(
            File.ReadAllBytes(Repository.Path("examples", "artwork", "faroe-islands.geojson"))
        );
        var grounds = data
            .RootElement.GetProperty("features")
            .EnumerateArray()
            .SelectMany(f => Outlines(f.GetProperty("geometry")))
            .ToList();
        Assert.NotEmpty(grounds);
        foreach (var (ground, i) in grounds.Select((g, i) => (g, i)))
        {
            var columns = OutlineColumns.From(ground, 30_000);
            output.WriteLine($"{i}: {ground.Area / 1e6:0} mm2, {columns.Length} columns");
            OutlineSamples.Picture($"island-{i}", (ground, columns));
            if (columns.IsEmpty)
                continue;
            ColumnChecks.Fit(ground, columns);
            ColumnChecks.KeepOrder(columns);
        }
    }

    private static IEnumerable<Region> Outlines(JsonElement geometry)
    {
        var coordinates = geometry.GetProperty("coordinates");
        // 62 degrees north: a degree of longitude is half as long as one of latitude.
        Ring ToRing(JsonElement ring) =>
            new([
                .. ring.EnumerateArray()
                    .Select(p => Point.FromMillimetres(p[0].GetDouble() * 200, -p[1].GetDouble() * 400))
                    .Distinct(),
            ]);
        return geometry.GetProperty("type").GetString() switch
        {
            "Polygon" => [Polygons.FromRings(coordinates.EnumerateArray().Select(ToRing), FillRule.EvenOdd)],
            "MultiPolygon" => coordinates
                .EnumerateArray()
                .Select(p => Polygons.FromRings(p.EnumerateArray().Select(ToRing), FillRule.EvenOdd)),
            _ => [],
        };
    }
}
