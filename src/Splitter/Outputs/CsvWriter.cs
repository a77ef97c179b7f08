using System.Globalization;
using System.Text;
using Splitter.Geometry;
using Splitter.Outputs.Tapes;
using Splitter.Parts;

namespace Splitter.Outputs;

/// <summary>Every penetration of a part as text: RFC 4180 with LF at line ends, millimetres with one decimal.</summary>
internal static class CsvWriter
{
    private const string Heading = "step,kind,thread,of,use,u_mm,v_mm,x_mm,y_mm,command\n";

    /// <summary>Command is what brings the needle there: a stitch, a move without sewing, or a trim and such a move.</summary>
    internal static byte[] Write(Part part)
    {
        var text = new StringBuilder(Heading);
        foreach (var needle in NeedleWalk.Of(part))
        {
            var (at, on) = (needle.At, needle.Stitch.At);
            text.Append(CultureInfo.InvariantCulture, $"{needle.Step.Number},{Words.Of(needle.Step.Kind)},")
                .Append(Field(PartFigures.NameOf(needle.Step)))
                .Append(',')
                .Append(Field(needle.Block.Of))
                .Append(',')
                .Append(Words.Of(needle.Stitch.Use))
                .Append(CultureInfo.InvariantCulture, $",{at.U / 10m:0.0},{at.V / 10m:0.0}")
                .Append(CultureInfo.InvariantCulture, $",{Millimetres(on.X)},{Millimetres(on.Y)},")
                .Append(
                    needle.Arrival switch
                    {
                        Arrival.Sewn => "stitch\n",
                        Arrival.Moved => "move\n",
                        _ => "trim\n",
                    }
                );
        }
        return Encoding.UTF8.GetBytes(text.ToString());
    }

    private static string Millimetres(int micrometres) =>
        ((decimal)micrometres / Units.Millimetre).ToString("0.0", CultureInfo.InvariantCulture);

    private static string Field(string text) =>
        text.AsSpan().ContainsAny(",\"\r\n") ? $"\"{text.Replace("\"", "\"\"", StringComparison.Ordinal)}\"" : text;
}
