using System.Collections.Immutable;
using Splitter.Artwork;
using Splitter.Cutting;
using Splitter.Geometry;
using Splitter.Outputs;
using Splitter.Parts;
using Splitter.Planning;
using Splitter.Planning.Drafting;
using Splitter.Recipes;
using Splitter.Stitching;
using Splitter.Stitching.Density;

namespace Splitter.Benchmarks.Speed;

/// <summary>A workload made stage by stage as <see cref="Pipeline"/> has them, in a process of its own.</summary>
internal static class StageRun
{
    /// <summary>What is measured beside the stages.</summary>
    internal const string PlainCut = "plain cut",
        OurPlainCut = "our plain cut",
        Writing = "writing";

    /// <summary>Short runs are repeated until they took this long together, s; the least of each stage counts.</summary>
    private const double Enough = 5;

    private const int MostRuns = 5;

    /// <param name="jobs">How many threads may work.</param>
    /// <param name="kinds">Each kind of outputs is made alone, too.</param>
    internal static SpeedRow Measure(Workload work, int jobs, bool kinds)
    {
        // Code is compiled when it first runs: that is no property of a work.
        Once(Workload.First, jobs, kinds);
        var runs = new List<SpeedRow>();
        do runs.Add(Once(work, jobs, kinds));
        while (runs.Count < MostRuns && runs.Sum(r => r.Whole.Seconds) < Enough);
        return SpeedRow.Least(runs);
    }

    private static SpeedRow Once(Workload work, int jobs, bool kinds)
    {
        var (request, clock) = (work.Request(jobs), new StageClock());
        GC.Collect();
        var recipe = clock.Time("recipe", () => RecipeReader.Read(request.File, request.Bytes, request.Read).Value);
        var sources = SourceReader.Read(recipe, request.Read).Value;
        var drawing = clock.Time("artwork", () => DrawingReader.Read(recipe, sources, jobs).Value);
        recipe = OnCloth.Lay(recipe, drawing).Value;
        var job = new Job(recipe, recipe.Hoops, sources, drawing);
        var plan = clock.Time("plan", () => Planner.Plan(new Drafts(recipe, drawing, jobs), recipe.Hoops[0]).Value);
        var pieces = clock.Time("cut", () => Cutter.Cut(drawing, plan, recipe.Overlap, jobs));
        var stitched = clock.Time("stitch", () => Stitcher.Stitch(pieces, jobs));
        var bodies = clock.Time("order", () => BodySteps.Of(plan, stitched, recipe.Cloth.MostLayers, jobs));
        var dense = clock.Time(
            "layers",
            () => LayerCheck.Check(drawing, recipe, plan, BodySteps.Pieces(bodies), jobs).Value
        );
        var parts = clock.Time("parts", () => PartBuilder.Build(recipe, drawing, plan, bodies));
        var files = clock.Time("outputs", () => OutputRenderer.Render(request, job, plan, parts, dense));
        var besides = new StageClock();
        besides.Time(PlainCut, () => CutPlainly(drawing, plan));
        besides.Time(OurPlainCut, () => CutPlainlyOurselves(drawing, plan));
        besides.Time(Writing, () => Write(files));
        foreach (var kind in kinds ? recipe.Output.Files : [])
            besides.Time(Alone(kind), () => OutputRenderer.Render(request, job.Only(kind), plan, parts, dense));
        return new()
        {
            Name = work.Name,
            Jobs = jobs,
            Stitches = stitched.Sum(s => s.Blocks.Sum(b => b.Stitches.Length)),
            Parts = parts.Length,
            Shapes = drawing.Shapes.Length,
            Bytes = files.Sum(f => (long)f.Bytes.Length),
            Stages = [.. clock.Times],
            Besides = [.. besides.Times],
        };
    }

    /// <summary>What the making of one kind of outputs is called.</summary>
    internal static string Alone(OutputKind kind) => $"{kind} alone";

    private static Job Only(this Job job, OutputKind kind) =>
        job with
        {
            Recipe = job.Recipe with { Output = job.Recipe.Output with { Files = [kind] } },
        };

    /// <summary>The engine's own intersection of every shape with every field, nothing asked first.</summary>
    private static double CutPlainly(Drawing drawing, Plan plan)
    {
        var grounds = plan.Hoopings.Select(h => EngineForm.ToNts(Region.Of(h.Ground))).ToList();
        var shapes = drawing.Shapes.Select(s => EngineForm.ToNts(s.Footprint)).ToList();
        return shapes.Sum(shape => grounds.Sum(ground => shape.Intersection(ground).Area));
    }

    /// <summary>The same intersections by our polygon operations, which the stage is made of.</summary>
    private static double CutPlainlyOurselves(Drawing drawing, Plan plan)
    {
        var grounds = plan.Hoopings.Select(h => Region.Of(h.Ground)).ToList();
        return drawing.Shapes.Sum(shape => grounds.Sum(ground => Polygons.Intersect(shape.Footprint, ground).Area));
    }

    private static int Write(ImmutableArray<OutputFile> files)
    {
        var folder = Directory.CreateTempSubdirectory("splitter-speed-").FullName;
        try
        {
            foreach (var file in files)
            {
                Directory.CreateDirectory(Path.GetDirectoryName(Path.Combine(folder, file.Path))!);
                File.WriteAllBytes(Path.Combine(folder, file.Path), file.Bytes.ToArray());
            }
            return files.Length;
        }
        finally
        {
            Directory.Delete(folder, recursive: true);
        }
    }
}
