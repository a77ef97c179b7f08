using System.Text;
using System.Xml;
using System.Xml.Linq;

namespace Splitter.Outputs.Sheets;

/// <summary>
/// Elements of a page, every text in them escaped. The page is HTML whose syntax is XML's too, so that any reader of
/// either takes it; elements carry no namespace, as HTML wants it.
/// </summary>
internal static class Html
{
    private static readonly XmlWriterSettings Settings = new()
    {
        Encoding = new UTF8Encoding(encoderShouldEmitUTF8Identifier: false),
        OmitXmlDeclaration = true,
        Indent = true,
        IndentChars = " ",
        NewLineChars = "\n",
        NewLineHandling = NewLineHandling.None,
    };

    /// <summary>An element that is never written in HTML's forbidden short form, even when it is empty.</summary>
    internal static XElement Element(string name, params object?[] content)
    {
        var element = new XElement(name, content);
        if (element.IsEmpty)
            element.Add("");
        return element;
    }

    /// <summary>An element with a class.</summary>
    internal static XElement Classed(string name, string of, params object?[] content) =>
        Element(name, [new XAttribute("class", of), .. content]);

    /// <summary>
    /// An element of those that HTML writes without an end: <c>meta</c>, <c>input</c>; and shapes of SVG.
    /// </summary>
    internal static XElement Void(string name, params object?[] attributes) => new(name, attributes);

    internal static XElement List(IEnumerable<object> items) => Element("ul", items.Select(i => Element("li", i)));

    /// <summary>A box to tick, on paper or on a screen, and what it stands for.</summary>
    internal static XElement Tick(params object?[] content) =>
        Element("label", [Void("input", new XAttribute("type", "checkbox")), " ", .. content]);

    /// <summary>A list of boxes to tick.</summary>
    internal static XElement Ticks(IEnumerable<object> items) =>
        Classed("ul", "ticks", items.Select(i => Element("li", Tick(i))));

    /// <summary>A table with a row of headings; the first cell of a row is its heading.</summary>
    internal static XElement Table(
        string caption,
        object[] headings,
        IEnumerable<object?[]> rows,
        object?[]? foot = null
    )
    {
        return Element(
            "table",
            Element("caption", caption),
            Element("thead", Element("tr", headings.Select(h => Element("th", new XAttribute("scope", "col"), h)))),
            Element("tbody", rows.Select(Row)),
            foot is null ? null : Element("tfoot", Row(foot))
        );

        static XElement Row(object?[] cells) =>
            Element(
                "tr",
                Element("th", new XAttribute("scope", "row"), cells[0]),
                cells.Skip(1).Select(cell => Element("td", cell))
            );
    }

    /// <summary>Room to write in.</summary>
    internal static XElement Blank() => Classed("span", "blank", "\u00a0");

    internal static byte[] Write(XElement page)
    {
        using var stream = new MemoryStream();
        stream.Write("<!DOCTYPE html>\n"u8);
        using (var writer = XmlWriter.Create(stream, Settings))
            page.Save(writer);
        stream.WriteByte((byte)'\n');
        return stream.ToArray();
    }
}
