namespace Splitter.Outputs;

/// <summary>One file of a set, before anything is written.</summary>
/// <param name="Path">Relative to the recipe's output folder, with forward slashes.</param>
/// <param name="Bytes">All of it.</param>
public sealed record OutputFile(string Path, ReadOnlyMemory<byte> Bytes);
