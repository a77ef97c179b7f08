using System.Diagnostics;
using System.Text.Json;
using Splitter.Cutting;
using Splitter.Measures;
using Splitter.Parts;
using Splitter.Stitching;

namespace Splitter.Benchmarks.Figures;

/// <summary>The table of stitch figures in DEVELOPERS.md.</summary>
internal static class StitchFigures
{
    /// <summary>Writes the whole table, or prints the lines of some subjects.</summary>
    internal static int Write(string[] names)
    {
        IEnumerable<StitchSubject> subjects =
        [
            .. StitchSubject.Recipes.Select(r => StitchSubject.OfRecipe(r.Recipe, r.Hoop)),
            .. StitchSubject.Drawings.Select(d => StitchSubject.OfDrawing(d.Folder, d.Name)),
        ];
        var rows = new List<StitchRow>();
        foreach (var subject in subjects.Where(s => names.Length == 0 || names.Contains(s.Name)))
        {
            rows.Add(Measure(subject));
            Console.Error.WriteLine(rows[^1].Line());
        }
        if (names.Length == 0)
        {
            FigureTable.Write(
                "stitches",
                [StitchRow.Header, .. rows.Select(r => r.Line()), "", StitchRow.Smallest(rows)]
            );
            FigureTable.Write("stitches before and after", StitchChange.Lines(rows));
        }
        return 0;
    }

    private static StitchRow Measure(StitchSubject subject)
    {
        var production = Pipeline.Make(subject.Request).Value;
        var (set, drawing) = (production.Sets.Single(), production.Job.Drawing);
        var cloth = SewnCloth.Of(set);
        var map = new ThreadMap(cloth);
        var moves = set.Parts.SelectMany(p => p.Steps).Where(s => s.Kind == StepKind.Body).SelectMany(Between).ToList();
        var jumps = moves.Where(m => !m.Trim && m.Length > 0).ToList();
        var pieces = Cutter.Cut(drawing, set.Plan, production.Job.Recipe.Overlap);
        var clock = Stopwatch.StartNew();
        Stitcher.Stitch(pieces, 1);
        var seconds = clock.Elapsed.TotalSeconds;
        var stitches = cloth.Runs.Sum(r => r.Points.Count);
        return new()
        {
            Name = subject.Name,
            Parts = set.Parts.Length,
            Shapes = drawing.Shapes.Length,
            Stitches = stitches,
            Trims = moves.Count(m => m.Trim),
            Jumps = jumps.Count,
            JumpLength = jumps.Sum(j => j.Length),
            Steps = set.Parts.Sum(p => p.Steps.Count(s => s.Kind == StepKind.Body)),
            Most = map.Most,
            Above = map.Above(StitchRow.Limit),
            Told = Told(set),
            Usual = map.Share(0.99),
            Penetrations = map.MostHoles,
            Agreement = Agreement.Of(cloth, subject.Artwork),
            Seconds = seconds * 100_000 / stitches,
        };
    }

    private static double Told(PartSet set)
    {
        var file = set.Files.Single(f => f.Path.EndsWith("manifest.json", StringComparison.Ordinal));
        using var manifest = JsonDocument.Parse(file.Bytes);
        return manifest.RootElement.TryGetProperty("dense", out var dense)
            ? dense.EnumerateArray().Sum(spot => spot.GetProperty("area_mm2").GetDouble())
            : 0;
    }

    private static IEnumerable<(bool Trim, double Length)> Between(Step step) =>
        step.Moves.Zip(
            step.Moves.Skip(1),
            (from, to) => (to.Trim, from.Block.End.DistanceTo(to.Block.Start) / Geometry.Units.Millimetre)
        );
}
