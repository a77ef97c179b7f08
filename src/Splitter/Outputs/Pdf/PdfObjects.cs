using System.Globalization;
using Splitter.Outputs.Pictures;

namespace Splitter.Outputs.Pdf;

/// <summary>
/// The numbered objects of a PDF file (ISO 32000-1, 7.3.10) and the table that says where each one begins.
/// </summary>
internal sealed class PdfObjects
{
    private readonly List<byte[]> bodies = [];

    /// <summary>A number for an object whose body needs to know it first.</summary>
    internal int Reserve()
    {
        bodies.Add([]);
        return bodies.Count;
    }

    internal void Set(int number, string body) => bodies[number - 1] = new TextBytes().Add(body).ToArray();

    internal int Add(string body)
    {
        var number = Reserve();
        Set(number, body);
        return number;
    }

    /// <summary>A stream of compressed bytes.</summary>
    /// <param name="entries">Of its dictionary, beside length and filter.</param>
    internal int Add(string entries, byte[] content)
    {
        var compressed = Deflated.Of(content, RepeatSearch.Thorough);
        bodies.Add(
            new TextBytes()
                .Add("<<")
                .Add(entries)
                .Add("/Filter/FlateDecode/Length ")
                .Add(compressed.Length)
                .Add(">>\nstream\n")
                .Add(compressed)
                .Add("\nendstream")
                .ToArray()
        );
        return bodies.Count;
    }

    /// <summary>The whole file. It carries no time and no file identifier: both would differ from run to run.</summary>
    internal byte[] ToFile(int catalog, int information)
    {
        using var file = new MemoryStream();
        // Four bytes above 127 tell programs that the file is not text (7.5.2).
        file.Write("%PDF-1.7\n%\u00e2\u00e3\u00cf\u00d3\n"u8);
        var places = new List<long>();
        for (var i = 0; i < bodies.Count; i++)
        {
            places.Add(file.Position);
            file.Write(new TextBytes().Add(i + 1).Add(" 0 obj\n").Add(bodies[i]).Add("\nendobj\n").ToArray());
        }
        var table = new TextBytes().Add("xref\n0 ").Add(bodies.Count + 1).Add("\n0000000000 65535 f \n");
        foreach (var place in places)
            table.Add(place.ToString("0000000000", CultureInfo.InvariantCulture)).Add(" 00000 n \n");
        table.Add("trailer\n<</Size ").Add(bodies.Count + 1).Add("/Root ").Add(catalog).Add(" 0 R/Info ");
        table.Add(information).Add(" 0 R>>\nstartxref\n").Add((int)file.Position).Add("\n%%EOF\n");
        file.Write(table.ToArray());
        return file.ToArray();
    }
}
