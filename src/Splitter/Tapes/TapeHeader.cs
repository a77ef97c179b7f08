using System.Globalization;
using System.Text;

namespace Splitter.Tapes;

/// <summary>
/// The 512 bytes before the records (common practice, no source): text fields, each ended by CR, then 0x1A, padded with
/// spaces. A figure too large for its digits is written as the largest one: machines sew by the records.
/// </summary>
/// <param name="Label">Empty when the header has none.</param>
/// <param name="Records">How many it says there are; null when it does not.</param>
/// <param name="Stops">Colour changes, likewise.</param>
/// <param name="Size">From end to end, steps of 0.1 mm; null when it says none.</param>
internal readonly record struct TapeHeader(string Label, int? Records, int? Stops, (int Width, int Height)? Size)
{
    /// <summary>Bytes.</summary>
    internal const int Length = 512;

    /// <summary>Characters of the label.</summary>
    internal const int LabelLength = 16;

    private const byte EndOfText = 0x1A;
    private const string LabelKey = "LA:";
    private const string RecordsKey = "ST:";
    private const string StopsKey = "CO:";
    private const string RightKey = "+X:";
    private const string LeftKey = "-X:";
    private const string TopKey = "+Y:";
    private const string BottomKey = "-Y:";

    internal static void Write(Tape tape, Span<byte> bytes)
    {
        var (stops, u, v, left, right, bottom, top) = (0, 0, 0, 0, 0, 0, 0);
        foreach (var record in tape.Records)
        {
            stops += record.Command == TapeCommand.Stop ? 1 : 0;
            (u, v) = (u + record.U, v + record.V);
            (left, right) = (Math.Min(left, u), Math.Max(right, u));
            (bottom, top) = (Math.Min(bottom, v), Math.Max(top, v));
        }
        var text = new StringBuilder()
            .Append(CultureInfo.InvariantCulture, $"{LabelKey}{tape.Label, -LabelLength}\r")
            .Append(CultureInfo.InvariantCulture, $"{RecordsKey}{Digits(tape.Records.Length, 7)}\r")
            .Append(CultureInfo.InvariantCulture, $"{StopsKey}{Digits(stops, 3)}\r")
            .Append(CultureInfo.InvariantCulture, $"{RightKey}{Digits(right, 5)}\r{LeftKey}{Digits(-left, 5)}\r")
            .Append(CultureInfo.InvariantCulture, $"{TopKey}{Digits(top, 5)}\r{BottomKey}{Digits(-bottom, 5)}\r")
            .Append(CultureInfo.InvariantCulture, $"AX:{Signed(u)}\rAY:{Signed(v)}\r")
            .Append(CultureInfo.InvariantCulture, $"MX:{Signed(0)}\rMY:{Signed(0)}\r")
            .Append("PD:******\r");
        bytes[..Length].Fill((byte)' ');
        var written = Encoding.ASCII.GetBytes(text.ToString(), bytes);
        bytes[written] = EndOfText;
    }

    /// <summary>What the header of a whole tape says; programs differ in what they write there, and in where.</summary>
    internal static TapeHeader Read(ReadOnlySpan<byte> bytes)
    {
        var text = Encoding.ASCII.GetString(bytes[..Length]);
        return new(
            text.StartsWith(LabelKey, StringComparison.Ordinal) ? LabelOf(text) : "",
            Count(text, RecordsKey),
            Count(text, StopsKey),
            Count(text, RightKey) + Count(text, LeftKey) is { } width and > 0
            && Count(text, TopKey) + Count(text, BottomKey) is { } height and > 0
                ? (width, height)
                : null
        );
    }

    /// <summary>
    /// Two tapes differ in their labels, if at all: machines centre and tell a design by what else the header says.
    /// </summary>
    internal static bool IsLabelAllThatDiffers(ReadOnlySpan<byte> one, ReadOnlySpan<byte> other) =>
        IsAllThatDiffers(one, other) && one[LabelEnd..Length].SequenceEqual(other[LabelEnd..Length]);

    /// <summary>Two tapes sew the same, record by record.</summary>
    internal static bool IsAllThatDiffers(ReadOnlySpan<byte> one, ReadOnlySpan<byte> other) =>
        one.Length > Length && other.Length > Length && one[Length..].SequenceEqual(other[Length..]);

    private static int LabelEnd => LabelKey.Length + LabelLength;

    private static string LabelOf(string text) =>
        new string([
            .. text.Substring(LabelKey.Length, LabelLength)
                .TakeWhile(c => c != '\r')
                .Select(c => c is < ' ' or > '~' ? '?' : c),
        ]).TrimEnd();

    private static int? Count(string text, string key) =>
        text.IndexOf($"\r{key}", StringComparison.Ordinal) is >= 0 and var at
        && int.TryParse(
            string.Concat(text.Skip(at + 1 + key.Length).TakeWhile(c => char.IsAsciiDigit(c) || c == ' ')),
            NumberStyles.AllowLeadingWhite | NumberStyles.AllowTrailingWhite,
            CultureInfo.InvariantCulture,
            out var count
        )
            ? count
            : null;

    private static string Digits(int value, int digits)
    {
        var text = value.ToString(CultureInfo.InvariantCulture).PadLeft(digits, '0');
        return text.Length <= digits ? text : new('9', digits);
    }

    private static string Signed(int value) => (value < 0 ? "-" : "+") + Digits(Math.Abs(value), 5);
}
