using System.Collections.Immutable;
using Splitter.Diagnostics;
using Splitter.Recipes.Yaml;

namespace Splitter.Recipes.Language;

/// <summary>What is gathered while one file is read: mistakes, and where everything stands.</summary>
internal sealed class Reading(string file)
{
    private const int MostProblems = 1000;

    /// <summary>The recipe's name as the person gave it.</summary>
    internal string File => file;

    /// <summary>In the order in which they were found.</summary>
    internal List<Diagnostic> Problems { get; } = [];

    /// <summary>More mistakes than anyone reads: what is left of the file need not be looked at.</summary>
    internal bool IsFull => Problems.Count >= MostProblems;

    /// <summary>Key path to place.</summary>
    internal ImmutableDictionary<string, Place>.Builder Places { get; } =
        ImmutableDictionary.CreateBuilder<string, Place>(StringComparer.Ordinal);
}

/// <summary>A value of the file on its way to a value of the recipe.</summary>
/// <param name="Node">As the file writes it.</param>
/// <param name="Path">Its key path.</param>
/// <param name="Key">The definition of the key that it belongs to.</param>
internal sealed record Given(Node Node, string Path, Key Key, Reading Reading)
{
    internal Place Place => Node.Place;

    /// <summary>The item of a list.</summary>
    internal Given Item(int index, Node item) => Inner(item, $"{Path}[{index}]", Key);

    /// <summary>The value of a key inside this one.</summary>
    internal Given Under(Key key, Node value) => Inner(value, Path.Length == 0 ? key.Name : $"{Path}.{key.Name}", key);

    internal void Report(Diagnostic problem) => Reading.Problems.Add(problem);

    internal Refused Refuse(Diagnostic problem)
    {
        Report(problem);
        return default;
    }

    /// <summary>
    /// Refuses a value of the wrong form: a list where text is due, or text that says something else.
    /// </summary>
    internal Refused RefuseForm(string expected) =>
        Node switch
        {
            RefusedNode => default,
            ScalarNode { IsMissing: true } => Refuse(RecipeValueProblems.NoValue(Place, Key, expected)),
            ScalarNode scalar => Refuse(RecipeValueProblems.WrongForm(Place, Key, expected, Quote.Quoted(scalar.Text))),
            SequenceNode => Refuse(RecipeValueProblems.WrongForm(Place, Key, expected, "a list")),
            _ => Refuse(RecipeValueProblems.WrongForm(Place, Key, expected, "keys with values")),
        };

    private Given Inner(Node node, string path, Key key)
    {
        Reading.Places[path] = node.Place;
        return new(node, path, key, Reading);
    }
}
