namespace Splitter.Checking;

/// <summary>How the check reaches files on disk: the host says where they are.</summary>
/// <param name="path">
/// As <see cref="Outputs.OutputFile.Path"/>: relative to the output folder, with forward slashes.
/// </param>
/// <returns>Null when there is no such file.</returns>
internal delegate byte[]? ReadOutput(string path);
