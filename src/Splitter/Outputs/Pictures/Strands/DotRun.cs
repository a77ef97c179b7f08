namespace Splitter.Outputs.Pictures.Strands;

/// <summary>Dots beside each other on a row; no picture is wider or higher than these numbers.</summary>
internal readonly record struct DotRun(short Row, short First, short Count);
