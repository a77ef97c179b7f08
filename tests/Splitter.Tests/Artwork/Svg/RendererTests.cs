namespace Splitter.Tests.Artwork.Svg;

/// <summary>What W3C's drawings leave out, drawn by us and by an independent renderer (rsvg-convert).</summary>
public class RendererTests
{
    /// <summary>Pixels a side, for 100 units.</summary>
    private const int Side = 500;

    /// <summary>Share of the picture that may differ: 50 pixels, for edges that the renderer itself rounds.</summary>
    private const double MostDiffering = 2e-4;

    /// <summary>Share of the picture by which the painted areas may differ.</summary>
    private const double MostArea = 1e-3;

    [SkippableTheory]
    [InlineData(
        "a stroke stretched unevenly",
        "<g transform='scale(4 1) rotate(20)'><path d='M3 5L15 60L18 5' fill='none' stroke='red' stroke-width='3' stroke-dasharray='12 3'/></g>"
    )]
    [InlineData(
        "a sheared round stroke",
        "<path transform='translate(30) skewX(40)' d='M10 20C30 0 20 60 40 40' fill='none' stroke='#00f' stroke-width='9' stroke-linecap='round' stroke-linejoin='round'/>"
    )]
    [InlineData(
        "a mirrored square-capped stroke",
        "<path transform='translate(90 10) scale(-1 1)' d='M10 20L50 60H10' fill='none' stroke='#00f' stroke-width='9' stroke-linecap='square'/>"
    )]
    [InlineData(
        "round dots",
        "<path d='M10 10H90V80' fill='none' stroke='red' stroke-width='6' stroke-linecap='round' stroke-dasharray='0 15'/>"
    )]
    [InlineData(
        "square dots aslant",
        "<path d='M10 10L90 70' fill='none' stroke='red' stroke-width='6' stroke-linecap='square' stroke-dasharray='0 12'/>"
    )]
    [InlineData(
        "dashes with an offset, odd in number",
        "<rect x='10' y='10' width='70' height='50' fill='none' stroke='red' stroke-width='4' stroke-dasharray='5 3 9' stroke-dashoffset='-4'/>"
    )]
    [InlineData(
        "a dot of no length",
        "<path d='M20 20z M60 60L60 60' stroke='red' stroke-width='20' stroke-linecap='round'/>"
    )]
    [InlineData(
        "clipped in units of the box",
        "<clipPath id='c' clipPathUnits='objectBoundingBox'><circle cx='.5' cy='.5' r='.5'/></clipPath><rect x='10' y='20' width='70' height='30' clip-path='url(#c)'/>"
    )]
    [InlineData(
        "a clipped group in units of its box",
        "<clipPath id='c' clipPathUnits='objectBoundingBox'><path d='M0 0H1L.5 1z'/></clipPath><g clip-path='url(#c)' transform='translate(5 8) scale(.9)'><rect x='20' y='10' width='30' height='30'/><use href='#o' x='50' y='40'/></g><defs><circle id='o' r='20' fill='red'/></defs>"
    )]
    [InlineData(
        "a clip path moved and ruled",
        "<clipPath id='c' transform='translate(10 5)'><path clip-rule='evenodd' transform='scale(1.1)' d='M10 10h60v60h-60zM25 25h30v30h-30z'/></clipPath><rect width='100' height='100' fill='green' clip-path='url(#c)'/>"
    )]
    [InlineData(
        "a clipped stroke",
        "<clipPath id='c'><circle cx='50' cy='50' r='30'/></clipPath><path clip-path='url(#c)' d='M0 50H100' stroke='red' stroke-width='30'/>"
    )]
    [InlineData(
        "symbols fitted into their copies",
        "<symbol id='s' viewBox='0 0 10 20' preserveAspectRatio='xMinYMax meet'><circle cx='5' cy='10' r='4.5'/></symbol><use href='#s' x='5' y='5' width='40' height='40'/><g fill='red'><use href='#s' x='55' y='5' width='20' height='40' style='fill:blue'/></g>"
    )]
    [InlineData(
        "nested viewports",
        "<svg x='10' y='10' width='40' height='20' viewBox='0 0 10 10' preserveAspectRatio='xMaxYMid slice'><circle cx='5' cy='5' r='5'/></svg><svg x='10%' y='50%' width='50%' height='30%'><rect x='25%' width='50%' height='200%' fill='red'/></svg>"
    )]
    [InlineData(
        "paint through copies",
        "<defs><g id='g' fill='red'><path id='p' d='M0 0h20v20h-20z'/><path d='M25 0h20v20h-20z' fill='currentColor'/><path d='M50 0h20v20h-20z' fill='inherit' stroke='currentColor' stroke-width='4'/></g></defs><g color='blue'><use href='#g' x='10' y='10'/></g><use href='#p' x='10' y='50' fill='green'/>"
    )]
    [InlineData(
        "the cascade",
        "<style>path { fill: red } .a { fill: blue } g .a { fill: green } #i { fill: orange } .b { fill: teal !important } g > path.c { fill: navy } /* path { fill: none } */ [data-x='1'] { fill: lime }</style><path class='a' d='M0 0h10v10z'/><g><path class='a' d='M20 0h10v10z'/><path id='i' class='a' fill='pink' d='M40 0h10v10z'/><path class='b' style='fill: black' d='M60 0h10v10z'/><path class='c' d='M80 0h10v10z'/><g><path class='c' d='M0 20h10v10z'/></g></g><path fill='pink' data-x='1' d='M20 20h10v10z'/><path style='fill:#abc;stroke:red' d='M40 20h10v10z'/>"
    )]
    [InlineData(
        "hidden and shown",
        "<g visibility='hidden'><rect width='20' height='20'/><rect x='30' width='20' height='20' visibility='visible'/></g><g display='none'><rect x='60' width='20' height='20' display='inline'/></g><g opacity='0'><rect y='30' width='20' height='20'/></g><switch><rect systemLanguage='fr' y='60' width='20' height='20' fill='red'/><rect y='60' width='20' height='20' fill='green'/></switch><a><rect x='30' y='60' width='20' height='20'/></a>"
    )]
    [InlineData(
        "a star by both rules",
        "<path d='M50 5L77 88L6 37H94L23 88z' fill-rule='evenodd' transform='scale(.5)'/><path d='M50 5L77 88L6 37H94L23 88z' transform='translate(50 50) scale(.5)'/>"
    )]
    [InlineData(
        "round rectangles and units",
        "<rect x='2mm' y='16' width='10%' height='30' rx='20' ry='4'/><rect x='40' y='10' width='1cm' height='0.5in' rx='3'/><ellipse cx='50%' cy='70' rx='20pt' ry='1pc'/>"
    )]
    [InlineData(
        "mitres, bevels and rounds, closed and turning back",
        "<g fill='none' stroke-width='6' stroke='red'><path d='M10 10L40 15L10 20z'/><path d='M60 10L90 12L60 14' stroke-miterlimit='30'/><path d='M10 40L40 60L10 80L20 60z' stroke-linejoin='bevel'/><path d='M60 40h30h-20v30' stroke-linejoin='round'/></g>"
    )]
    public void A_drawing_looks_as_the_renderer_shows_it(string what, string body)
    {
        Skip.IfNot(SheetPicture.RendererIsThere, "rsvg-convert is not installed (Debian: librsvg2-bin)");
        var svg =
            $"<svg xmlns='http://www.w3.org/2000/svg' width='100' height='100' viewBox='0 0 100 100'>{body}</svg>";
        var result = SheetPicture.Read(svg, 100_000);
        Assert.Empty(result.Diagnostics);
        using var ours = SheetPicture.Render(SheetPicture.Draw(result.Value), Side, Side);
        using var theirs = SheetPicture.Render(svg, Side, Side);

        var difference = PictureDifference.Between(ours, theirs);

        Assert.True(difference.Differing <= MostDiffering, $"{what}: {difference}");
        Assert.True(
            Math.Abs(difference.PaintedByFirst - difference.PaintedBySecond) <= MostArea,
            $"{what}: {difference}"
        );
        Assert.True(difference.PaintedBySecond > 0.005, $"{what}: the renderer shows nothing");
    }

