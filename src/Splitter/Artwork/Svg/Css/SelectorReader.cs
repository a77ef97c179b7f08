using System.Collections.Immutable;

namespace Splitter.Artwork.Svg.Css;

/// <summary>Selectors of Selectors level 3, without pseudo-classes and siblings.</summary>
internal static class SelectorReader
{
    /// <returns>Null when the text is no selector or one that is not read.</returns>
    internal static Selector? Read(string text)
    {
        var scanner = new Scanner(text);
        var chains = new List<List<Compound>> { new() };
        scanner.SkipSpace();
        while (true)
        {
            if (ReadCompound(scanner) is not { } compound)
                return null;
            chains[^1].Insert(0, compound);
            var before = scanner.Position;
            scanner.SkipSpace();
            if (scanner.AtEnd)
                break;
            if (scanner.TryTake('>'))
                scanner.SkipSpace();
            else if (scanner.Position > before)
                chains.Add([]);
            else
                return null;
        }
        chains.Reverse();
        return new([.. chains.Select(c => c.ToImmutableArray())]);
    }

    private static Compound? ReadCompound(Scanner scanner)
    {
        var start = scanner.Position;
        string? type = null;
        string? id = null;
        var classes = ImmutableArray.CreateBuilder<string>();
        var attributes = ImmutableArray.CreateBuilder<AttributeTest>();
        if (!scanner.TryTake('*') && scanner.Word() is { Length: > 0 } name)
            type = name;
        while (true)
        {
            if (scanner.TryTake('#'))
            {
                var word = scanner.Word();
                if (word.Length == 0 || (id is not null && id != word))
                    return null;
                id = word;
            }
            else if (scanner.TryTake('.'))
            {
                if (scanner.Word() is not { Length: > 0 } word)
                    return null;
                classes.Add(word);
            }
            else if (scanner.TryTake('['))
            {
                if (ReadAttribute(scanner) is not { } test)
                    return null;
                attributes.Add(test);
            }
            else
                break;
        }
        return scanner.Position == start ? null : new(type, id, classes.ToImmutable(), attributes.ToImmutable());
    }

    private static AttributeTest? ReadAttribute(Scanner scanner)
    {
        scanner.SkipSpace();
        var name = scanner.Word();
        scanner.SkipSpace();
        if (name.Length == 0)
            return null;
        if (scanner.TryTake(']'))
            return new(name, null, AsWord: false);
        var asWord = scanner.TryTake('~');
        if (!scanner.TryTake('='))
            return null;
        scanner.SkipSpace();
        var value = scanner.Next is '"' or '\'' ? Quoted(scanner) : scanner.Word();
        scanner.SkipSpace();
        return value is not null && scanner.TryTake(']') ? new(name, value, asWord) : null;
    }

    private static string? Quoted(Scanner scanner)
    {
        var quote = scanner.Next;
        var value = new System.Text.StringBuilder();
        for (scanner.Skip(); scanner.Next != quote; scanner.Skip())
        {
            if (scanner.AtEnd)
                return null;
            value.Append(scanner.Next);
        }
        scanner.Skip();
        return value.ToString();
    }
}
