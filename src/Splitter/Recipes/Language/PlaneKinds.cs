using System.Collections.Immutable;
using System.Text.Json.Nodes;
using Splitter.Diagnostics;
using Splitter.Geometry;
using Splitter.Recipes.Yaml;

namespace Splitter.Recipes.Language;

/// <summary>Width by height: <c>130 x 180 mm</c>, the unit on each side or once at the end.</summary>
internal sealed class SizeKind(string least, string most) : ScalarKind<(int Width, int Height)>
{
    private readonly LengthKind side = new(least, most);

    internal override ImmutableArray<Kind> Parts => [side];

    internal override string Expects => $"width x height, each {side.Expects}";

    internal override JsonObject ToSchema() => Schema.Text($"{Quantity.Written}( *({side.Units}))? *x *{side.Written}");

    internal override Maybe<(int Width, int Height)> ReadText(string text, Given given)
    {
        // No unit has an x in it.
        var sides = text.Split('x', StringSplitOptions.TrimEntries);
        if (
            sides.Length != 2
            || !Quantity.TryParse(sides[0], out var width)
            || !Quantity.TryParse(sides[1], out var height)
        )
            return sides.Length == 2 && sides.Any(Quantity.HasComma)
                ? given.Refuse(RecipeProblems.DecimalComma(given.Place, given.Key.Name, text))
                : given.RefuseForm(Expects);

        if (width.Unit.Length == 0)
            (width, sides[0]) = (width with { Unit = height.Unit }, $"{sides[0]} {height.Unit}".TrimEnd());
        else if (height.Unit.Length == 0)
            return given.Refuse(RecipeProblems.UnitOnFirstSide(given.Place, given.Key.Name, text));
        if (height.Unit.Length == 0)
            return given.Refuse(RecipeProblems.NoUnit(given.Place, given.Key.Name, "a size", text, side.UnitNames));

        var across = side.Read(width, sides[0], given);
        var down = side.Read(height, sides[1], given);
        return across.Has && down.Has ? (across.Value, down.Value) : default(Refused);
    }
}

/// <summary>A point: <c>[20 mm, 30 mm]</c>, rightwards and downwards.</summary>
internal sealed class PointKind(string least, string most) : Kind<Point>
{
    private readonly LengthKind each = new(least, most);

    /// <summary>Only points of the tape's grid.</summary>
    internal bool OnTape
    {
        get => each.OnTape;
        init => each = new(least, most) { OnTape = value };
    }

    internal override ImmutableArray<Kind> Parts => [each];

    internal override string Expects => $"a point [x, y], each {each.Expects}";

    internal override JsonObject ToSchema() => Schema.List(each, 2, 2);

    internal override Maybe<Point> Read(Given given)
    {
        if (given.Node is not SequenceNode { Items: [var first, var second] })
            return given.RefuseForm(Expects);
        var x = each.Read(given.Item(0, first));
        var y = each.Read(given.Item(1, second));
        return x.Has && y.Has ? new Point(x.Value, y.Value) : default(Refused);
    }
}

/// <summary>Which way a hoop lies. A right angle, so that its unit may be left out.</summary>
internal sealed class TurnKind : ScalarKind<Turn>
{
    internal override string Expects => "0, 90, 180 or 270 degrees";

    internal override JsonObject ToSchema() =>
        Schema.AnyOf(
            Schema.Words("0 deg", "90 deg", "180 deg", "270 deg"),
            Schema.Words("0", "90", "180", "270"),
            Schema.Text("[+]?0*(0|90|180|270)([.]0+)? *deg")
        );

    internal override Maybe<Turn> ReadText(string text, Given given)
    {
        if (!Quantity.TryParse(text, out var quantity) || quantity.Unit is not ("" or "deg"))
            return given.RefuseForm(Expects);
        return quantity.Number is 0 or 90 or 180 or 270
            ? (Turn)(int)quantity.Number
            : given.Refuse(RecipeProblems.NotRightAngle(given.Place, text));
    }
}
