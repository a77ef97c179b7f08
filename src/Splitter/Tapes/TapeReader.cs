using System.Collections.Immutable;
using Splitter.Diagnostics;

namespace Splitter.Tapes;

/// <summary>
/// Bytes to tapes. Whatever the bytes are, the answer is a tape or diagnostics. What machines and programs differ in,
/// and what no machine minds, is read with a warning: what is sewn is what the records say.
/// </summary>
internal static class TapeReader
{
    /// <summary>
    /// Farthest place from the start, steps of 0.1 mm: 2 m is more than any machine reaches, and less would refuse one
    /// that embroiders curtains. Beyond it the bytes are something else. Common practice, no source.
    /// </summary>
    private const int Farthest = 20_000;

    /// <summary>Some programs count the end mark as a record. Common practice, no source.</summary>
    private const int CountSlack = 1;

    /// <summary>
    /// A header's size differs by no more from the tape's, steps of 0.1 mm: programs round. By eye, no source.
    /// </summary>
    private const int SizeSlack = 10;

    internal static Result<Tape> Read(string file, ReadOnlySpan<byte> bytes)
    {
        if (bytes.Length < TapeHeader.Length)
            return Result.Fail<Tape>(TapeProblems.ShortHeader(file, bytes.Length));
        var records = ImmutableArray.CreateBuilder<TapeRecord>((bytes.Length - TapeHeader.Length) / RecordCode.Length);
        var (u, v, number, at) = (0, 0, 0, TapeHeader.Length);
        var blank = ImmutableArray.CreateBuilder<int>();
        int? rest = null;
        for (; rest is null && at + RecordCode.Length <= bytes.Length; at += RecordCode.Length)
        {
            var code = bytes.Slice(at, RecordCode.Length);
            number++;
            if (RecordCode.IsEnd(code))
                rest = bytes.Length - at - RecordCode.Length;
            else if (code is [0, 0, 0])
                blank.Add(number);
            else if (RecordCode.Read(code) is { } record)
            {
                records.Add(record);
                (u, v) = (u + record.U, v + record.V);
                if (Math.Abs(u) > Farthest || Math.Abs(v) > Farthest)
                    return Result.Fail<Tape>(TapeProblems.OutOfReach(file, number, Farthest / 10));
            }
            else
                return Result.Fail<Tape>(
                    RecordCode.IsForDevice(code)
                        ? TapeProblems.DeviceRecord(file, number, at, code[2])
                        : TapeProblems.UnknownRecord(file, number, at, code[2])
                );
        }
        var header = TapeHeader.Read(bytes);
        if (rest is null && (at < bytes.Length || header.Records > number + CountSlack))
            return Result.Fail<Tape>(TapeProblems.NoEnd(file, number, header.Records));
        // Some programs write more than the tape behind it; a record that was damaged into an end mark hides the rest.
        if (rest >= RecordCode.Length && header.Records > number + CountSlack)
            return Result.Fail<Tape>(TapeProblems.EndTooSoon(file, number, rest.Value, header.Records.Value));
        if (!records.Any(r => r.Command == TapeCommand.Stitch))
            return Result.Fail<Tape>(TapeProblems.NothingSewn(file));
        return Result.Of(
            new Tape(header.Label, records.ToImmutable()) { Blank = blank.ToImmutable() },
            [.. Remarks(file, header, records, number, blank, rest)]
        );
    }

    private static IEnumerable<Diagnostic> Remarks(
        string file,
        TapeHeader header,
        ImmutableArray<TapeRecord>.Builder records,
        int read,
        ImmutableArray<int>.Builder blank,
        int? rest
    )
    {
        if (rest is null)
            yield return TapeProblems.EndMissing(file, read);
        // Less than a record can hold no stitch; a byte 1A is usual there (common practice, no source).
        if (rest >= RecordCode.Length)
            yield return TapeProblems.BytesAfterEnd(file, read, rest.Value);
        if (blank.Count > 0)
            yield return TapeProblems.BlankRecords(file, blank[0], blank.Count);
        if (header.Records is { } stated && Math.Abs(stated - records.Count) > CountSlack + blank.Count)
            yield return TapeProblems.OtherCount(file, "records", stated, records.Count);
        var stops = records.Count(r => r.Command == TapeCommand.Stop);
        if (header.Stops is { } changes && changes != stops)
            yield return TapeProblems.OtherCount(file, "colour changes", changes, stops);
        if (header.Size is { } size && OtherSize(size, records) is { } sewn)
            yield return TapeProblems.OtherSize(file, size, sewn);
    }

    /// <summary>
    /// The size of what is sewn, when a header says less, or more than all moves from the start take: programs count
    /// either.
    /// </summary>
    private static (int Width, int Height)? OtherSize(
        (int Width, int Height) stated,
        ImmutableArray<TapeRecord>.Builder records
    )
    {
        var sewn = TapeCounts.Of(new("", records.ToImmutable())).Bounds;
        var (u, v, left, right, bottom, top) = (0, 0, 0, 0, 0, 0);
        foreach (var record in records)
        {
            (u, v) = (u + record.U, v + record.V);
            (left, right) = (Math.Min(left, u), Math.Max(right, u));
            (bottom, top) = (Math.Min(bottom, v), Math.Max(top, v));
        }
        var read = (Width: sewn.Right - sewn.Left, Height: sewn.Top - sewn.Bottom);
        return IsBetween(stated.Width, read.Width, right - left) && IsBetween(stated.Height, read.Height, top - bottom)
            ? null
            : read;

        static bool IsBetween(int stated, int least, int most) =>
            stated >= least - SizeSlack && stated <= most + SizeSlack;
    }
}
