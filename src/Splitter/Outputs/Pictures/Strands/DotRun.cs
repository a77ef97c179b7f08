namespace Splitter.Outputs.Pictures.Strands;

/// <summary>Dots beside each other on a row.</summary>
internal readonly record struct DotRun(int Row, int First, int Count);
