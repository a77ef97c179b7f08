using Splitter.Geometry;
using Splitter.Outputs.Pictures;
using Splitter.Outputs.Pictures.Strands;

namespace Splitter.Outputs;

/// <summary>How finely pictures of thread are drawn.</summary>
internal static class ThreadRaster
{
    /// <summary>Pixels of a millimetre in pictures of thread at most, of the finished piece and of a part.</summary>
    private const int FinishedPixels = 10,
        PartPixels = 6;

    /// <summary>
    /// Pixels along the longer side: of the finished piece as near as whole pixels of a millimetre come to 200 of an
    /// inch on A4, of a part at most.
    /// </summary>
    private const int FinishedSide = 2400,
        PartSide = 3200;

    /// <summary>The same on the work sheet's cover, where half a sheet's width is enough.</summary>
    private const int SmallPixels = 1100;

    internal static Raster OfFinished(Picture picture) =>
        Drawn(picture, Math.Min(FinishedPixels, (int)Math.Round(OfMillimetre(picture, FinishedSide))), painters: null);

    /// <param name="painters">Those of all parts.</param>
    internal static Raster OfPart(Picture picture, StrandPainters painters) =>
        Drawn(picture, Math.Min(PartPixels, (int)OfMillimetre(picture, PartSide)), painters);

    internal static Raster Small(Raster finished) =>
        finished.Reduced((Math.Max(finished.Width, finished.Height) + SmallPixels - 1) / SmallPixels);

    private static double OfMillimetre(Picture picture, int side) =>
        (double)side * Units.Millimetre / Math.Max(picture.Width, picture.Height);

    private static Raster Drawn(Picture picture, int pixelsOfMillimetre, StrandPainters? painters) =>
        Raster.InTrueScale(picture, Math.Max(1, pixelsOfMillimetre), painters);
}
