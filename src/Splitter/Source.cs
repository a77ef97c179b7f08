namespace Splitter;

/// <summary>A file that a recipe names, as it was read.</summary>
/// <param name="Path">As the recipe names it, with forward slashes.</param>
/// <param name="Bytes">All of it.</param>
internal sealed record SourceFile(string Path, ReadOnlyMemory<byte> Bytes);

/// <summary>
/// How the library reaches files: the host says where they are. It throws nothing for a file that is missing,
/// unreadable or too large, but says so.
/// </summary>
/// <param name="path">Relative to the recipe's folder, with forward slashes.</param>
public delegate SourceRead ReadSource(string path);

/// <summary>
/// What came of reading a file: its bytes, or why there are none (a phrase such as "does not exist").
/// </summary>
public readonly record struct SourceRead(ReadOnlyMemory<byte> Bytes, string? Problem);
