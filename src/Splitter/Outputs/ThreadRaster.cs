using Splitter.Geometry;
using Splitter.Outputs.Pictures;
using Splitter.Outputs.Pictures.Strands;

namespace Splitter.Outputs;

/// <summary>How finely pictures of thread are drawn.</summary>
internal static class ThreadRaster
{
    /// <summary>
    /// Pixels of a millimetre in pictures of thread at most, of the finished piece and of a part; and along the longer
    /// side of such a picture, which is enough for print on A4 or Letter.
    /// </summary>
    private const int FinishedPixels = 10,
        PartPixels = 6,
        MostPixels = 3200;

    /// <summary>The same on the work sheet's cover, where half a sheet's width is enough.</summary>
    private const int SmallPixels = 1100;

    internal static Raster OfFinished(Picture picture) => Drawn(picture, FinishedPixels, painters: null);

    /// <param name="painters">Those of all parts.</param>
    internal static Raster OfPart(Picture picture, StrandPainters painters) => Drawn(picture, PartPixels, painters);

    internal static Raster Small(Raster finished) =>
        finished.Reduced((Math.Max(finished.Width, finished.Height) + SmallPixels - 1) / SmallPixels);

    /// <param name="finest">Pixels of a millimetre at most.</param>
    private static Raster Drawn(Picture picture, int finest, StrandPainters? painters)
    {
        var room = MostPixels * Units.Millimetre / Math.Max(picture.Width, picture.Height);
        return Raster.InTrueScale(picture, Math.Clamp(room, 1, finest), painters);
    }
}
