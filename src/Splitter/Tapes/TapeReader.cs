using System.Collections.Immutable;
using Splitter.Diagnostics;

namespace Splitter.Tapes;

/// <summary>Bytes to tapes. Whatever the bytes are, the answer is a tape or diagnostics.</summary>
internal static class TapeReader
{
    /// <summary>
    /// Farthest place from the start, steps of 0.1 mm: 2 m is more than any machine reaches, and less would refuse one that
    /// embroiders curtains. Beyond it the bytes are something else. Common practice, no source.
    /// </summary>
    private const int Farthest = 20_000;

    internal static Result<Tape> Read(string file, ReadOnlySpan<byte> bytes)
    {
        if (bytes.Length < TapeHeader.Length)
            return Result.Fail<Tape>(TapeProblems.ShortHeader(file, bytes.Length));
        var label = TapeHeader.Label(bytes);
        var records = ImmutableArray.CreateBuilder<TapeRecord>((bytes.Length - TapeHeader.Length) / RecordCode.Length);
        var (u, v) = (0, 0);
        for (var at = TapeHeader.Length; at + RecordCode.Length <= bytes.Length; at += RecordCode.Length)
        {
            var code = bytes.Slice(at, RecordCode.Length);
            if (code is [0, 0, RecordCode.End])
                return Ended(file, new(label, records.ToImmutable()), bytes.Length - at - RecordCode.Length);
            if (RecordCode.Read(code) is not { } record)
                return Result.Fail<Tape>(TapeProblems.UnknownRecord(file, records.Count + 1, at, code[2]));
            records.Add(record);
            (u, v) = (u + record.U, v + record.V);
            if (Math.Abs(u) > Farthest || Math.Abs(v) > Farthest)
                return Result.Fail<Tape>(TapeProblems.OutOfReach(file, records.Count, Farthest / 10));
        }
        return Result.Fail<Tape>(TapeProblems.NoEnd(file, records.Count));
    }

    private static Result<Tape> Ended(string file, Tape tape, int rest) =>
        !tape.Records.Any(r => r.Command == TapeCommand.Stitch) ? Result.Fail<Tape>(TapeProblems.NothingSewn(file))
        : rest > 0 ? Result.Of(tape, [TapeProblems.BytesAfterEnd(file, rest)])
        : Result.Of(tape);
}
