using System.Collections.Immutable;
using System.Globalization;
using System.Text.Json;
using Splitter.Benchmarks.Figures;
using Splitter.Geometry;
using Splitter.Measures;
using Splitter.Parts;
using Splitter.Stitching.Density;

namespace Splitter.Benchmarks.Layers;

/// <summary>The table in DEVELOPERS.md of what makes too many layers: square millimetres by cause, as manifests have them.</summary>
internal static class LayerCensus
{
    /// <summary>The manifest's words, with a heading each.</summary>
    private static readonly ImmutableArray<(string Word, string Heading)> Causes =
    [
        ("shapes", "shapes alone"),
        ("rows", "rows of one shape"),
        ("overlap", "parts overlap"),
        ("travel", "hidden travel"),
        ("underlay", "underlay"),
        ("ties", "ties"),
    ];

    /// <summary>By how much squares are moved aside, µm: midway between those that thread is counted on.</summary>
    private static readonly Point Aside = new(250, 250);

    /// <summary>Half a layer more than is borne is what a needle feels.</summary>
    private const double Clearly = 0.5;

    /// <summary>Writes the whole table, or prints the lines of some subjects.</summary>
    internal static int Write(string[] names)
    {
        IEnumerable<StitchSubject> subjects =
        [
            .. StitchSubject.Recipes.Select(r => StitchSubject.OfRecipe(r.Recipe, r.Hoop)),
            .. StitchSubject.Drawings.Select(d => StitchSubject.OfDrawing(d.Folder, d.Name)),
        ];
        var rows = new List<LayerRow>();
        foreach (var subject in subjects.Where(s => names.Length == 0 || names.Contains(s.Name)))
        {
            rows.Add(Row(subject));
            Console.Error.WriteLine(rows[^1].Line);
        }
        if (names.Length == 0)
            FigureTable.Write(
                "layers by cause",
                [
                    $"| artwork | {string.Join(" | ", Causes.Select(c => c.Heading))} | mm² in all | aside | clearly | most |",
                    $"| --- {string.Concat(Causes.Select(_ => "| ---: "))}| ---: | ---: | ---: | ---: |",
                    .. rows.Where(r => r.Told.Any(s => s > 0) || r.Aside > 0).Select(r => r.Line),
                    new LayerRow(
                        "all",
                        [.. Causes.Select((_, i) => rows.Sum(r => r.Told[i]))],
                        rows.Sum(r => r.Aside),
                        rows.Sum(r => r.Clearly),
                        rows.Max(r => r.Most)
                    ).Line,
                ]
            );
        return 0;
    }

    private static LayerRow Row(StitchSubject subject)
    {
        var made = Pipeline.Make(subject.Request).Value;
        var (set, most) = (made.Sets.Single(), made.Job.Recipe.Cloth.MostLayers);
        var aside = FullQuarters(set, most);
        return new(
            subject.Name,
            Told(set),
            aside.Count * Quarter.Area,
            aside.Count(layers => layers > most + Clearly) * Quarter.Area,
            aside.DefaultIfEmpty().Max()
        );
    }

    /// <summary>By cause, mm².</summary>
    private static ImmutableArray<double> Told(PartSet set)
    {
        var file = set.Files.Single(f => f.Path.EndsWith("manifest.json", StringComparison.Ordinal));
        using var manifest = JsonDocument.Parse(file.Bytes);
        List<JsonElement> dense = manifest.RootElement.TryGetProperty("dense", out var list)
            ? [.. list.EnumerateArray().Select(spot => spot.GetProperty("causes_mm2").Clone())]
            : [];
        return
        [
            .. Causes.Select(cause =>
                dense.Sum(causes => causes.TryGetProperty(cause.Word, out var area) ? area.GetDouble() : 0)
            ),
        ];
    }

    /// <summary>
    /// Layers on each quarter of a square millimetre below squares that have too many, where squares lie elsewhere than
    /// those that stitches are laid by.
    /// </summary>
    private static List<double> FullQuarters(PartSet set, int most)
    {
        var stitches = set
            .Parts.SelectMany(part => part.Steps)
            .Where(step => step.Kind == StepKind.Body)
            .SelectMany(step => step.Moves)
            .SelectMany(move => move.Block.Stitches.Zip(move.Block.Stitches.Skip(1)))
            .Select(s =>
                (From: s.First.At - Aside, To: s.Second.At - Aside, Breadth: ClothLayers.Breadth(s.Second.Use))
            )
            .ToList();
        var grid = new ThreadGrid(Box.Around(stitches.SelectMany(s => new[] { s.From, s.To })));
        foreach (var (from, to, breadth) in stitches)
            grid.Lay(from, to, breadth);
        return [.. grid.Quarters.Select(grid.LayersAt).Where(layers => layers > most)];
    }

    /// <param name="Told">By cause, mm².</param>
    /// <param name="Aside">As much with squares moved aside.</param>
    /// <param name="Clearly">Of it clearly more.</param>
    /// <param name="Most">Layers on any of them; 0 for none too full.</param>
    private sealed record LayerRow(string Name, ImmutableArray<double> Told, double Aside, double Clearly, double Most)
    {
        internal string Line =>
            string.Create(
                CultureInfo.InvariantCulture,
                $"| {Name} | {string.Join(" | ", Told.Select(Figure))} | {Figure(Told.Sum())} | {Figure(Aside)} | {Figure(Clearly)} | {Most:0.0} |"
            );

        private static string Figure(double area) => area.ToString("0.##", CultureInfo.InvariantCulture);
    }
}
