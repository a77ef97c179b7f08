namespace Splitter.Outputs.Pictures.Strands;

/// <summary>One of the dots that a pixel takes the mean of.</summary>
/// <param name="Thread">Which last touched it: it shades neither itself nor anything twice. 0 for none.</param>
internal readonly record struct Dot(Colour Colour, int Thread);
