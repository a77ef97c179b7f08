using System.Collections.Immutable;
using Splitter.Geometry;
using Splitter.Recipes.Language;

namespace Splitter.Recipes.Keys;

/// <summary>The keys of <c>fields</c>.</summary>
internal static class FieldKeys
{
    internal static readonly Key<FieldPlacement> Place = new(
        "place",
        new ByForm<FieldPlacement>(
            new WordKind<FieldPlacement>([("fewest", new FewestFields())]),
            new Made<ImmutableArray<ListedField>, FieldPlacement>(
                new GroupListKind<ListedField>(ListedFieldKeys.Group, 1, 1000),
                fields => new ListedFields(fields)
            ),
            GridKeys.Group
        )
    )
    {
        Says = "As few fields as cover the artwork, fields listed by hand, or even columns and rows.",
        Example = "fewest",
        Default = "fewest",
    };

    internal static readonly Key<ImmutableArray<Turn>> Turns = new("turns", new ListKind<Turn>(new TurnKind(), 1, 4))
    {
        Says =
            "Which ways the fields of 'place: fewest' may lie, clockwise as seen on the drawing; 180 and 270 "
            + "deg cover no more, but can keep cloth out of the throat.",
        Example = "[0 deg, 90 deg, 180 deg, 270 deg]",
        Otherwise = "0 deg and 90 deg",
    };

    internal static readonly Key<int> Clearance = new("clearance", new LengthKind("0 mm", "30 mm"))
    {
        Says =
            "How far stitches stay inside the field's edge as planned; 'realign' may move a part into it, but for "
            + "1 mm.",
        Example = "3 mm",
        Default = "3 mm",
    };

    internal static readonly Key<ImmutableArray<ListedField>> Fixed = new(
        "fixed",
        new GroupListKind<ListedField>(ListedFieldKeys.Group, 1, 1000)
    )
    {
        Says = "Fields that are there in any case, beside those that 'place' asks for.",
        Example = "[{ center: [65 mm, 90 mm], turn: 90 deg }]",
        Otherwise = "none",
    };

    internal static readonly Key<ImmutableArray<Box>> Forbidden = new(
        "forbidden",
        new GroupListKind<Box>(ForbiddenKeys.Group, 1, 100)
    )
    {
        Says =
            "Parts of the cloth that no field may lie over, not even with its margin, such as a zip or a thick "
            + "seam; edges may touch.",
        Example = "[{ corner: [0 mm, 300 mm], size: 400 x 20 mm }]",
        Otherwise = "none",
    };

    internal static readonly Key<Point> First = new("first", new PointKind("-2000 mm", "22000 mm"))
    {
        Says = "The field that holds this point, and the crossing of the folds if both are given, is sewn first.",
        Example = "[210 mm, 280 mm]",
        Otherwise = "the field that holds the crossing of the folds, else the one in the middle",
    };

    internal static readonly GroupKind<FieldRules> Group = new(
        [Place, Turns, Clearance, Fixed, Forbidden, First],
        group =>
            new()
            {
                Place = group.Get(Place),
                Turns = group.MaybeValue(Turns) is { } turns ? [.. turns.Order()] : FieldRules.UsualTurns,
                Clearance = group.Get(Clearance),
                Fixed = group.MaybeValue(Fixed) ?? [],
                Forbidden = group.MaybeValue(Forbidden) ?? [],
                First = group.MaybeValue(First),
            }
    );
}

/// <summary>The keys of a field listed in <c>fields.place</c>.</summary>
internal static class ListedFieldKeys
{
    internal static readonly Key<Point> Center = new("center", new PointKind("-2000 mm", "22000 mm") { OnTape = true })
    {
        Says = "Its centre, from the artwork's top left corner, in whole steps of 0.1 mm.",
        Example = "[65 mm, 90 mm]",
        Required = true,
    };

    internal static readonly Key<Turn> Turn = TurnKey.New("Which way the hoop lies.");

    internal static readonly GroupKind<ListedField> Group = new(
        [Center, Turn],
        group => new(group.Get(Center), group.Get(Turn))
    );
}

/// <summary>The keys of a zone in <c>fields.forbidden</c>.</summary>
internal static class ForbiddenKeys
{
    internal static readonly Key<Point> Corner = new("corner", new PointKind("-2000 mm", "22000 mm"))
    {
        Says = "Its top left corner, from the artwork's.",
        Example = "[0 mm, 300 mm]",
        Required = true,
    };

    internal static readonly Key<(int Width, int Height)> Size = new("size", new SizeKind("1 mm", "20000 mm"))
    {
        Says = "How wide and how high it is.",
        Example = "400 x 20 mm",
        Required = true,
    };

    internal static readonly GroupKind<Box> Group = new(
        [Corner, Size],
        group =>
        {
            var (at, size) = (group.Get(Corner), group.Get(Size));
            return new(at.X, at.Y, at.X + size.Width, at.Y + size.Height);
        }
    );
}

/// <summary>The keys of columns and rows in <c>fields.place</c>.</summary>
internal static class GridKeys
{
    internal static readonly Key<int> Columns = new("columns", new CountKind(1, 100))
    {
        Says = "How many fields stand side by side, the outer ones flush with the artwork's edges.",
        Example = "3",
        Required = true,
    };

    internal static readonly Key<int> Rows = new("rows", new CountKind(1, 100))
    {
        Says = "How many fields stand one below the other, the outer ones flush with the artwork's edges.",
        Example = "2",
        Required = true,
    };

    internal static readonly Key<Turn> Turn = TurnKey.New(
        "Which way the hoop lies, the same in every field; it is not chosen for you."
    );

    internal static readonly GroupKind<FieldPlacement> Group = new(
        [Columns, Rows, Turn],
        group => new GridFields(group.Get(Columns), group.Get(Rows), group.Get(Turn))
    );
}

/// <summary>The key that listed fields and grids share.</summary>
internal static class TurnKey
{
    internal static Key<Turn> New(string says) =>
        new("turn", new TurnKind())
        {
            Says = $"{says} Clockwise as seen on the drawing.",
            Example = "90 deg",
            Default = "0 deg",
        };
}
