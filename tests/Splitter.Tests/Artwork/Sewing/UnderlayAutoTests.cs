using System.Globalization;
using System.Text;
using Splitter.Recipes;

namespace Splitter.Tests.Artwork.Sewing;

/// <summary><c>underlay: auto</c>, and none asked for: chosen by width, as the reference of recipes says.</summary>
public sealed class UnderlayAutoTests
{
    /// <summary>An edge run below a fill, and cross rows from 10 mm width on.</summary>
    [Theory]
    [InlineData(6.5, new[] { UnderlayKind.Edge })]
    [InlineData(9.9, new[] { UnderlayKind.Edge })]
    [InlineData(10.1, new[] { UnderlayKind.Edge, UnderlayKind.Cross })]
    [InlineData(60, new[] { UnderlayKind.Edge, UnderlayKind.Cross })]
    internal void UnderlayAutoOfAFill(double width, UnderlayKind[] expected) =>
        Check(
            expected,
            "fill",
            Text($"wkt: \"POLYGON ((5 5, {5 + width} 5, {5 + width} 95, 5 95, 5 5))\", fill: \"#14304f\"")
        );

    /// <summary>
    /// Below a column nothing up to 1 mm, then a run along its middle, runs along its edges from 2.5 mm on, and an open
    /// zigzag as well from 5 mm.
    /// </summary>
    [Theory]
    [InlineData(0.9, new UnderlayKind[0])]
    [InlineData(1.1, new[] { UnderlayKind.Centre })]
    [InlineData(2.4, new[] { UnderlayKind.Centre })]
    [InlineData(2.6, new[] { UnderlayKind.Edge })]
    [InlineData(4.9, new[] { UnderlayKind.Edge })]
    [InlineData(5.1, new[] { UnderlayKind.Edge, UnderlayKind.Cross })]
    internal void UnderlayAutoOfAColumn(double width, UnderlayKind[] expected) =>
        Check(
            expected,
            "satin",
            Text($"wkt: \"LINESTRING (10 10, 90 10)\", stroke: \"#14304f\", stroke-width: {width} mm")
        );

    private static void Check(UnderlayKind[] expected, string kind, string shape)
    {
        foreach (var asked in (ReadOnlySpan<string>)["", ", underlay: auto"])
        {
            var recipe = $$"""
                splitter: 1
                artwork:
                  shapes: [{ {{shape}}, id: one }]
                  sew: [{ match: { id: one }, as: {{kind}}{{asked}} }]
                hoops: [{ name: a, field: 130 x 180 mm }]
                output: { folder: parts, files: [tape] }
                """;
            var planned = Pipeline.Plan(new("a.yaml", Encoding.UTF8.GetBytes(recipe), _ => default));
            Assert.True(planned.Succeeded, string.Join('\n', planned.Diagnostics));
            Assert.Equal(expected, Assert.Single(planned.Value.Job.Drawing.Shapes).Style.Underlay);
        }
    }

    private static string Text(FormattableString text) => text.ToString(CultureInfo.InvariantCulture);
}
