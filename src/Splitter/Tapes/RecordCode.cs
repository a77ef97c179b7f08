namespace Splitter.Tapes;

/// <summary>
/// The three bytes of a record. A move is a sum of balanced ternary digits 1, 3, 9, 27 and 81, each with a bit for plus
/// and one for minus (the trade's tape; common practice, no source).
/// </summary>
internal static class RecordCode
{
    /// <summary>Bytes of a record.</summary>
    internal const int Length = 3;

    /// <summary>Third byte of a stitch; its two low bits are set in every record.</summary>
    private const byte Sewn = 0x03;

    private const byte Jumped = 0x83;
    private const byte Stopped = 0xC3;

    /// <summary>Third byte of the end mark, whose other two are zero.</summary>
    internal const byte End = 0xF3;

    /// <summary>
    /// Third byte of what works a device beside the needle, such as one for sequins. From memory, no source.
    /// </summary>
    private const byte Device = 0x43;

    /// <summary>The bits of the third byte that say what the machine does; the others are digits of 81.</summary>
    private const byte CommandBits = 0xC3;

    /// <summary>A digit's byte and the bits that add and subtract it.</summary>
    private readonly record struct Digit(int Value, int At, byte Plus, byte Minus);

    private static readonly Digit[] AcrossDigits =
    [
        new(81, 2, 1 << 2, 1 << 3),
        new(27, 1, 1 << 2, 1 << 3),
        new(9, 0, 1 << 2, 1 << 3),
        new(3, 1, 1 << 0, 1 << 1),
        new(1, 0, 1 << 0, 1 << 1),
    ];

    private static readonly Digit[] UpDigits =
    [
        new(81, 2, 1 << 5, 1 << 4),
        new(27, 1, 1 << 5, 1 << 4),
        new(9, 0, 1 << 5, 1 << 4),
        new(3, 1, 1 << 7, 1 << 6),
        new(1, 0, 1 << 7, 1 << 6),
    ];

    internal static void Write(TapeRecord record, Span<byte> bytes)
    {
        bytes[0] = bytes[1] = 0;
        bytes[2] = record.Command switch
        {
            TapeCommand.Stitch => Sewn,
            TapeCommand.Jump => Jumped,
            _ => Stopped,
        };
        Add(record.U, AcrossDigits, bytes);
        Add(record.V, UpDigits, bytes);
    }

    /// <summary>
    /// Some programs fill the other two bytes of the mark with what they please. Common practice, no source.
    /// </summary>
    internal static bool IsEnd(ReadOnlySpan<byte> bytes) => bytes[2] == End;

    internal static bool IsForDevice(ReadOnlySpan<byte> bytes) => (bytes[2] & CommandBits) == Device;

    /// <summary>Null when the third byte is none that a record has.</summary>
    internal static TapeRecord? Read(ReadOnlySpan<byte> bytes)
    {
        TapeCommand? command = (bytes[2] & CommandBits) switch
        {
            Sewn => TapeCommand.Stitch,
            Jumped => TapeCommand.Jump,
            Stopped => TapeCommand.Stop,
            _ => null,
        };
        return command is { } known ? new(known, Sum(AcrossDigits, bytes), Sum(UpDigits, bytes)) : null;
    }

    private static void Add(int move, Digit[] digits, Span<byte> bytes)
    {
        foreach (var digit in digits)
        {
            // The smaller digits together reach half of what this one leaves: (81 - 1) / 2 = 27 + 9 + 3 + 1.
            var rest = (digit.Value - 1) / 2;
            if (Math.Abs(move) <= rest)
                continue;
            bytes[digit.At] |= move > 0 ? digit.Plus : digit.Minus;
            move -= Math.Sign(move) * digit.Value;
        }
        if (move != 0)
            throw new InvalidOperationException($"A move is longer than {TapeRecord.Longest} steps.");
    }

    private static int Sum(Digit[] digits, ReadOnlySpan<byte> bytes)
    {
        var sum = 0;
        foreach (var digit in digits)
        {
            if ((bytes[digit.At] & digit.Plus) != 0)
                sum += digit.Value;
            if ((bytes[digit.At] & digit.Minus) != 0)
                sum -= digit.Value;
        }
        return sum;
    }
}
