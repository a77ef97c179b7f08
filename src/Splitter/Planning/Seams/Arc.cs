using System.Collections.Immutable;

namespace Splitter.Planning.Seams;

/// <summary>A line between the cells of two fields, from one place where more meet to the next, or closed.</summary>
/// <param name="One">A field.</param>
/// <param name="Other">Another one, or -1: the edge of all ground.</param>
/// <param name="Nodes">Nodes of the grid: column and row of lines.</param>
internal sealed record Arc(int One, int Other, ImmutableArray<(int Column, int Row)> Nodes);
