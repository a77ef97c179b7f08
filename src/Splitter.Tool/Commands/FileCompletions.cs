using System.CommandLine.Completions;

namespace Splitter.Tool.Commands;

/// <summary>Files and folders that a word on the command line may become, for shells that complete it.</summary>
internal static class FileCompletions
{
    /// <param name="endings">Of the files that are offered.</param>
    internal static Func<CompletionContext, IEnumerable<CompletionItem>> For(params string[] endings) =>
        context => Starting(context.WordToComplete, endings).Select(path => new CompletionItem(path));

    private static IEnumerable<string> Starting(string word, string[] endings)
    {
        var (folder, begun) = Split(word);
        try
        {
            return
            [
                .. new DirectoryInfo(folder.Length > 0 ? folder : ".")
                    .EnumerateFileSystemInfos()
                    .Where(entry => entry.Name.StartsWith(begun, StringComparison.Ordinal))
                    // What is hidden is offered to whoever begins with its dot.
                    .Where(entry => entry.Name[0] != '.' || begun.Length > 0)
                    .Where(entry => entry is DirectoryInfo || endings.Contains(entry.Extension))
                    .Select(entry => entry is DirectoryInfo ? $"{folder}{entry.Name}/" : folder + entry.Name)
                    .Order(StringComparer.Ordinal),
            ];
        }
        catch (Exception e) when (e is IOException or UnauthorizedAccessException)
        {
            // A shell asks while a person types: there is nothing to offer, and nothing to say.
            return [];
        }
    }

    private static (string Folder, string Begun) Split(string word)
    {
        var name = word.LastIndexOfAny(['/', '\\']) + 1;
        return (word[..name], word[name..]);
    }
}