    /// <summary>
    /// What the renderer does not follow, worked out by hand, mm²: SVG 1.1, 14.3.3 (svg and symbol hide what overflows
    /// unless told otherwise) and 14.3.5 (a clip path that is clipped itself).
    /// </summary>
    [Theory]
    [InlineData(
        "<symbol id='s' viewBox='0 0 10 10'><path d='M-5 -5h30v30h-30z'/></symbol><use href='#s' x='5' y='5' width='20' height='20'/>",
        400
    )]
    [InlineData(
        "<symbol id='s' viewBox='0 0 10 10' overflow='visible'><path d='M-5 -5h30v30h-30z'/></symbol><use href='#s' x='15' y='15' width='20' height='20'/>",
        3600
    )]
    [InlineData(
        "<symbol id='s' viewBox='0 0 10 20'><path d='M-9 -9h99v99h-99z'/></symbol><use href='#s' width='20' height='20'/>",
        400
    )]
    [InlineData(
        "<svg width='30' height='20' viewBox='0 0 30 20' style='overflow:visible'><path d='M10 10h40v40h-40z'/></svg>",
        1600
    )]
    [InlineData(
        "<clipPath id='d'><path d='M0 0h30v90h-30z'/></clipPath><clipPath id='c' clip-path='url(#d)'><path d='M10 10h60v60h-60z'/></clipPath><path clip-path='url(#c)' d='M0 0h99v99h-99z'/>",
        1200
    )]
    [InlineData("<clipPath id='c'/><path clip-path='url(#c)' d='M0 0h10v10h-10z'/><path d='M0 0h10v10h-10z'/>", 100)]
    public void Overflow_and_clip_paths_leave_this_area(string body, double squareMillimetres)
    {
        var svg = $"<svg xmlns='http://www.w3.org/2000/svg' viewBox='0 0 100 100'>{body}</svg>";
        var result = SheetPicture.Read(svg, 100_000);
        Assert.Empty(result.Diagnostics);
        Assert.Equal(squareMillimetres * 1e6, result.Value.Elements.Sum(e => SheetPicture.GroundOf(e).Area), 1.0);
    }
}
