using System.Collections.Immutable;
using Splitter.Geometry;

namespace Splitter.Recipes;

/// <summary>Where fields lie.</summary>
internal sealed record FieldRules
{
    /// <summary>One of the three ways to place fields.</summary>
    public required FieldPlacement Place { get; init; }

    /// <summary>Which ways <see cref="FewestFields"/> may lie; hand-placed fields state theirs.</summary>
    public ImmutableArray<Turn> Turns { get; init; } = UsualTurns;

    /// <summary>
    /// The turns of a recipe that names none: a hoop turned upside down covers no other ground than upright, and is a
    /// chance to lay the cloth the wrong way round.
    /// </summary>
    internal static readonly ImmutableArray<Turn> UsualTurns = [Turn.None, Turn.Quarter];

    /// <summary>How far stitches stay away from the field's edge.</summary>
    public int Clearance { get; init; } = 3 * Units.Millimetre;

    /// <summary>Fields that are there in any case.</summary>
    public ImmutableArray<ListedField> Fixed { get; init; } = [];

    /// <summary>Ground on the drawing that no field may lie over.</summary>
    public ImmutableArray<Box> Forbidden { get; init; } = [];

    /// <summary>The field that holds this point of the drawing is sewn first; null for no wish.</summary>
    public Point? First { get; init; }
}

/// <summary>A way to place fields.</summary>
internal abstract record FieldPlacement;

/// <summary>As few fields as cover the artwork.</summary>
internal sealed record FewestFields : FieldPlacement;

/// <summary>Fields placed by hand.</summary>
internal sealed record ListedFields(ImmutableArray<ListedField> Fields) : FieldPlacement;

/// <summary>One field placed by hand: its centre in design space, on the 0.1 mm grid.</summary>
internal sealed record ListedField(Point Centre, Turn Turn);

/// <summary>Fields evenly in columns and rows over the artwork, all turned the same way.</summary>
internal sealed record GridFields(int Columns, int Rows, Turn Turn) : FieldPlacement;
