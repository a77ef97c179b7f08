using System.Collections;
using System.Globalization;
using System.Reflection;
using System.Runtime.CompilerServices;
using System.Text;
using Splitter.Diagnostics;
using Splitter.Recipes;

namespace Splitter.Tests.Recipes;

/// <summary>A recipe as indented lines, every property of every record, so that no value can go unnoticed.</summary>
internal static class RecipeDump
{
    internal static string Of(Recipe recipe)
    {
        var text = new StringBuilder();
        Write(text, "recipe", recipe, 0);
        return text.ToString();
    }

    private static void Write(StringBuilder text, string name, object? value, int depth)
    {
        text.Append(' ', 2 * depth).Append(name).Append(':');
        switch (value)
        {
            case null:
                text.Append(" -\n");
                break;
            case IDictionary places:
                text.Append('\n');
                foreach (var path in places.Keys.Cast<string>().Order(StringComparer.Ordinal))
                    Write(text, path, places[path], depth + 1);
                break;
            case SourceFile source:
                text.Append(CultureInfo.InvariantCulture, $" {source.Path}\n");
                break;
            case string or Place or Enum or bool or IFormattable:
                text.Append(' ').Append(Convert.ToString(value, CultureInfo.InvariantCulture)).Append('\n');
                break;
            case ITuple tuple:
                text.Append(CultureInfo.InvariantCulture, $" {tuple}\n");
                break;
            case IEnumerable items:
                text.Append('\n');
                foreach (var item in items)
                    Write(text, "-", item, depth + 1);
                break;
            default:
                text.Append(' ').Append(value.GetType().Name).Append('\n');
                foreach (
                    var property in value
                        .GetType()
                        .GetProperties(BindingFlags.Public | BindingFlags.Instance)
                        .OrderBy(p => p.MetadataToken)
                )
                    Write(text, property.Name, property.GetValue(value), depth + 1);
                break;
        }
    }
}
