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
        string[] sides = [.. text.Split('x', StringSplitOptions.TrimEntries).Select(Quantity.WithPoint)];
        if (
            sides.Length != 2
            || !Quantity.TryParse(sides[0], out var width)
            || !Quantity.TryParse(sides[1], out var height)
        )
            return given.RefuseForm(Expects);
        if (width.Unit.Length == 0 && height.Unit.Length == 0)
            return given.Refuse(
                RecipeValueProblems.NoUnit(
                    given.Place,
                    given.Key.Name,
                    "a size",
                    text,
                    side.Instead($"{sides[0]} x {sides[1]}", width.Number, height.Number)
                )
            );
        var isUnitFirst = height.Unit.Length == 0;
        if (width.Unit.Length == 0)
            (width, sides[0]) = (width with { Unit = height.Unit }, $"{sides[0]} {height.Unit}");
        if (isUnitFirst)
            (height, sides[1]) = (height with { Unit = width.Unit }, $"{sides[1]} {width.Unit}");

        var across = side.Read(width, sides[0], given);
        var down = side.Read(height, sides[1], given);
        if (!across.Has || !down.Has)
            return default(Refused);
        var instead = $"{sides[0]} x {sides[1]}";
        if (isUnitFirst)
            return given.Refuse(RecipeValueProblems.UnitOnFirstSide(given.Place, given.Key.Name, text, instead));
        return text.Contains(',')
            ? given.Refuse(RecipeValueProblems.DecimalComma(given.Place, given.Key.Name, instead))
            : (across.Value, down.Value);
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
    internal override string Expects => "0 deg, 90 deg, 180 deg or 270 deg";

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
            : given.Refuse(RecipeValueProblems.NotRightAngle(given.Place, text));
    }
}
