namespace Splitter.Geometry;

/// <summary>Which loops of a self-crossing outline are inside, as SVG's <c>fill-rule</c> defines them.</summary>
internal enum FillRule
{
    NonZero,
    EvenOdd,
}
