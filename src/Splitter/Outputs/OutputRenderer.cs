using System.Collections.Immutable;
using Splitter.Outputs.Pictures;
using Splitter.Outputs.Pictures.Strands;
using Splitter.Parts;
using Splitter.Planning;
using Splitter.Recipes;
using Splitter.Stitching.Density;
using Splitter.Texts;

namespace Splitter.Outputs;

/// <summary>Parts to files, the manifest and the sums last because they list the others.</summary>
internal static class OutputRenderer
{
    /// <param name="dense">Spots with too many layers or needle holes, the worst first.</param>
    internal static ImmutableArray<OutputFile> Render(
        Request request,
        Job job,
        Plan plan,
        ImmutableArray<Part> parts,
        ImmutableArray<DenseSpot> dense
    )
    {
        var painters = new StrandPainters();
        var made = InOrder.Select(
            parts,
            request.Jobs,
            part => new PartOutputs(job, plan, part, PartFiles.Stem(part.Letter), painters)
        );
        ImmutableArray<ListedPart> listed = [.. made.Select(m => m.Listed)];
        var work = WorkFigures.Of(job.Recipe, job.Drawing, listed);
        var whole = new WorkOutputs(request, job, plan, listed, work, dense);
        // The longest first, so that every thread has work up to the end; the sheet needs a picture of the first.
        ImmutableArray<Func<ImmutableArray<OutputFile>>> ofWhole =
        [
            whole.Finished,
            whole.Overview,
            whole.Paper,
            whole.Sheet,
        ];
        var times = Numbers.Times(listed.Select(p => p.Figures.Minutes)).Rows;
        var rendered = InOrder.Select(
            [.. ofWhole, .. made.Select((m, i) => (Func<ImmutableArray<OutputFile>>)(() => m.Render(times[i])))],
            request.Jobs,
            render => render()
        );
        List<OutputFile> files =
        [
            .. rendered[ofWhole.Length..].SelectMany(f => f),
            .. rendered[..ofWhole.Length].SelectMany(f => f),
        ];
        files.Add(new(ManifestWriter.FileName, ManifestWriter.Write(request, job, plan, listed, work, dense)));
        files.Add(new(SumsWriter.FileName, SumsWriter.Write(files.Select(f => (f.Path, f.Bytes)))));
        return [.. files.Select(f => f with { Path = $"{plan.Hoop.Name}/{f.Path}" })];
    }

    /// <summary>The overview of a plan that is not stitched yet, as SVG or PNG.</summary>
    internal static byte[] RenderPlan(Job job, Plan plan, OutputKind kind)
    {
        var overview = OverviewPicture.Of(job.Recipe, new(job.Drawing, plan), []);
        return kind == OutputKind.Svg ? SvgWriter.Write(overview) : OverviewPicture.Png(overview);
    }

    /// <summary>Both, named after the hoop.</summary>
    internal static ImmutableArray<OutputFile> RenderPlan(Job job, Plan plan)
    {
        var overview = OverviewPicture.Of(job.Recipe, new(job.Drawing, plan), []);
        return
        [
            new($"{plan.Hoop.Name}.svg", SvgWriter.Write(overview)),
            new($"{plan.Hoop.Name}.png", OverviewPicture.Png(overview)),
        ];
    }
}
