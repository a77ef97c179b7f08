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

    internal static readonly Key<int> Clearance = new("clearance", new LengthKind("0 mm", "30 mm"))
    {
        Says = "How far stitches stay inside the field's edge.",
        Example = "3 mm",
        Default = "3 mm",
    };

    internal static readonly GroupKind<FieldRules> Group = new(
        [Place, Clearance],
        group => new() { Place = group.Get(Place), Clearance = group.Get(Clearance) }
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

    internal static readonly Key<Turn> Turn = TurnKey.New();

    internal static readonly GroupKind<ListedField> Group = new(
        [Center, Turn],
        group => new(group.Get(Center), group.Get(Turn))
    );
}

/// <summary>The keys of columns and rows in <c>fields.place</c>.</summary>
internal static class GridKeys
{
    internal static readonly Key<int> Columns = new("columns", new CountKind(1, 100))
    {
        Says = "How many fields stand side by side.",
        Example = "3",
        Required = true,
    };

    internal static readonly Key<int> Rows = new("rows", new CountKind(1, 100))
    {
        Says = "How many fields stand one below the other.",
        Example = "2",
        Required = true,
    };

    internal static readonly Key<Turn> Turn = TurnKey.New();

    internal static readonly GroupKind<FieldPlacement> Group = new(
        [Columns, Rows, Turn],
        group => new GridFields(group.Get(Columns), group.Get(Rows), group.Get(Turn))
    );
}

/// <summary>The key that listed fields and grids share.</summary>
internal static class TurnKey
{
    internal static Key<Turn> New() =>
        new("turn", new TurnKind())
        {
            Says = "Which way the hoop lies, clockwise as seen on the drawing.",
            Example = "90 deg",
            Default = "0 deg",
        };
}
