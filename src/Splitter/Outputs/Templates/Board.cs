using System.Collections.Immutable;
using Splitter.Geometry;
using Splitter.Outputs.Pdf;

namespace Splitter.Outputs.Templates;

/// <summary>
/// What is shown in true scale on one sheet, or on several that are put together. Its own coordinates.
/// </summary>
/// <param name="Title">What it is, as a sheet's head says it.</param>
/// <param name="Ground">All of it.</param>
/// <param name="HasWork">Whether there is anything on some ground that a person wants on paper.</param>
/// <param name="Hides">
/// What a mark on some ground would hide of signs and names, as <see cref="Pictures.LabelRoom"/> counts.
/// </param>
internal sealed record Board(
    string Title,
    Box Ground,
    ImmutableArray<BoardLayer> Layers,
    Func<Box, bool> HasWork,
    Func<Box, double> Hides
);

/// <summary>A layer on a board.</summary>
/// <param name="Turn">The layer is seen as from a hoop that is turned so on it.</param>
/// <param name="Shift">From the turned layer to the board.</param>
/// <param name="Shown">Of the board: nothing of the layer is shown beside it.</param>
internal sealed record BoardLayer(PdfLayer Layer, Turn Turn, Point Shift, Box Shown);
