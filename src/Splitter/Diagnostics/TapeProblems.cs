using static System.FormattableString;

namespace Splitter.Diagnostics;

/// <summary>What there is to say about tapes, whoever made them: SPL5000 to SPL5049.</summary>
internal static class TapeProblems
{
    internal static Diagnostic ShortHeader(string file, int length) =>
        Diagnostic.Error(
            5001,
            Place.Whole(file),
            Invariant($"this is no tape: it has {length} bytes and a tape's header alone has 512; give a ")
                + ".dst file, or copy it again"
        );

    /// <param name="stated">How many records the header says there are; null when it does not.</param>
    internal static Diagnostic NoEnd(string file, int records, int? stated) =>
        Diagnostic.Error(
            5002,
            At(file, records),
            Invariant($"the tape breaks off after {records} ")
                + Invariant(
                    $"records{(stated > records ? Invariant($" of the {stated} that its header promises") : "")}, "
                )
                + "without an end mark (00 00 F3); copy it again"
        );

    /// <param name="stated">How many records the header says there are.</param>
    internal static Diagnostic EndTooSoon(string file, int records, int rest, int stated) =>
        Diagnostic.Error(
            5002,
            At(file, records),
            Invariant($"the tape's end mark (00 00 F3) comes after {records} records of the {stated} that its header ")
                + Invariant($"promises, and {rest} bytes follow it, so a part of the design would be missing: ")
                + "copy it again"
        );

    internal static Diagnostic UnknownRecord(string file, int record, int at, byte code) =>
        Diagnostic.Error(
            5003,
            At(file, record),
            Invariant($"record {record} (byte {at}) is neither stitch, jump nor stop: its third byte is ")
                + Invariant($"{code:X2}; this is no tape, or it is damaged: copy it again")
        );

    /// <summary>Jumps after it may let something fall instead of moving on: what it sews cannot be known.</summary>
    internal static Diagnostic DeviceRecord(string file, int record, int at, byte code) =>
        Diagnostic.Error(
            5010,
            At(file, record),
            Invariant($"record {record} (byte {at}, third byte {code:X2}) works a device beside the needle, such ")
                + "as one for sequins, which Splitter does not know; save the design without it, or copy the tape "
                + "again if it has none"
        );

    internal static Diagnostic NothingSewn(string file) =>
        Diagnostic.Error(5004, Place.Whole(file), "the tape sews nothing: it has no stitch; make it again");

    internal static Diagnostic BytesAfterEnd(string file, int record, int count) =>
        Diagnostic.Warning(
            5005,
            At(file, record),
            Invariant($"{count} bytes after the end mark are not sewn; make the tape again if stitches are missing")
        );

    internal static Diagnostic OutOfReach(string file, int record, int millimetres) =>
        Diagnostic.Error(
            5006,
            At(file, record),
            Invariant($"record {record} lies more than {millimetres} mm from the start, where no machine ")
                + "reaches; this is no tape, or it is damaged: copy it again"
        );

    internal static Diagnostic EndMissing(string file, int record) =>
        Diagnostic.Warning(
            5007,
            At(file, record),
            "the tape has no end mark (00 00 F3); all that it holds is taken; copy it again if stitches are missing"
        );

    internal static Diagnostic BlankRecords(string file, int record, int count) =>
        Diagnostic.Warning(
            5008,
            At(file, record),
            Invariant($"{count} {(count == 1 ? "record holds" : "records hold")} nothing at all (00 00 ")
                + Invariant($"00), the first of them record {record}; they are passed over; copy the tape again ")
                + "if stitches are missing"
        );

    internal static Diagnostic OtherCount(string file, string what, int stated, int read) =>
        Diagnostic.Warning(
            5009,
            Place.Whole(file),
            Invariant($"the header says {stated} {what}, and the tape has {read}; the tape counts; copy ")
                + "it again if stitches are missing"
        );

    /// <summary>Sizes in steps of 0.1 mm.</summary>
    internal static Diagnostic OtherSize(string file, (int Width, int Height) stated, (int Width, int Height) read) =>
        Diagnostic.Warning(
            5011,
            Place.Whole(file),
            Invariant($"the header says that the design is {stated.Width / 10.0} x {stated.Height / 10.0} mm, and its ")
                + Invariant($"stitches take {read.Width / 10.0} x {read.Height / 10.0} mm; the stitches count; ")
                + "copy the tape again if it is another design"
        );

    /// <summary>A tape has no lines: its records stand in one, each in a column.</summary>
    internal static Place At(string file, int record) => new(file, 1, record);
}
