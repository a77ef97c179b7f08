using Splitter.Recipes.Language;

namespace Splitter.Recipes.Keys;

/// <summary>The keys of a thread in <c>threads</c>.</summary>
internal static class ThreadKeys
{
    internal static readonly Key<string> Name = new("name", new TextKind(80))
    {
        Says = "What stands on the spool.",
        Example = "deep water",
        Required = true,
        Unique = StringComparer.OrdinalIgnoreCase,
    };

    internal static readonly Key<string> Color = new("color", new ColourKind())
    {
        Says = "The colour of the artwork that it sews.",
        Example = "\"#1b3a5c\"",
        Required = true,
        Unique = StringComparer.Ordinal,
    };

    internal static readonly GroupKind<NamedThread> Group = new(
        [Name, Color],
        group => new(group.Get(Name), group.Get(Color))
    );
}
