using System.Collections.Immutable;
using Splitter.Outputs.Pictures;
using Splitter.Outputs.Sheets;
using Splitter.Outputs.Templates;
using Splitter.Planning;
using Splitter.Recipes;
using Splitter.Stitching.Density;

namespace Splitter.Outputs;

/// <summary>The files that show all parts together.</summary>
internal sealed class WorkOutputs
{
    private readonly Request request;
    private readonly Job job;
    private readonly Plan plan;
    private readonly ImmutableArray<ListedPart> parts;
    private readonly WorkFigures work;
    private readonly ShownGround ground;

    /// <summary>Drawn once for two uses, or not at all.</summary>
    private readonly Lazy<FinishedFiles> finished;
    private readonly Lazy<Picture> overview;

    /// <summary>The finished piece as files, and a smaller picture; of those not asked for nothing.</summary>
    private sealed record FinishedFiles(byte[] Svg, byte[] Png, byte[] Small);

    /// <param name="dense">Spots with too many layers or needle holes.</param>
    internal WorkOutputs(
        Request request,
        Job job,
        Plan plan,
        ImmutableArray<ListedPart> parts,
        WorkFigures work,
        ImmutableArray<DenseSpot> dense
    )
    {
        (this.request, this.job, this.plan, this.parts, this.work) = (request, job, plan, parts, work);
        ground = new(job.Drawing, plan) { Dense = dense };
        finished = new(DrawFinished);
        overview = new(() => OverviewPicture.Of(job.Recipe, ground, parts));
    }

    internal ImmutableArray<OutputFile> Finished() =>
        Asked(
            (OutputKind.Thread, "finished.svg", () => finished.Value.Svg),
            (OutputKind.Thread, "finished.png", () => finished.Value.Png)
        );

    internal ImmutableArray<OutputFile> Overview() =>
        Asked(
            (OutputKind.Svg, "overview.svg", () => SvgWriter.Write(overview.Value)),
            (OutputKind.Png, "overview.png", () => OverviewPicture.Png(overview.Value))
        );

    internal ImmutableArray<OutputFile> Paper() =>
        Asked(
            (OutputKind.Template, Template.FileName(job.Recipe.Output.Paper), () => Template.Write(job.Recipe, ground))
        );

    /// <summary>Its cover shows the finished piece: who writes it first draws that first.</summary>
    internal ImmutableArray<OutputFile> Sheet() => Asked((OutputKind.WorkSheet, WorkSheet.FileName, WriteSheet));

    /// <summary>Only the files are kept: the picture of all stitches is the largest thing that there is.</summary>
    private FinishedFiles DrawFinished()
    {
        var files = job.Recipe.Output.Files;
        var (thread, sheet) = (files.Contains(OutputKind.Thread), files.Contains(OutputKind.WorkSheet));
        var picture = FinishedPicture.Of(job.Recipe, job.Drawing, [.. parts.Select(p => p.Part)]);
        var svg = thread ? SvgWriter.Write(picture) : [];
        var drawn = ThreadRaster.OfFinished(picture);
        return new(
            svg,
            thread ? PngWriter.WriteIndexed(drawn) : [],
            sheet ? PngWriter.WriteIndexed(ThreadRaster.Small(drawn)) : []
        );
    }

    private byte[] WriteSheet() =>
        WorkSheet.Write(
            new(job.Recipe, job.Drawing, plan, parts, work)
            {
                RecipeFile = request.FileName,
                Ground = ground,
                Finished = finished.Value.Small,
            }
        );

    private ImmutableArray<OutputFile> Asked(
        params ReadOnlySpan<(OutputKind Kind, string Path, Func<byte[]> Write)> files
    )
    {
        var asked = ImmutableArray.CreateBuilder<OutputFile>();
        foreach (var (kind, path, write) in files)
            if (job.Recipe.Output.Files.Contains(kind))
                asked.Add(new(path, write()));
        return asked.ToImmutable();
    }
}
