using Splitter.Recipes.Language;

namespace Splitter.Recipes.Keys;

/// <summary>The keys of a hoop in <c>hoops</c>.</summary>
internal static class HoopKeys
{
    internal static readonly Key<string> Name = new("name", new HoopNameKind())
    {
        Says = "What it is called; its outputs lie in a folder of this name.",
        Example = "small",
        Required = true,
        Unique = StringComparer.OrdinalIgnoreCase,
    };

    internal static readonly Key<(int Width, int Height)> Field = new("field", new SizeKind("20 mm", "2000 mm"))
    {
        Says = "Width and height of the field that the machine sews in it.",
        Example = "130 x 180 mm",
        Required = true,
    };

    internal static readonly Key<Throat> Throat = new("throat", ThroatKeys.Group)
    {
        Says = "Where the cloth beside the field passes under the machine's arm, and how much of it can.",
        Example = "{ side: right, room: 400 mm }",
        Otherwise = "not known; then all ways to lie are as good",
    };

    internal static readonly GroupKind<Hoop> Group = new(
        [Name, Field, Throat],
        group => new(group.Get(Name), group.Get(Field).Width, group.Get(Field).Height) { Throat = group.OrNull(Throat) }
    );
}
