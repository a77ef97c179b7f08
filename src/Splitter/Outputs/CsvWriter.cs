using Splitter.Geometry;
using Splitter.Outputs.Tapes;
using Splitter.Parts;
using Splitter.Stitching;

namespace Splitter.Outputs;

/// <summary>Every penetration of a part as text: RFC 4180 with LF at line ends, millimetres with one decimal.</summary>
internal static class CsvWriter
{
    private const string Heading = "step,kind,thread,of,use,u_mm,v_mm,x_mm,y_mm,command\n";

    /// <summary>
    /// Command is what brings the needle there: a stitch, a move without sewing, or a trim and such a move.
    /// </summary>
    internal static byte[] Write(Part part)
    {
        var text = new TextBytes(TextBytes.Long).Add(Heading);
        var (block, beginning) = (default(Block), Array.Empty<byte>());
        foreach (var needle in NeedleWalk.Of(part))
        {
            if (needle.IsFirst || !ReferenceEquals(block, needle.Block))
                (block, beginning) = (needle.Block, Beginning(needle));
            text.Add(beginning)
                .Add(Words.Of(needle.Stitch))
                .Add(',')
                .AddTenths(needle.At.U)
                .Add(',')
                .AddTenths(needle.At.V)
                .Add(',')
                .AddTenths(needle.Stitch.At.X / Units.TapeStep)
                .Add(',')
                .AddTenths(needle.Stitch.At.Y / Units.TapeStep)
                .Add(
                    needle.Arrival switch
                    {
                        Arrival.Sewn => ",stitch\n"u8,
                        Arrival.Moved => ",move\n"u8,
                        _ => ",trim\n"u8,
                    }
                );
        }
        return text.ToArray();
    }

    /// <summary>The same of all penetrations of a block.</summary>
    private static byte[] Beginning(in Penetration needle) =>
        new TextBytes()
            .Add(needle.Step.Number)
            .Add(',')
            .Add(Words.Of(needle.Step.Kind))
            .Add(',')
            .Add(Field(PartFigures.NameOf(needle.Step)))
            .Add(',')
            .Add(Field(needle.Block.Of))
            .Add(',')
            .ToArray();

    private static string Field(string text) =>
        text.AsSpan().ContainsAny(",\"\r\n") ? $"\"{text.Replace("\"", "\"\"", StringComparison.Ordinal)}\"" : text;
}
