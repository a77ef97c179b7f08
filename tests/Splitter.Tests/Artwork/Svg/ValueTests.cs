using Splitter.Artwork;
using Splitter.Artwork.Svg;

namespace Splitter.Tests.Artwork.Svg;

/// <summary>Transforms, lengths and colours against published values.</summary>
public class ValueTests
{
    /// <summary>SVG 1.1, 7.5.</summary>
    [Fact]
    public void Nested_transforms_make_this_matrix()
    {
        var matrix = TransformReader.Read("translate(50,90) rotate(-45) translate(130,160)")!.Value;
        Assert.Equal(
            [0.707107, -0.707107, 0.707107, 0.707107, 255.060967, 111.213203],
            new[] { matrix.A, matrix.B, matrix.C, matrix.D, matrix.E, matrix.F }.Select(v => Math.Round(v, 6))
        );
    }

    [Theory]
    [InlineData("translate(1 2),scale(3)", 13, 14, 40, 44)]
    [InlineData("matrix(1 2 3 4 5 6)", 4, 4, 21, 30)]
    [InlineData("rotate(90)", 3, 5, -5, 3)]
    [InlineData("rotate(90 1 1)", 1, 1, 1, 1)]
    [InlineData("skewX(45)", 3, 4, 7, 4)]
    [InlineData("skewY(-45)", 3, 4, 3, 1)]
    [InlineData("translateX(10px) rotate(0.25turn)", 3, 4, 6, 3)]
    [InlineData("none", 3, 4, 3, 4)]
    public void A_transform_moves_a_point(string text, double x, double y, double toX, double toY)
    {
        var moved = TransformReader.Read(text)!.Value.Apply(new(x, y));
        Assert.Equal((toX, toY), (Math.Round(moved.X, 9), Math.Round(moved.Y, 9)));
    }

    [Theory]
    [InlineData("rotate(1 2)")]
    [InlineData("scale()")]
    [InlineData("scale(1")]
    [InlineData("wobble(3)")]
    [InlineData("matrix(1 2 3 4 5)")]
    [InlineData("scale(1e300) scale(1e300)")]
    public void Some_texts_are_no_transforms(string text) => Assert.Null(TransformReader.Read(text));

    /// <summary>CSS Values: 1in = 2.54cm = 96px = 72pt = 6pc.</summary>
    [Theory]
    [InlineData("96", 96)]
    [InlineData("1in", 96)]
    [InlineData("2.54cm", 96)]
    [InlineData("25.4mm", 96)]
    [InlineData("101.6Q", 96)]
    [InlineData("72pt", 96)]
    [InlineData("6pc", 96)]
    [InlineData("6em", 96)]
    [InlineData("12ex", 96)]
    [InlineData(" 48% ", 96)]
    [InlineData("1e2px", 100)]
    [InlineData("1em", 16)]
    public void A_length_is_this_many_pixels(string text, double pixels) =>
        Assert.Equal(pixels, Lengths.Read(text, 200)!.Value, 9);

    [Theory]
    [InlineData("")]
    [InlineData("mm")]
    [InlineData("1 mm")]
    [InlineData("1,5mm")]
    [InlineData("NaN")]
    [InlineData("Infinity")]
    [InlineData("3furlongs")]
    public void Some_texts_are_no_lengths(string text) => Assert.Null(Lengths.Read(text, 100));

    /// <summary>Values of CSS Color level 3's own tables and examples.</summary>
    [Theory]
    [InlineData("red", "#ff0000", 1)]
    [InlineData("Green", "#008000", 1)]
    [InlineData("lightgoldenrodyellow", "#fafad2", 1)]
    [InlineData("slategrey", "#708090", 1)]
    [InlineData("rebeccapurple", "#663399", 1)]
    [InlineData("#FB0", "#ffbb00", 1)]
    [InlineData("#00ff0080", "#00ff00", 128 / 255.0)]
    [InlineData("rgb(255, 0, 51)", "#ff0033", 1)]
    [InlineData("rgb(100%,0%,20%)", "#ff0033", 1)]
    [InlineData("rgb(300,-10,0)", "#ff0000", 1)]
    [InlineData("rgb(255 0 51 / 50%)", "#ff0033", 0.5)]
    [InlineData("rgba(0,0,255,0)", "#0000ff", 0)]
    [InlineData("hsl(120, 100%, 25%)", "#008000", 1)]
    [InlineData("hsl(120, 75%, 75%)", "#8fef8f", 1)]
    [InlineData("hsla(-240deg, 100%, 50%, 0.3)", "#00ff00", 0.3)]
    [InlineData("transparent", "#000000", 0)]
    [InlineData("#CD853F icc-color(acmecmyk, 0.11, 0.48, 0.83, 0.00)", "#cd853f", 1)]
    public void A_colour_is_this(string text, string hex, double alpha) =>
        Assert.Equal(new Colour(hex, alpha), Colours.Read(text));

    [Theory]
    [InlineData("")]
    [InlineData("#ff")]
    [InlineData("#gggggg")]
    [InlineData("rgb(1,2)")]
    [InlineData("hsl(1,2,3)")]
    [InlineData("ActiveBorder")]
    [InlineData("blurple")]
    public void Some_texts_are_no_colours(string text) => Assert.Null(Colours.Read(text));

    /// <summary>CSS Values: a pixel is 1/96 in; without a viewBox, user units are pixels.</summary>
    [Theory]
    [InlineData("width='96' height='48'", 25_400, 12_700)]
    [InlineData("width='10mm' height='2cm'", 10_000, 20_000)]
    [InlineData("viewBox='0 0 96 192'", 25_400, 50_800)]
    [InlineData("width='100%' height='100%' viewBox='0 0 96 192'", 25_400, 50_800)]
    [InlineData("width='1in' viewBox='0 0 10 20'", 25_400, 50_800)]
    [InlineData("height='1in' viewBox='0 0 10 20'", 12_700, 25_400)]
    public void A_drawing_has_the_size_that_it_states(string attributes, int width, int height)
    {
        var sheet = SheetPicture
            .Read($"<svg xmlns='http://www.w3.org/2000/svg' {attributes}><path d='M0 0h9v9h-9z'/></svg>")
            .Value;
        Assert.Equal((width, height), (sheet.Width, sheet.Height));
    }

    [Fact]
    public void A_finished_width_scales_everything()
    {
        const string Svg =
            "<svg xmlns='http://www.w3.org/2000/svg' viewBox='0 0 100 50'><rect x='10' y='10' width='20' height='30' stroke='red' stroke-width='2'/></svg>";
        var sheet = SheetPicture.Read(Svg, 200_000).Value;
        Assert.Equal((200_000, 100_000), (sheet.Width, sheet.Height));
        Assert.Equal(40_000.0 * 60_000, Assert.IsType<DrawnArea>(sheet.Elements[0]).Ground.Area);
        Assert.Equal(4000, Assert.IsType<DrawnLine>(sheet.Elements[1]).Width);
    }
}
