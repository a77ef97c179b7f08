using System.Collections.Immutable;
using System.CommandLine;
using Splitter.Checking;
using Splitter.Diagnostics;
using Splitter.Outputs;
using Splitter.Outputs.Pictures;
using Splitter.Tool.Disk;

namespace Splitter.Tool.Commands.Comparing;

/// <summary>Two sides of a set, what was found between them, and where a reviewer should look.</summary>
internal sealed record Compared(SetSide Old, SetSide Now, ComparedSet Set, ImmutableArray<Finding> Findings);

/// <summary>What check and compare have in common: options, and how the answer is put together.</summary>
internal static class Comparison
{
    /// <summary>High enough to see single stitches of a part.</summary>
    private const int PicturePixels = 1200;

    internal static Option<string?> Pictures() =>
        new("--pictures")
        {
            Description =
                "Also draw every changed part into this folder, as .svg and .png: before, after, the difference.",
            HelpName = "FOLDER",
        };

    internal static Option<bool> StitchesOnly() =>
        new("--stitches-only")
        {
            Description =
                "Return 1 only where a tape is missing, too many or another; the rest is told, but is no difference.",
        };

    internal static Option<bool> AllLines() =>
        new("--all") { Description = "Tell every difference, however many lines it takes." };

    /// <param name="pictures">Where to draw; null for nowhere.</param>
    /// <param name="allLines">The text has every line.</param>
    internal static Answer Answer(
        ImmutableArray<Compared> all,
        ImmutableArray<Diagnostic> warnings,
        string? pictures,
        bool stitchesOnly,
        bool allLines,
        bool isCheck
    )
    {
        if (pictures is not null && Draw(pictures, all) is { } problem)
            return Commands.Answer.Wrong([.. warnings, problem]);
        var same = all.All(c => c.Set.Same || (stitchesOnly && c.Set.Weight != DifferenceWeight.Stitches));
        return new(same ? ExitCode.Done : ExitCode.Differences, warnings)
        {
            Text = string.Concat(all.Select(c => c.Set.ToText(isCheck, allLines))),
            Data = all.Select(c => c.Set).ToList(),
            Findings = [.. all.SelectMany(c => c.Findings)],
        };
    }

    /// <summary>Null for no file. A link is no file of a set, wherever it leads.</summary>
    internal static byte[]? ReadFile(string path)
    {
        var disk = new LocalDisk();
        return disk.Kind(path) == EntryKind.File ? PlainFile.Read(path) : null;
    }

    private static Diagnostic? Draw(string folder, ImmutableArray<Compared> all)
    {
        foreach (var compared in all)
        foreach (var part in compared.Set.Parts)
        {
            if (DifferencePicture.Of(part.Letter, compared.Old, compared.Now) is not { } picture)
                continue;
            using var raster = Raster.Of(picture, PicturePixels);
            var name = $"{compared.Set.Hoop}-part-{part.Letter}";
            OutputFile[] files =
            [
                new($"{name}.svg", SvgWriter.Write(picture)),
                new($"{name}.png", PngWriter.Write(raster)),
            ];
            foreach (var file in files)
                if (PictureFile.WriteInto(folder, file) is { } problem)
                    return problem;
        }
        return null;
    }
}
