using System.Collections.Immutable;
using Splitter.Geometry;
using Splitter.Outputs.Pictures.Strands;

namespace Splitter.Outputs.Pictures;

/// <summary>
/// A page and what is painted on it, bottom first. SVG and PNG are made from the same picture, so that they show the
/// same.
/// </summary>
/// <param name="Width">Micrometres, as are all lengths of a picture; true scale where it shows work.</param>
/// <param name="Title">What is shown, for those who do not see it.</param>
internal sealed record Picture(int Width, int Height, string Title, ImmutableArray<Item> Items);

/// <summary>One thing on a page.</summary>
internal abstract record Item(Colour Colour);

/// <summary>Closed outlines, filled by the non-zero rule.</summary>
/// <param name="Opacity">Percent.</param>
internal sealed record PaintedArea(ImmutableArray<ImmutableArray<Point>> Outlines, Colour Colour, int Opacity)
    : Item(Colour);

/// <summary>Lines of a width, round at bends and ends.</summary>
/// <param name="Opacity">Percent.</param>
internal sealed record PaintedLines(ImmutableArray<ImmutableArray<Point>> Lines, int Width, Colour Colour, int Opacity)
    : Item(Colour);

/// <summary>Text on one line, its letters drawn with a pen.</summary>
/// <param name="At">The left end of its baseline.</param>
/// <param name="Height">Of a capital.</param>
/// <param name="Pen">The pen's width.</param>
/// <param name="Opacity">Percent.</param>
internal sealed record PaintedText(string Text, Point At, int Height, int Pen, Colour Colour, int Opacity)
    : Item(Colour);

/// <summary>Thread as it lies, lit from the upper left.</summary>
/// <param name="Lines">Needle holes in sewing order, a line for all that is sewn between two moves.</param>
internal sealed record PaintedThread(ImmutableArray<ImmutableArray<Point>> Lines, Colour Colour) : Item(Colour)
{
    /// <summary>How the light falls on each of the lines.</summary>
    internal ImmutableArray<ImmutableArray<LitStretch>> Lit { get; } = [.. Lines.Select(LitStretch.Of)];
}

/// <summary>Bare cloth with a faint weave.</summary>
internal sealed record PaintedCloth(Box Box, Colour Colour) : Item(Colour);
