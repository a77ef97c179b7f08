using System.Text.Json.Nodes;
using Splitter.Diagnostics;
using Splitter.Recipes.Language;

namespace Splitter.Recipes.Keys;

/// <summary>The keys of <c>match</c> in a rule of <c>artwork.sew</c>.</summary>
internal static class MatchKeys
{
    internal static readonly Key<string> Id = new("id", new TextKind(200))
    {
        Says = "The element's id, or that of a group it is in.",
        Example = "sea",
        Otherwise = "any",
    };

    internal static readonly Key<string> Class = new("class", new TextKind(200))
    {
        Says = "A class of the element, or of a group it is in.",
        Example = "lettering",
        Otherwise = "any",
    };

    internal static readonly Key<string> Fill = new("fill", new ColourKind())
    {
        Says = "Its fill colour.",
        Example = "\"#1b3a5c\"",
        Otherwise = "any",
    };

    internal static readonly Key<string> Stroke = new("stroke", new ColourKind())
    {
        Says = "Its stroke colour.",
        Example = "\"#1b3a5c\"",
        Otherwise = "any",
    };

    internal static readonly Key<LengthBound> StrokeWidth = new("stroke-width", new BoundKind("0 mm", "1000 mm"))
    {
        Says = "A bound on its stroke's finished width.",
        Example = "\"< 1.2 mm\"",
        Otherwise = "any",
    };

    internal static readonly GroupKind<SewMatch> Group = new(
        [Id, Class, Fill, Stroke, StrokeWidth],
        group =>
            new(
                group.OrNull(Id),
                group.OrNull(Class),
                group.OrNull(Fill),
                group.OrNull(Stroke),
                group.OrNull(StrokeWidth)
            ),
        group =>
        {
            if (group.IsEmpty)
                group.Report(RecipeProblems.EmptyMatch(group.Given.Place));
        }
    );
}

/// <summary>A comparison with a length: <c>&lt; 1.2 mm</c>.</summary>
internal sealed class BoundKind(string least, string most) : ScalarKind<LengthBound>
{
    private readonly LengthKind length = new(least, most);

    internal override string Expects => $"\"<\", \"<=\", \">\" or \">=\" and {length.Expects}, in quotation marks";

    internal override JsonObject ToSchema() => Schema.Text($"[<>]=? *{length.Written}");

    internal override Maybe<LengthBound> ReadText(string text, Given given)
    {
        var sign =
            text is not ['<' or '>', ..] ? ""
            : text is [_, '=', ..] ? text[..2]
            : text[..1];
        if (sign.Length == 0)
            return given.RefuseForm(Expects);
        return length.ReadText(text[sign.Length..].Trim(' '), given) is { Has: true, Value: var bound }
            ? new LengthBound(sign, bound)
            : default(Refused);
    }
}
