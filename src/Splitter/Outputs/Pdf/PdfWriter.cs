using System.Collections.Immutable;
using System.Globalization;
using System.Text;
using Splitter.Geometry;
using Splitter.Outputs.Pictures;

namespace Splitter.Outputs.Pdf;

/// <summary>
/// Pages to PDF 1.7 (ISO 32000-1) in true scale: paths in compressed streams, and nothing that a machine, a font or a
/// clock could change.
/// </summary>
internal static class PdfWriter
{
    /// <summary>A PDF's unit is 1/72 in, a content's unit here is 0.01 mm: 72 / 2540.</summary>
    private const string Scale = "0.028346456693";

    internal static byte[] Write(string title, ImmutableArray<PdfPage> pages)
    {
        var objects = new PdfObjects();
        var items = pages.SelectMany(p => p.Windows.SelectMany(w => w.Layer.Items).Concat(p.Picture.Items)).ToList();
        var fonts = PdfFont.Add(objects, items.OfType<PaintedText>());
        var looks = $"/Font<<{fonts}>>/ExtGState<<{Opacities(items)}>>";
        var layers = Layers(objects, pages, looks);
        var all = objects.Reserve();
        var kids = pages.Select(page => Page(objects, page, all, looks, layers)).ToList();
        objects.Set(
            all,
            $"<</Type/Pages/Count {pages.Length}/Kids[{string.Join(' ', kids.Select(k => $"{k} 0 R"))}]>>"
        );
        // Asks the print dialogue for no scaling (12.2).
        var catalog = objects.Add($"<</Type/Catalog/Pages {all} 0 R/ViewerPreferences<</PrintScaling/None>>>>");
        return objects.ToFile(catalog, objects.Add($"<</Title {Text(title)}/Creator(Splitter)>>"));
    }

    private static string Opacities(IEnumerable<Item> items) =>
        string.Concat(
            items
                .Select(Opacity)
                .Where(percent => percent < 100)
                .Distinct()
                .Order()
                .Select(percent => $"/{PdfContent.OpacityName(percent)}<</CA 0.{percent:00}/ca 0.{percent:00}>>")
        );

    private static int Opacity(Item item) =>
        item switch
        {
            PaintedArea area => area.Opacity,
            PaintedLines lines => lines.Opacity,
            PaintedText text => text.Opacity,
            _ => 100,
        };

    /// <summary>Each layer once, as a form (8.10), in the order in which pages use them.</summary>
    private static Dictionary<PdfLayer, int> Layers(PdfObjects objects, ImmutableArray<PdfPage> pages, string looks)
    {
        var numbers = new Dictionary<PdfLayer, int>(ReferenceEqualityComparer.Instance);
        foreach (var layer in pages.SelectMany(p => p.Windows).Select(w => w.Layer).Where(l => !numbers.ContainsKey(l)))
        {
            var box =
                $"{Hundredths(layer.Bounds.Left)} {Hundredths(layer.Bounds.Top)} "
                + $"{Hundredths(layer.Bounds.Right)} {Hundredths(layer.Bounds.Bottom)}";
            numbers[layer] = objects.Add(
                $"/Type/XObject/Subtype/Form/BBox[{box}]/Resources<<{looks}>>",
                new PdfContent().Add(layer.Items).ToArray()
            );
        }
        return numbers;
    }

    private static int Page(
        PdfObjects objects,
        PdfPage page,
        int parent,
        string looks,
        Dictionary<PdfLayer, int> layers
    )
    {
        var (width, height) = (Points(page.Picture.Width), Points(page.Picture.Height));
        var content = new PdfContent().Add($"{Scale} 0 0 -{Scale} 0 {height} cm\n");
        foreach (var (window, i) in page.Windows.Select((w, i) => (w, i)))
            content
                .Add($"q {Hundredths(window.Shown.Left)} {Hundredths(window.Shown.Top)} ")
                .Add($"{Hundredths(window.Shown.Width)} {Hundredths(window.Shown.Height)} re W n\n")
                .Add($"{Turned(window.Turn)} {Hundredths(window.Shift.X)} {Hundredths(window.Shift.Y)} cm ")
                .Add($"/L{i} Do Q\n");
        var stream = objects.Add("", content.Add(page.Picture.Items).ToArray());
        var shown = string.Concat(page.Windows.Select((w, i) => $"/L{i} {layers[w.Layer]} 0 R"));
        return objects.Add(
            $"<</Type/Page/Parent {parent} 0 R/MediaBox[0 0 {width} {height}]/Contents {stream} 0 "
                + $"R/Resources<<{looks}/XObject<<{shown}>>>>>>"
        );
    }

    /// <summary>
    /// From the drawing to a hoop on it, as <see cref="Planning.Field.ToField"/> has it, v upside down.
    /// </summary>
    private static string Turned(Turn turn) =>
        turn switch
        {
            Turn.None => "1 0 0 1",
            Turn.Quarter => "0 -1 1 0",
            Turn.Half => "-1 0 0 -1",
            _ => "0 1 -1 0",
        };

    private static string Points(int micrometres) =>
        (micrometres * 72m / Units.Inch).ToString("0.####", CultureInfo.InvariantCulture);

    private static string Hundredths(int micrometres) =>
        PdfContent.Hundredths(micrometres).ToString(CultureInfo.InvariantCulture);

    /// <summary>A text string (7.9.2.2): UTF-16 holds every title.</summary>
    private static string Text(string text) => $"<FEFF{Convert.ToHexString(Encoding.BigEndianUnicode.GetBytes(text))}>";
}
