using System.Collections.Immutable;
using Splitter.Correcting;
using Splitter.Outputs.Sheets;
using Splitter.Outputs.Tapes;
using Splitter.Parts;
using Splitter.Recipes;
using Splitter.Tapes;
using Splitter.Texts;

namespace Splitter.Outputs;

/// <summary>A corrected part to files: the part's own, the page to go on by, manifest and sums.</summary>
internal static class CorrectionRenderer
{
    internal static ImmutableArray<OutputFile> Render(
        Request request,
        Job job,
        ImmutableArray<Part> parts,
        Correction correction
    )
    {
        var (plan, part) = (correction.Plan, correction.Part);
        var made = new PartOutputs(job, plan, part, $"{PartFiles.Stem(part.Letter)}-corrected", new(), moved: true);
        var listed = made.Listed;
        var files = made.Render(Numbers.Time(listed.Figures.Minutes)).ToList();
        var work = WorkFigures.Of(job.Recipe, job.Drawing, [listed]);
        if (job.Recipe.Output.Files.Contains(OutputKind.WorkSheet))
            files.Add(
                new(
                    WorkSheet.FileName,
                    CorrectedSheet.Write(
                        // Spools keep the numbers of the work sheet; the page has no cover, and so no picture of the
                        // piece.
                        new(job.Recipe, job.Drawing, plan, [listed], WholeWork(job, parts))
                        {
                            RecipeFile = request.FileName,
                        },
                        correction
                    )
                )
            );
        var original = parts.Single(p => p.Letter == part.Letter);
        var sum = SumsWriter.Sum(TapeWriter.Write(PartTape.Of(original, job.Recipe.Title)));
        files.Add(
            new(
                ManifestWriter.FileName,
                ManifestWriter.Write(
                    request,
                    job,
                    plan,
                    [listed],
                    work,
                    // They are those of all parts together, and in the set's own manifest.
                    dense: [],
                    json => ManifestCorrection.Write(json, correction, sum)
                )
            )
        );
        files.Add(new(SumsWriter.FileName, SumsWriter.Write(files.Select(f => (f.Path, f.Bytes)))));
        var folder = PartFiles.CorrectedFolder(plan.Hoop.Name, part.Letter);
        return [.. files.Select(f => f with { Path = $"{folder}/{f.Path}" })];
    }

    /// <summary>What all parts as planned amount to.</summary>
    private static WorkFigures WholeWork(Job job, ImmutableArray<Part> parts) =>
        WorkFigures.Of(
            job.Recipe,
            job.Drawing,
            [
                .. parts.Select(part => new ListedPart(
                    part,
                    PartFigures.Of(job.Recipe, part, PartTape.Of(part, job.Recipe.Title)),
                    []
                )),
            ]
        );
}
