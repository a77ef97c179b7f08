using System.Text;
using Splitter.Artwork;
using Splitter.Geometry;
using Splitter.Recipes;

namespace Splitter.Tests.Artwork;

/// <summary>Recipes with their artwork, what is sewn of it and what is said about it, side by side.</summary>
public sealed class DrawingCaseTests
{
    public static TheoryData<string> Cases => [.. Golden.Cases("Artwork", "Cases")];

    [Theory]
    [MemberData(nameof(Cases))]
    public void Artwork_comes_to_this(string name)
    {
        var folder = Golden.Source("Artwork", "Cases", name);
        var drawing =
            from recipe in RecipeReader.Read("recipe.yaml", File.ReadAllBytes(Path.Combine(folder, "recipe.yaml")))
            from sources in SourceReader.Read(recipe, path => Fetch(Path.Combine(folder, path)))
            from read in DrawingReader.Read(recipe, sources)
            select read;
        var text = new StringBuilder();
        foreach (var diagnostic in drawing.Diagnostics)
            text.Append(diagnostic).Append('\n');
        if (drawing.TryGet(out var sewn))
            Describe(sewn, text);
        Golden.Check(Path.Combine(folder, "expected.txt"), text.ToString());
    }

    private static SourceRead Fetch(string file) =>
        File.Exists(file) ? new(File.ReadAllBytes(file), null) : new(default, "does not exist");

    private static void Describe(Drawing drawing, StringBuilder text)
    {
        text.Append($"sheet {Mm(drawing.Width)} x {Mm(drawing.Height)} mm\n");
        foreach (var shape in drawing.Shapes)
        {
            var (box, style) = (shape.Footprint.Bounds, shape.Style);
            var kind = shape switch
            {
                SatinShape satin => $"satin of {satin.Columns.Length}",
                RunShape run => $"run of {run.Lines.Length}",
                _ when style.Guide is not null => "fill along a guide",
                _ => FormattableString.Invariant($"fill at {style.Angle}"),
            };
            var area = FormattableString.Invariant($"{shape.Footprint.Area / 1e6:0.0}");
            text.Append(
                $"{shape.Id}: {kind}, {drawing.Threads[shape.Thread].Name}, {area} mm2, x {Mm(box.Left)} to {Mm(box.Right)}, y {Mm(box.Top)} to {Mm(box.Bottom)}{(shape.KeepWhole ? ", whole" : "")}, underlay [{string.Join(' ', style.Underlay)}]\n"
            );
        }
    }

    private static string Mm(int micrometres) =>
        FormattableString.Invariant($"{Units.ToMillimetres(micrometres):0.##}");
}
