using System.Collections.Immutable;
using System.Text;

namespace Splitter.Artwork.Svg.Css;

/// <summary>One property and its value as written.</summary>
internal sealed record Declaration(string Name, string Value, bool Important);

/// <summary>One selector with what it sets.</summary>
internal sealed record Rule(Selector Selector, int Specificity, int Order, ImmutableArray<Declaration> Declarations);

/// <summary>
/// Style sheets: rules in order. What is not read is reported by its text and left out, as CSS asks for what it cannot
/// parse. Nothing is ever imported.
/// </summary>
internal sealed class CssReader(Action<string> notRead)
{
    internal List<Rule> Rules { get; } = [];

    internal void Read(string css)
    {
        var text = WithoutComments(css);
        var at = 0;
        while (at < text.Length)
        {
            var start = at;
            var stop = Find(text, at, text.TrimStartAt(at) == '@' ? "{;" : "{");
            var prelude = text[start..stop].Trim();
            if (stop >= text.Length)
            {
                if (prelude.Length > 0)
                    notRead(prelude);
                return;
            }
            if (text[stop] == ';')
            {
                AtRule(prelude);
                at = stop + 1;
                continue;
            }
            var end = Find(text, stop + 1, "}");
            var block = text[(stop + 1)..Math.Min(end, text.Length)];
            at = end + 1;
            if (prelude.StartsWith('@'))
                AtRule(prelude);
            else
                AddRules(prelude, block);
        }
    }

    /// <summary>The declarations of a block, or of a <c>style</c> attribute.</summary>
    internal static ImmutableArray<Declaration> ReadDeclarations(string text)
    {
        var declarations = ImmutableArray.CreateBuilder<Declaration>();
        var clean = WithoutComments(text);
        for (var at = 0; at < clean.Length; )
        {
            var end = Find(clean, at, ";");
            var one = clean[at..end];
            at = end + 1;
            var colon = one.IndexOf(':', StringComparison.Ordinal);
            if (colon < 0)
                continue;
            var value = one[(colon + 1)..].Trim();
            var mark = value.LastIndexOf('!');
            var important =
                mark >= 0 && value[(mark + 1)..].Trim().Equals("important", StringComparison.OrdinalIgnoreCase);
            declarations.Add(
                new(one[..colon].Trim().ToLowerInvariant(), important ? value[..mark].TrimEnd() : value, important)
            );
        }
        return declarations.ToImmutable();
    }

    private void AtRule(string prelude)
    {
        // Neither draws anything by itself: text, which fonts serve, is reported where it stands.
        var silent =
            prelude.StartsWith("@font-face", StringComparison.Ordinal)
            || prelude.StartsWith("@charset", StringComparison.Ordinal);
        if (!silent)
            notRead(prelude);
    }

    private void AddRules(string prelude, string block)
    {
        var declarations = ReadDeclarations(block);
        foreach (var text in Split(prelude))
        {
            if (SelectorReader.Read(text) is { } selector)
                Rules.Add(new(selector, selector.Specificity, Rules.Count, declarations));
            else
                notRead(text.Trim());
        }
    }

    private static IEnumerable<string> Split(string prelude)
    {
        for (var at = 0; at <= prelude.Length; )
        {
            var end = Find(prelude, at, ",");
            yield return prelude[at..end];
            at = end + 1;
        }
    }

    /// <summary>
    /// The first of some characters outside strings and brackets that open after the start; else the end.
    /// </summary>
    private static int Find(string text, int from, string wanted)
    {
        var depth = 0;
        for (var at = from; at < text.Length; at++)
        {
            var c = text[at];
            if (depth == 0 && wanted.Contains(c, StringComparison.Ordinal))
                return at;
            if (c is '"' or '\'')
            {
                var close = text.IndexOf(c, at + 1);
                if (close < 0)
                    return text.Length;
                at = close;
            }
            else if (c is '(' or '[' or '{')
                depth++;
            else if (c is ')' or ']' or '}' && depth > 0)
                depth--;
        }
        return text.Length;
    }

    private static string WithoutComments(string css)
    {
        var text = new StringBuilder(css.Length);
        for (var at = 0; at < css.Length; at++)
        {
            if (string.CompareOrdinal(css, at, "/*", 0, 2) == 0)
            {
                var end = css.IndexOf("*/", at + 2, StringComparison.Ordinal);
                text.Append(' ');
                if (end < 0)
                    break;
                at = end + 1;
            }
            else
                text.Append(css[at]);
        }
        return text.Replace("<!--", " ").Replace("-->", " ").ToString();
    }
}

file static class TextExtensions
{
    /// <summary>The first character that is no space, NUL when there is none.</summary>
    internal static char TrimStartAt(this string text, int at)
    {
        while (at < text.Length && char.IsWhiteSpace(text[at]))
            at++;
        return at < text.Length ? text[at] : '\0';
    }
}
