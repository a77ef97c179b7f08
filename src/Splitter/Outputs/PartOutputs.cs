using System.Collections.Immutable;
using Splitter.Outputs.Pictures;
using Splitter.Outputs.Pictures.Strands;
using Splitter.Outputs.Tapes;
using Splitter.Parts;
using Splitter.Planning;
using Splitter.Recipes;
using Splitter.Tapes;

namespace Splitter.Outputs;

/// <summary>The files of one part.</summary>
internal sealed class PartOutputs
{
    private readonly Job job;
    private readonly Plan plan;
    private readonly Part part;

    /// <summary>As it is written, which is a quarter of what its records take.</summary>
    private readonly byte[] tape;
    private readonly PartFigures figures;
    private readonly string name;
    private readonly bool moved;
    private readonly StrandPainters painters;

    /// <param name="name">Of its files, without their endings.</param>
    /// <param name="painters">Those of all parts.</param>
    /// <param name="moved">It was moved onto the sewn work, and its picture says so.</param>
    internal PartOutputs(Job job, Plan plan, Part part, string name, StrandPainters painters, bool moved = false)
    {
        (this.job, this.plan, this.part, this.name) = (job, plan, part, name);
        (this.painters, this.moved) = (painters, moved);
        var records = PartTape.Of(part, job.Recipe.Title);
        figures = PartFigures.Of(job.Recipe, part, records);
        tape = Kinds.Contains(OutputKind.Tape) ? TapeWriter.Write(records) : [];
        Listed = new(part, figures, [.. Kinds.Select(PathOf)]);
    }

    internal ListedPart Listed { get; }

    /// <param name="time">At the machine, as every table tells it.</param>
    internal ImmutableArray<OutputFile> Render(string time)
    {
        // Drawn once for two uses, or not at all.
        var picture = new Lazy<Picture>(() => PartPicture.Of(job.Recipe, plan, part, figures, time, moved));
        return [.. Kinds.Select(kind => new OutputFile(PathOf(kind), Write(kind, picture)))];
    }

    private IEnumerable<OutputKind> Kinds =>
        new[] { OutputKind.Tape, OutputKind.Svg, OutputKind.Thread, OutputKind.Csv }.Where(
            job.Recipe.Output.Files.Contains
        );

    private string PathOf(OutputKind kind) =>
        kind switch
        {
            OutputKind.Tape => $"{name}.dst",
            OutputKind.Svg => $"{name}.svg",
            OutputKind.Thread => $"{name}.png",
            _ => $"{name}.csv",
        };

    private byte[] Write(OutputKind kind, Lazy<Picture> picture) =>
        kind switch
        {
            OutputKind.Tape => tape,
            OutputKind.Svg => SvgWriter.Write(picture.Value),
            OutputKind.Thread => WriteThread(picture.Value),
            _ => CsvWriter.Write(part),
        };

    private byte[] WriteThread(Picture picture)
    {
        using var raster = ThreadRaster.OfPart(picture, painters);
        return PngWriter.WriteIndexed(raster);
    }
}
