using System.Collections.Immutable;
using Splitter.Artwork;
using Splitter.Correcting;
using Splitter.Cutting;
using Splitter.Diagnostics;
using Splitter.Outputs;
using Splitter.Parts;
using Splitter.Planning;
using Splitter.Planning.Drafting;
using Splitter.Recipes;
using Splitter.Stitching;
using Splitter.Stitching.Density;

namespace Splitter;

/// <summary>
/// The whole of Splitter on one page. Each line is one stage; its result is the next one's argument; a stage that
/// reports an error is the last to run (<see cref="Result{T}"/>). Nothing here touches a disk: outputs are bytes, and
/// whoever called decides whether to write them (make) or to compare them with what is there (check).
/// </summary>
public static class Pipeline
{
    /// <summary>Recipe in, finished files out: one set for each hoop that is asked for.</summary>
    public static Result<Production> Make(Request request) =>
        from job in Prepare(request)
        let drafts = new Drafts(job.Recipe, job.Drawing, request.Jobs)
        from sets in Result.All(
            InOrder.Select(job.Hoops, request.Jobs, hoop => Sew(request, job.For(hoop), drafts, hoop))
        )
        select new Production(job, sets);

    /// <summary>Recipe in, plans out: fields, seams, order and corners, no stitches.</summary>
    internal static Result<Outlook> Plan(Request request) =>
        from job in Prepare(request)
        let drafts = new Drafts(job.Recipe, job.Drawing, request.Jobs)
        from plans in Result.All(InOrder.Select(job.Hoops, request.Jobs, hoop => Planner.Plan(drafts, hoop)))
        select new Outlook(job, plans);

    /// <summary>
    /// As <see cref="Make"/>, for the one hoop that the request names.
    /// </summary>
    /// <param name="call">Where the hoop is asked for.</param>
    internal static Result<Production> MakeOne(Request request, Place call) =>
        from job in Prepare(request)
        from hoop in HoopChoice.One(job.Hoops, call)
        let laid = job.For(hoop)
        from set in Sew(request, laid, new Drafts(job.Recipe, job.Drawing, request.Jobs), hoop)
        select new Production(laid, [set]);

    /// <summary>
    /// A part that came out beside its place, and what was measured of it in the hoop: what is left to sew, moved onto
    /// the work that is there.
    /// </summary>
    /// <param name="made">The one set that the part is of.</param>
    internal static Result<Realigned> Realign(Request request, Production made, PartOffsets offsets) =>
        from correction in Corrector.Correct(
            made.Job.Recipe,
            made.Job.Drawing,
            made.Sets[0].Plan,
            made.Sets[0].Parts,
            offsets
        )
        select new Realigned(
            made.Sets[0],
            correction,
            CorrectionRenderer.Render(request, made.Job, made.Sets[0].Parts, correction)
        );

    private static Result<Job> Prepare(Request request) =>
        from recipe in RecipeReader.Read(request.File, request.Bytes, request.Read)
        from hoops in HoopChoice.Choose(recipe, request.Hoop)
        from sources in SourceReader.Read(recipe, request.Read)
        from drawing in DrawingReader.Read(recipe, sources, request.Jobs)
        from laid in OnCloth.Lay(recipe, drawing)
        select new Job(laid, hoops, sources, drawing);

    private static Result<PartSet> Sew(Request request, Job job, Drafts drafts, Hoop hoop) =>
        from plan in Planner.Plan(drafts, hoop)
        from sewn in Sew(request, job, plan)
        let files = OutputRenderer.Render(request, job, plan, sewn.Parts, sewn.Dense)
        select new PartSet(plan, sewn.Parts, files);

    /// <summary>Apart from the outputs: what a part is made from need not be kept while they are.</summary>
    private static Result<(ImmutableArray<Part> Parts, ImmutableArray<DenseSpot> Dense)> Sew(
        Request request,
        Job job,
        Plan plan
    ) =>
        from pieces in Result.Of(Cutter.Cut(job.Drawing, plan, job.Recipe.Overlap, request.Jobs))
        let stitched = Stitcher.Stitch(pieces, request.Jobs)
        let bodies = BodySteps.Of(plan, stitched, job.Recipe.Cloth.MostLayers, request.Jobs)
        from dense in LayerCheck.Check(job.Drawing, job.Recipe, plan, BodySteps.Pieces(bodies), request.Jobs)
        select (PartBuilder.Build(job.Recipe, job.Drawing, plan, bodies), dense);
}

/// <summary>What is asked of the pipeline.</summary>
/// <param name="File">The recipe's name as the person gave it; diagnostics repeat it.</param>
/// <param name="Bytes">The recipe itself.</param>
/// <param name="Read">How to reach the files that it names.</param>
public sealed record Request(string File, ReadOnlyMemory<byte> Bytes, ReadSource Read)
{
    /// <summary>The name of one hoop of the recipe, or null for every one.</summary>
    public string? Hoop { get; init; }

    /// <summary>The recipe's name without its folder, which is another one on another machine.</summary>
    internal string FileName => File[(File.LastIndexOfAny(['/', '\\']) + 1)..];

    /// <summary>How many threads may work; the outputs do not depend on it.</summary>
    public int Jobs { get; init; } = 1;
}

/// <summary>A recipe with all that it names, ready to be planned.</summary>
/// <param name="Hoops">Those that are asked for.</param>
/// <param name="Sources">The files that the recipe names, in the order in which it names them.</param>
internal sealed record Job(
    Recipe Recipe,
    ImmutableArray<Hoop> Hoops,
    ImmutableArray<SourceFile> Sources,
    Drawing Drawing
)
{
    /// <summary>With its cloth as it is for a hoop.</summary>
    internal Job For(Hoop hoop) => this with { Recipe = OnCloth.For(Recipe, Drawing, hoop) };
}

/// <summary>What <see cref="Pipeline.Plan"/> returns.</summary>
internal sealed record Outlook(Job Job, ImmutableArray<Plan> Plans);

/// <summary>What <see cref="Pipeline.Make"/> returns.</summary>
public sealed record Production
{
    internal Production(Job job, ImmutableArray<PartSet> sets) => (Job, Sets) = (job, sets);

    internal Job Job { get; }

    /// <summary>One for each hoop that was asked for, in the recipe's order.</summary>
    public ImmutableArray<PartSet> Sets { get; }
}

/// <summary>The parts for one hoop, and their files.</summary>
public sealed record PartSet
{
    internal PartSet(Plan plan, ImmutableArray<Part> parts, ImmutableArray<OutputFile> files) =>
        (Plan, Parts, Files) = (plan, parts, files);

    internal Plan Plan { get; }

    internal ImmutableArray<Part> Parts { get; }

    /// <summary>The hoop's name in the recipe.</summary>
    public string Hoop => Plan.Hoop.Name;

    /// <summary>All that belongs together in the hoop's folder, ready to be written.</summary>
    public ImmutableArray<OutputFile> Files { get; internal init; }
}

/// <summary>What <see cref="Pipeline.Realign"/> returns.</summary>
/// <param name="Original">The set that the part is of.</param>
/// <param name="Files">Those of the corrected part alone.</param>
internal sealed record Realigned(PartSet Original, Correction Correction, ImmutableArray<OutputFile> Files);
