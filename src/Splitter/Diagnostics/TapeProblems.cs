using static System.FormattableString;

namespace Splitter.Diagnostics;

/// <summary>What there is to say about tapes, whoever made them: SPL5000 to SPL5049.</summary>
internal static class TapeProblems
{
    internal static Diagnostic ShortHeader(string file, int length) =>
        Diagnostic.Error(
            5001,
            Place.Whole(file),
            Invariant(
                $"this is no tape: it has {length} bytes and a tape's header alone has 512; give a .dst file, or copy it again"
            )
        );

    internal static Diagnostic NoEnd(string file, int records) =>
        Diagnostic.Error(
            5002,
            Place.Whole(file),
            Invariant($"the tape breaks off after {records} records without an end mark (00 00 F3); copy it again")
        );

    internal static Diagnostic UnknownRecord(string file, int record, int at, byte code) =>
        Diagnostic.Error(
            5003,
            Place.Whole(file),
            Invariant(
                $"record {record} (byte {at}) is neither stitch, jump nor stop: its third byte is {code:X2}; this is no tape, or it is damaged: copy it again"
            )
        );

    internal static Diagnostic NothingSewn(string file) =>
        Diagnostic.Error(5004, Place.Whole(file), "the tape sews nothing: it has no stitch; make it again");

    internal static Diagnostic BytesAfterEnd(string file, int count) =>
        Diagnostic.Warning(
            5005,
            Place.Whole(file),
            Invariant($"{count} bytes after the end mark are not sewn; make the tape again if stitches are missing")
        );

    internal static Diagnostic OutOfReach(string file, int record, int millimetres) =>
        Diagnostic.Error(
            5006,
            Place.Whole(file),
            Invariant(
                $"record {record} lies more than {millimetres} mm from the start, where no machine reaches; this is no tape, or it is damaged: copy it again"
            )
        );
}
