using System.Xml;
using System.Xml.Linq;
using Splitter.Diagnostics;

namespace Splitter.Artwork.Svg;

/// <summary>Bytes to elements. Nothing outside the file is opened, and no entity is expanded.</summary>
internal static class SvgLoader
{
    /// <summary>Drawings of a hundred thousand stitches are a few MB; this bounds memory and time.</summary>
    private const int MostBytes = 64 * 1024 * 1024;

    /// <summary>Programs nest a dozen groups; each level costs stack where the drawing is walked.</summary>
    internal const int MostDepth = 256;

    internal static Result<SvgDocument> Load(SourceFile source)
    {
        if (source.Bytes.Length > MostBytes)
            return Result.Fail<SvgDocument>(ArtworkProblems.FileTooLarge(source.Path, source.Bytes.Length, MostBytes));
        if (source.Bytes.Span is [0x1f, 0x8b, ..])
            return Result.Fail<SvgDocument>(ArtworkProblems.Compressed(source.Path));
        try
        {
            if (TooDeep(source) is { } deep)
                return Result.Fail<SvgDocument>(deep);
            using var reader = Open(source);
            var document = new SvgDocument(
                source.Path,
                XDocument.Load(reader, LoadOptions.SetLineInfo | LoadOptions.PreserveWhitespace)
            );
            return document.Root.Name == XName.Get("svg", SvgDocument.Namespace)
                ? Result.From(document, [])
                : Result.Fail<SvgDocument>(
                    ArtworkProblems.NotSvg(document.PlaceOf(document.Root), document.Root.Name.LocalName)
                );
        }
        catch (XmlException e)
        {
            // The reader's own words end with the place, which the diagnostic has already.
            var end = e.Message.LastIndexOf(" Line ", StringComparison.Ordinal);
            var message = (end < 0 ? e.Message : e.Message[..end]).TrimEnd('.', ' ');
            var place = new Place(source.Path, Math.Max(0, e.LineNumber), Math.Max(0, e.LinePosition));
            return Result.Fail<SvgDocument>(ArtworkProblems.NotXml(place, message.ReplaceLineEndings(" ")));
        }
    }

    private static Diagnostic? TooDeep(SourceFile source)
    {
        using var reader = Open(source);
        while (reader.Read())
            if (reader.NodeType == XmlNodeType.Element && reader.Depth >= MostDepth)
            {
                var at = (IXmlLineInfo)reader;
                return ArtworkProblems.TooDeep(new(source.Path, at.LineNumber, at.LinePosition - 1), MostDepth);
            }
        return null;
    }

    /// <summary>
    /// A document type is passed over, since many programs write one; an entity that it declares is then an error.
    /// </summary>
    private static XmlReader Open(SourceFile source) =>
        XmlReader.Create(
            new MemoryStream(source.Bytes.ToArray(), writable: false),
            new XmlReaderSettings
            {
                DtdProcessing = DtdProcessing.Ignore,
                XmlResolver = null,
                MaxCharactersFromEntities = 0,
            }
        );
}
