namespace Splitter.Recipes;

/// <summary>A thread of the recipe.</summary>
/// <param name="Color"><c>#rrggbb</c>, lower case.</param>
internal sealed record NamedThread(string Name, string Color);
