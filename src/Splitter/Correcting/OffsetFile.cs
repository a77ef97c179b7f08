using System.Collections.Immutable;
using Splitter.Diagnostics;
using Splitter.Recipes.Language;
using Splitter.Recipes.Yaml;

namespace Splitter.Correcting;

/// <summary>Measured offsets as a person notes them in a small file, read as strictly as a recipe.</summary>
internal static class OffsetFile
{
    private static readonly Key<string> At = new("at", new TextKind(20))
    {
        Says = "The number of the cross on the work sheet, or the name of a corner.",
        Example = "1",
        Required = true,
        Unique = StringComparer.Ordinal,
    };

    private static readonly Key<int> Right = Way("right");
    private static readonly Key<int> Left = Way("left");
    private static readonly Key<int> Up = Way("up");
    private static readonly Key<int> Down = Way("down");

    private static readonly GroupKind<MeasuredOffset> Offset = new(
        [At, Right, Left, Up, Down],
        group =>
            new(
                group.Get(At),
                (group.MaybeValue(Right) ?? 0) - (group.MaybeValue(Left) ?? 0),
                (group.MaybeValue(Up) ?? 0) - (group.MaybeValue(Down) ?? 0),
                group.Given.Place
            )
            {
                IsOneWay = (group.Has(Right) || group.Has(Left)) != (group.Has(Up) || group.Has(Down)),
            },
        Check
    );

    private static readonly Key<string> Part = new("part", new TextKind(10))
    {
        Says = "The letter of the part in the hoop.",
        Example = "D",
        Required = true,
    };

    private static readonly Key<ImmutableArray<MeasuredOffset>> Offsets = new(
        "offsets",
        new GroupListKind<MeasuredOffset>(Offset, 2, 20)
    )
    {
        Says = "How far the new stitch lies from where it should, at two places or more.",
        Example = "[{ at: 1, right: 0.6 mm, down: 0.2 mm }, { at: 2, left: 0.1 mm }]",
        Required = true,
    };

    private static readonly GroupKind<PartOffsets> Group = new(
        [Part, Offsets],
        group => new(group.Get(Part), group.Get(Offsets), Place.Whole(group.Given.Reading.File))
    );

    private static readonly Key<PartOffsets> Whole = new("offsets", Group)
    {
        Says = "What was measured.",
        Example = "part: D",
    };

    /// <summary>All mistakes of a file are reported together.</summary>
    internal static Result<PartOffsets> Read(string file, ReadOnlyMemory<byte> bytes)
    {
        var reading = new Reading(file);
        var root = YamlLoader.Load(file, bytes.Span, reading.Problems);
        var read = root is null ? default(Refused) : Group.Read(new Given(root, "", Whole, reading));
        return read.Has && reading.Problems.Count == 0
            ? Result.Of(read.Value)
            : Result<PartOffsets>.Failed(RecipeFileProblems.Foremost(reading.Problems));
    }

    private static Key<int> Way(string name) =>
        new(name, new LengthKind("0 mm", "50 mm"))
        {
            Says = $"How far it lies {name} of its place, as the hoop lies before you.",
            Example = "0.6 mm",
        };

    private static void Check(Group group)
    {
        foreach (var (one, other) in new[] { (Right, Left), (Up, Down) })
            if (group.Has(one) && group.Has(other))
                group.Report(CorrectionProblems.BothWays(group.PlaceOf(other), one.Name, other.Name));
        if (!new[] { Right, Left, Up, Down }.Any(group.Has))
            group.Report(CorrectionProblems.NoWay(group.Given.Place));
    }
}
