using System.Text;
using Splitter.Artwork;
using Splitter.Artwork.Svg;

namespace Splitter.Tests.Artwork.Svg;

/// <summary>Drawings with mistakes and with what is not sewn: every message they get, and what is drawn all the same.</summary>
public class SvgCaseTests
{
    public static TheoryData<string> Names => [.. Golden.Cases("Artwork", "Svg", "Cases")];

    [Theory]
    [MemberData(nameof(Names))]
    public void A_drawing_gets_these_messages(string name)
    {
        var folder = Golden.Source("Artwork", "Svg", "Cases", name);
        var result = SvgReader.Read(
            new("drawing.svg", File.ReadAllBytes(Path.Combine(folder, "drawing.svg"))),
            width: null
        );

        var text = new StringBuilder();
        foreach (var diagnostic in result.Diagnostics)
            text.Append(diagnostic).Append('\n');
        if (result.Succeeded)
            foreach (var element in result.Value.Elements)
                text.Append(Describe(element)).Append('\n');
        Golden.Check(Path.Combine(folder, "expected.txt"), text.ToString());
    }

    private static string Describe(DrawnElement element) =>
        FormattableString.Invariant(
            element is DrawnLine line
                ? (FormattableString)
                    $"line {element.Id ?? "-"} {element.Color} {line.Width / 1000.0} mm wide, {line.Paths.Sum(p => p.Length) / 1000:F1} mm long"
                : $"area {element.Id ?? "-"} {element.Color} {((DrawnArea)element).Ground.Area / 1e6:F1} mm2"
        );
}
