using System.Collections.Immutable;
using Splitter.Geometry;
using Splitter.Outputs.Pictures;
using Splitter.Outputs.Sheets;
using Splitter.Outputs.Tapes;
using Splitter.Outputs.Templates;
using Splitter.Parts;
using Splitter.Planning;
using Splitter.Recipes;
using Splitter.Stitching.Density;
using Splitter.Tapes;

namespace Splitter.Outputs;

/// <summary>Parts to files, the manifest and the sums last because they list the others.</summary>
internal static class OutputRenderer
{
    /// <summary>Height of the overview in pixels: every letter of it can be read on a screen.</summary>
    private const int OverviewPixels = 1600;

    /// <summary>
    /// Pixels of a millimetre in pictures of thread at most, of the finished piece and of a part; and along the longer
    /// side of such a picture, which is enough for print on A4 or Letter.
    /// </summary>
    private const int FinishedPixels = 10,
        PartPixels = 6,
        MostPixels = 3200;

    /// <summary>The same on the work sheet's cover, where half a sheet's width is enough.</summary>
    private const int SmallPixels = 1100;

    /// <param name="dense">Spots with too many layers or needle holes, the worst first.</param>
    internal static ImmutableArray<OutputFile> Render(
        Request request,
        Job job,
        Plan plan,
        ImmutableArray<Part> parts,
        ImmutableArray<DenseSpot> dense
    )
    {
        var kinds = job.Recipe.Output.Files;
        var rendered = InOrder.Select(parts, request.Jobs, part => RenderPart(job, plan, part, NameOf(part)));
        ImmutableArray<ListedPart> listed = [.. rendered.Select(r => r.Listed)];
        var finished = FinishedPicture.Of(job.Recipe, job.Drawing, parts);
        // Drawn once for two uses, or not at all.
        var drawn = new Lazy<Raster>(() => Drawn(finished, FinishedPixels));
        var overview = OverviewPicture.Of(job.Recipe, job.Drawing, plan, listed);
        (OutputKind Kind, string Path, Func<byte[]> Write)[] ofAll =
        [
            (OutputKind.Thread, "finished.svg", () => SvgWriter.Write(finished)),
            (OutputKind.Thread, "finished.png", () => PngWriter.WriteIndexed(drawn.Value)),
            (OutputKind.Svg, "overview.svg", () => SvgWriter.Write(overview)),
            (OutputKind.Png, "overview.png", () => Png(overview)),
            (
                OutputKind.Template,
                Template.FileName(job.Recipe.Output.Paper),
                () => Template.Write(job.Recipe, job.Drawing, plan)
            ),
        ];
        List<OutputFile> files =
        [
            .. rendered.SelectMany(r => r.Files),
            .. InOrder.Select(
                [.. ofAll.Where(file => kinds.Contains(file.Kind))],
                request.Jobs,
                file => new OutputFile(file.Path, file.Write())
            ),
        ];
        var work = WorkFigures.Of(job.Recipe, job.Drawing, listed);
        if (kinds.Contains(OutputKind.WorkSheet))
            files.Add(
                new(
                    WorkSheet.FileName,
                    WorkSheet.Write(
                        new(job.Recipe, job.Drawing, plan, listed, work)
                        {
                            RecipeFile = request.FileName,
                            Finished = Small(drawn.Value),
                        }
                    )
                )
            );
        files.Add(new(ManifestWriter.FileName, ManifestWriter.Write(request, job, plan, listed, work, dense)));
        files.Add(new(SumsWriter.FileName, SumsWriter.Write(files.Select(f => (f.Path, f.Bytes)))));
        return [.. files.Select(f => f with { Path = $"{plan.Hoop.Name}/{f.Path}" })];
    }

    /// <summary>The overview of a plan that is not stitched yet, as SVG or PNG.</summary>
    internal static byte[] RenderPlan(Job job, Plan plan, OutputKind kind)
    {
        var overview = OverviewPicture.Of(job.Recipe, job.Drawing, plan, []);
        return kind == OutputKind.Svg ? SvgWriter.Write(overview) : Png(overview);
    }

    /// <summary>Both, named after the hoop.</summary>
    internal static ImmutableArray<OutputFile> RenderPlan(Job job, Plan plan)
    {
        var overview = OverviewPicture.Of(job.Recipe, job.Drawing, plan, []);
        return [new($"{plan.Hoop.Name}.svg", SvgWriter.Write(overview)), new($"{plan.Hoop.Name}.png", Png(overview))];
    }

    /// <summary>Of a part's files, without their endings.</summary>
    internal static string NameOf(Part part) => PartFiles.Stem(part.Letter);

    private static byte[] Png(Picture overview) => PngWriter.Write(Raster.Of(overview, OverviewPixels));

    /// <param name="finest">Pixels of a millimetre at most.</param>
    private static Raster Drawn(Picture picture, int finest)
    {
        var room = MostPixels * Units.Millimetre / Math.Max(picture.Width, picture.Height);
        return Raster.InTrueScale(picture, Math.Clamp(room, 1, finest));
    }

    private static byte[] Small(Raster raster)
    {
        var by = (Math.Max(raster.Width, raster.Height) + SmallPixels - 1) / SmallPixels;
        return PngWriter.WriteIndexed(raster.Reduced(by));
    }

    /// <param name="name">Of its files, without their endings.</param>
    /// <param name="moved">It was moved onto the sewn work, and its picture says so.</param>
    internal static (ListedPart Listed, ImmutableArray<OutputFile> Files) RenderPart(
        Job job,
        Plan plan,
        Part part,
        string name,
        bool moved = false
    )
    {
        var kinds = job.Recipe.Output.Files;
        var tape = PartTape.Of(part, job.Recipe.Title);
        var figures = PartFigures.Of(job.Recipe, part, tape);
        var files = ImmutableArray.CreateBuilder<OutputFile>();
        if (kinds.Contains(OutputKind.Tape))
            files.Add(new($"{name}.dst", TapeWriter.Write(tape)));
        var picture = PartPicture.Of(job.Recipe, plan, part, figures, moved);
        if (kinds.Contains(OutputKind.Svg))
            files.Add(new($"{name}.svg", SvgWriter.Write(picture)));
        if (kinds.Contains(OutputKind.Thread))
            files.Add(new($"{name}.png", PngWriter.WriteIndexed(Drawn(picture, PartPixels))));
        if (kinds.Contains(OutputKind.Csv))
            files.Add(new($"{name}.csv", CsvWriter.Write(part)));
        return (new(part, figures, [.. files.Select(f => f.Path)]), files.ToImmutable());
    }
}
