using System.Diagnostics;
using Splitter.Artwork;
using Splitter.Artwork.Columns;
using Splitter.Geometry;
using Xunit.Abstractions;

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
        var watch = Stopwatch.StartNew();
        var sewn = letters.ConvertAll(l => (l.Name, l.Ground, Columns: OutlineColumns.From(l.Ground, 8000)));
        output.WriteLine($"{letters.Count} letters, {watch.ElapsedMilliseconds} ms");
        OutlineSamples.Picture("lettering", sewn.Select(l => (l.Ground, (IEnumerable<Column>)l.Columns)));
        foreach (var letter in sewn)
            OutlineSamples.Picture(letter.Name, (letter.Ground, letter.Columns));
        foreach (var letter in sewn.Where(l => l.Columns.IsEmpty))
            output.WriteLine($"no columns: {letter.Name}");
        // Four rounds more, for a figure that does not count the compiler.
        watch.Restart();
        for (var i = 0; i < 4; i++)
            letters.ForEach(l => OutlineColumns.From(l.Ground, 8000));
        Console.WriteLine($"LETTERS {4 * letters.Count}: {watch.ElapsedMilliseconds} ms");
        Assert.True(sewn.Count(l => !l.Columns.IsEmpty) >= 0.95 * letters.Count);
    }

    [Fact]
    public void Icons_are_sewn_or_left_to_rows()
    {
        var grounds = Directory
            .EnumerateFiles(Golden.Source("Icons"), "*.svg")
            .Order(StringComparer.Ordinal)
            .SelectMany(f => PathReader.Paths(f, _ => true, 4))
            .ToList();
        var x = 0;
        var parts = new List<(Region, IEnumerable<Column>)>();
        foreach (var (name, ground) in grounds)
        {
            var columns = OutlineColumns.From(ground, 16000);
            output.WriteLine($"{name}: {columns.Length}");
            parts.Add((ground, columns));
            x++;
        }
        for (var i = 0; i < parts.Count; i++)
            OutlineSamples.Picture($"icon-{grounds[i].Name}", parts[i]);
    }
}
