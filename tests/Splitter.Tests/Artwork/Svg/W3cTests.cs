using System.Xml;
using System.Xml.Linq;

namespace Splitter.Tests.Artwork.Svg;

/// <summary>
/// W3C's SVG 1.1 test drawings (BSD-3-Clause, Debian package librsvg2-tests), read by us and drawn anew as plain polygons,
/// against rsvg-convert's picture of the original. Text is taken out of both, since it is not sewn.
/// </summary>
public class W3cTests
{
    private const string Folder = "/usr/libexec/installed-tests/RSVG/fixtures/reftests/svg1.1";

    /// <summary>Pixels across; the drawings are 480 units wide.</summary>
    private const int Width = 720;

    /// <summary>
    /// Share of the picture that may differ: 130 pixels of 720 x 540, for edges that the renderer itself rounds.
    /// </summary>
    private const double MostDiffering = 0.00025;

    /// <summary>
    /// Share of the picture by which the painted areas may differ: a ring of a fifth of a pixel along a path that goes
    /// round the picture once.
    /// </summary>
    private const double MostArea = 0.0005;

    public static TheoryData<string> Covered => [.. W3cFiles.Covered];

    [SkippableTheory]
    [MemberData(nameof(Covered))]
    public void A_drawing_looks_as_the_renderer_shows_it(string name)
    {
        SkipUnlessInstalled();
        var svg = WithoutText(Path.Combine(Folder, name + ".svg"));
        var result = SheetPicture.Read(svg);
        Assert.True(result.Succeeded, string.Join('\n', result.Diagnostics));
        var height = (int)Math.Round((double)Width * result.Value.Height / result.Value.Width);
        using var ours = SheetPicture.Render(SheetPicture.Draw(result.Value), Width, height);
        using var theirs = SheetPicture.Render(svg, Width, height);

        var difference = PictureDifference.Between(ours, theirs);

        Assert.InRange(difference.Differing, 0, MostDiffering);
        Assert.InRange(difference.PaintedByFirst - difference.PaintedBySecond, -MostArea, MostArea);
    }

    [SkippableFact]
    public void Every_drawing_is_covered_or_left_out_for_a_reason()
    {
        SkipUnlessInstalled();
        var there = Directory.EnumerateFiles(Folder, "*.svg").Select(f => Path.GetFileNameWithoutExtension(f)!);
        Assert.Empty(W3cFiles.Covered.Intersect(W3cFiles.LeftOut.Keys));
        Assert.Equal(
            there.Order(StringComparer.Ordinal),
            W3cFiles.Covered.Concat(W3cFiles.LeftOut.Keys).Order(StringComparer.Ordinal)
        );
    }

    /// <summary>What is left out is still read without harm: values, or errors with a place.</summary>
    [SkippableFact]
    public void What_is_left_out_is_read_with_a_reason()
    {
        SkipUnlessInstalled();
        foreach (var name in W3cFiles.LeftOut.Keys)
        {
            var bytes = File.ReadAllBytes(Path.Combine(Folder, name + ".svg"));
            var result = Splitter.Artwork.Svg.SvgReader.Read(new(name, bytes), null);
            Assert.True(result.Succeeded || result.Diagnostics.All(d => d.Place.Line > 0), name);
        }
    }

    private static void SkipUnlessInstalled()
    {
        Skip.IfNot(SheetPicture.RendererIsThere, "rsvg-convert is not installed (Debian: librsvg2-bin)");
        Skip.IfNot(Directory.Exists(Folder), "W3C's test drawings are not installed (Debian: librsvg2-tests)");
    }

    private static string WithoutText(string file)
    {
        using var reader = XmlReader.Create(file, new XmlReaderSettings { DtdProcessing = DtdProcessing.Ignore });
        var document = XDocument.Load(reader, LoadOptions.PreserveWhitespace);
        document.Descendants().Where(e => e.Name.LocalName is "text" or "image").ToList().ForEach(e => e.Remove());
        return document.ToString(SaveOptions.DisableFormatting);
    }
}
