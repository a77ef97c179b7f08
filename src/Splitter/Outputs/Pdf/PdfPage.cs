using System.Collections.Immutable;
using Splitter.Geometry;
using Splitter.Outputs.Pictures;

namespace Splitter.Outputs.Pdf;

/// <summary>A page: windows on layers, bottom first, and what is painted over them.</summary>
internal sealed record PdfPage(Picture Picture, ImmutableArray<PdfWindow> Windows);

/// <summary>
/// What several pages show, each a piece of it: written once for the whole document, so that all of them show the same.
/// </summary>
/// <param name="Bounds">Of all that is painted.</param>
internal sealed record PdfLayer(Box Bounds, ImmutableArray<Item> Items);

/// <summary>A layer as a page shows it.</summary>
/// <param name="Turn">The layer is seen as from a hoop that is turned so on it.</param>
/// <param name="Shift">From the turned layer to the page.</param>
/// <param name="Shown">Of the page: nothing of the layer is painted beside it.</param>
internal sealed record PdfWindow(PdfLayer Layer, Turn Turn, Point Shift, Box Shown);
