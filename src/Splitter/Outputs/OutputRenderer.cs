using System.Collections.Immutable;
using Splitter.Outputs.Tapes;
using Splitter.Parts;
using Splitter.Planning;
using Splitter.Recipes;

namespace Splitter.Outputs;

/// <summary>Parts to files, the manifest and the sums last because they list the others.</summary>
internal static class OutputRenderer
{
    internal static ImmutableArray<OutputFile> Render(Request request, Job job, Plan plan, ImmutableArray<Part> parts)
    {
        var kinds = job.Recipe.Output.Files;
        ImmutableArray<(ListedPart Listed, ImmutableArray<OutputFile> Files)> rendered =
        [
            .. parts
                .AsParallel()
                .AsOrdered() // Parallel work, ordered result.
                .WithDegreeOfParallelism(request.Jobs)
                .Select(part => Render(job, part, kinds)),
        ];
        ImmutableArray<ListedPart> listed = [.. rendered.Select(r => r.Listed)];
        var files = rendered.SelectMany(r => r.Files).ToList();
        files.Add(new(ManifestWriter.FileName, ManifestWriter.Write(request, job, plan, listed)));
        files.Add(new(SumsWriter.FileName, SumsWriter.Write(files.Select(f => (f.Path, f.Bytes)))));
        return [.. files.Select(f => f with { Path = $"{plan.Hoop.Name}/{f.Path}" })];
    }

    private static (ListedPart, ImmutableArray<OutputFile>) Render(Job job, Part part, ImmutableArray<OutputKind> kinds)
    {
        var tape = PartTape.Of(part, job.Recipe.Title);
        var figures = PartFigures.Of(part, tape, job.Recipe.Cloth.Thickness);
        var name = $"part-{part.Letter}";
        var files = ImmutableArray.CreateBuilder<OutputFile>();
        if (kinds.Contains(OutputKind.Tape))
            files.Add(new($"{name}.dst", TapeWriter.Write(tape)));
        if (kinds.Contains(OutputKind.Csv))
            files.Add(new($"{name}.csv", CsvWriter.Write(part)));
        return (new(part, figures, [.. files.Select(f => f.Path)]), files.ToImmutable());
    }
}
