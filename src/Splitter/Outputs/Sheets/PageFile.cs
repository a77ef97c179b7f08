namespace Splitter.Outputs.Sheets;

/// <summary>Files of this folder that a page carries inside itself.</summary>
internal static class PageFile
{
    internal static string Read(string name)
    {
        using var stream =
            typeof(PageFile).Assembly.GetManifestResourceStream(name)
            ?? throw new InvalidOperationException($"{name} is not in this build.");
        using var reader = new StreamReader(stream);
        return reader.ReadToEnd().ReplaceLineEndings("\n");
    }
}
