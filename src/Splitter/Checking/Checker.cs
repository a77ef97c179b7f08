using System.Collections.Immutable;
using Splitter.Outputs;
using Splitter.Tapes;

namespace Splitter.Checking;

/// <summary>
/// What a recipe makes now against what is on disk, or one set on disk against another. Files are compared to the byte;
/// where a tape or what the manifest says of a part differs, it is told as the person at the machine would see it.
/// </summary>
internal static class Checker
{
    internal static SetDifferences Compare(SetSide old, SetSide now)
    {
        var files = ImmutableArray.CreateBuilder<FileDifference>();
        foreach (var path in now.Paths)
        {
            if (old.Read(path) is not { } bytes)
                files.Add(new(path, FileState.Missing));
            else if (now.Read(path) is { } other && !bytes.AsSpan().SequenceEqual(other))
                files.Add(
                    new(path, FileState.Changed)
                    {
                        IsLabelAlone = PartFiles.IsTape(path) && TapeHeader.IsLabelAllThatDiffers(bytes, other),
                    }
                );
        }
        foreach (var path in old.Paths.Except(now.Paths, StringComparer.Ordinal).Order(StringComparer.Ordinal))
            files.Add(new(path, FileState.Extra));
        return new(
            now.Hoop,
            files.ToImmutable(),
            // Sets of the same bytes, which is what a check mostly finds, need not be read as the machine would.
            files.Count == 0
                ? []
                :
                [
                    .. now
                        .Letters.Where(letter => old.Tape(letter) is not null && now.Tape(letter) is not null)
                        .Select(letter => PartComparer.Compare(letter, old, now))
                        .OfType<PartDifference>(),
                ]
        )
        {
            TotalsBefore = old.Manifest.Totals,
            TotalsAfter = now.Manifest.Totals,
            Origins = old.Manifest.Origin is { } was && now.Manifest.Origin is { } origin ? (was, origin) : null,
            Versions =
                old.Manifest.Version is { } before && now.Manifest.Version is { } after && before != after
                    ? (before, after)
                    : null,
        };
    }
}
