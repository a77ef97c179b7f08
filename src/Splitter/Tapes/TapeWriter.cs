namespace Splitter.Tapes;

/// <summary>Tapes to bytes: header, records, end mark.</summary>
internal static class TapeWriter
{
    internal static byte[] Write(Tape tape)
    {
        var bytes = new byte[TapeHeader.Length + ((tape.Records.Length + 1) * RecordCode.Length)];
        TapeHeader.Write(tape, bytes);
        var at = TapeHeader.Length;
        foreach (var record in tape.Records)
        {
            RecordCode.Write(record, bytes.AsSpan(at, RecordCode.Length));
            at += RecordCode.Length;
        }
        bytes[^1] = RecordCode.End;
        return bytes;
    }
}
