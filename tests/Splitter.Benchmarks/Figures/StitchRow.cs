using System.Globalization;
using Splitter.Measures;

namespace Splitter.Benchmarks.Figures;

/// <summary>One line of the table of stitches.</summary>
internal sealed record StitchRow
{
    /// <summary>Layers that cloth and needle bear (common practice, no source).</summary>
    internal const double Limit = 3;

    internal const string Header = """
        | artwork | parts | shapes | stitches | threads set | trims a shape | jumps a shape | jumps, mm | layers, most | mm² above 3 | told | layers, 99 % | penetrations, most | covered | spilled | colour | s a 100,000 |
        | --- | ---: | ---: | ---: | ---: | ---: | ---: | ---: | ---: | ---: | ---: | ---: | ---: | ---: | ---: | ---: | ---: |
        """;

    public required string Name { get; init; }
    public required int Parts { get; init; }
    public required int Shapes { get; init; }
    public required int Stitches { get; init; }

    /// <summary>Steps of the body: as often is a thread put in.</summary>
    public required int Steps { get; init; }
    public required int Trims { get; init; }
    public required int Jumps { get; init; }

    /// <summary>All of them, mm.</summary>
    public required double JumpLength { get; init; }

    /// <summary>Layers of thread on the fullest square millimetre.</summary>
    public required double Most { get; init; }

    /// <summary>Square millimetres with more than <see cref="Limit"/> layers.</summary>
    public required int Above { get; init; }

    /// <summary>Square millimetres that the manifest lists as too dense.</summary>
    public required double Told { get; init; }

    /// <summary>Layers that 99 of 100 square millimetres do not exceed.</summary>
    public required double Usual { get; init; }

    /// <summary>Needle penetrations on the square millimetre that has most.</summary>
    public required int Penetrations { get; init; }
    public required Agreement Agreement { get; init; }
    public required double Seconds { get; init; }

    internal static string Smallest(IReadOnlyCollection<StitchRow> rows) =>
        Text(
            $"Covered at least {100 * rows.Min(r => r.Agreement.Covered):0.0} %, spilled at most {100 * rows.Max(r => r.Agreement.Spilled):0.0} %, colour at least {100 * rows.Min(r => r.Agreement.Coloured):0.0} %; {rows.Sum(r => r.Above)} mm² above {Limit:0} layers in all, {rows.Sum(r => r.Told):0.##} told."
        );

    internal string Line() =>
        Text(
            $"| {Name} | {Parts} | {Shapes} | {Stitches} | {Steps} | {(double)Trims / Shapes:0.0} | {(double)Jumps / Shapes:0.0} | {JumpLength:0} | {Most:0.0} | {Above} | {Told:0.##} | {Usual:0.0} | {Penetrations} | {100 * Agreement.Covered:0.0} | {100 * Agreement.Spilled:0.0} | {100 * Agreement.Coloured:0.0} | {Seconds:0.00} |"
        );

    private static string Text(FormattableString text) => text.ToString(CultureInfo.InvariantCulture);
}
