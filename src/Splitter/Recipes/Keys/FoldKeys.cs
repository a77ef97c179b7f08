using System.Text.Json.Nodes;
using Splitter.Recipes.Language;

namespace Splitter.Recipes.Keys;

/// <summary>The keys of <c>cloth.folds</c>.</summary>
internal static class FoldKeys
{
    internal static readonly Key<FoldAt> Upright = new("upright", new FoldKind("left", "right"))
    {
        Says = "The fold that runs up the cloth.",
        Example = "centre",
        Otherwise = "none",
    };

    internal static readonly Key<FoldAt> Level = new("level", new FoldKind("top", "bottom"))
    {
        Says = "The fold that runs across the cloth.",
        Example = "1 in from bottom",
        Otherwise = "none",
    };

    internal static readonly GroupKind<ClothFolds> Group = new(
        [Upright, Level],
        group => new(group.OrNull(Upright), group.OrNull(Level))
    );
}

/// <summary><c>centre</c>, or a distance from one of two edges: <c>1 in from bottom</c>.</summary>
internal sealed class FoldKind(string start, string end) : ScalarKind<FoldAt>
{
    private readonly LengthKind distance = new("0 mm", "20000 mm");

    internal override string Expects => $"centre, or a length with 'from {start}' or 'from {end}'";

    internal override JsonObject ToSchema() =>
        Schema.AnyOf(Schema.Words("centre"), Schema.Text($"{distance.Written} from +({start}|{end})"));

    internal override Maybe<FoldAt> ReadText(string text, Given given)
    {
        if (text == "centre")
            return new FoldAt(null, false);
        var halves = text.Split(" from ");
        if (halves.Length != 2 || halves[1].Trim(' ') is not { } edge || (edge != start && edge != end))
            return given.RefuseForm(Expects);
        return distance.ReadText(halves[0].Trim(' '), given) is { Has: true, Value: var d }
            ? new FoldAt(d, edge == end)
            : default(Refused);
    }
}
