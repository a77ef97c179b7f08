using System.Collections.Immutable;
using Splitter.Diagnostics;
using Splitter.Recipes.Language;

namespace Splitter.Recipes.Keys;

/// <summary>The keys of a recipe's top level; through their kinds, the whole language.</summary>
internal static class RecipeKeys
{
    /// <summary>The version of the language that this reader knows.</summary>
    internal const int Version = 1;

    /// <summary>A hoop whose clearance leaves less than this has no room for stitches and corners.</summary>
    private const int LeastUsable = 10 * Geometry.Units.Millimetre;

    /// <summary>More spools than this nobody has beside a machine.</summary>
    internal const int MostThreads = 500;

    internal static readonly Key<int> Splitter = new("splitter", new CountKind(Version, Version))
    {
        Says = "Version of the recipe language.",
        Example = "1",
        Required = true,
    };

    internal static readonly Key<ImmutableArray<string>> Include = new(
        "include",
        new ListKind<string>(new IncludedFileKind(), 1, 20)
    )
    {
        Says = "Files with keys of a recipe, for what several recipes share; the recipe's own keys win.",
        Example = "[house/hoops.yaml, house/threads.yaml]",
        Otherwise = "none",
    };

    internal static readonly Key<string> Title = new("title", new TextKind(200))
    {
        Says = "What the work is called.",
        Example = "Lighthouse bay",
        Otherwise = "the recipe's file name without its extension",
        IsOwn = true,
    };

    internal static readonly Key<ArtworkSource> Artwork = new("artwork", ArtworkKeys.Group)
    {
        Says = "What is sewn.",
        Example = "{ file: bay.svg, width: 420 mm }",
        Required = true,
    };

    internal static readonly Key<ImmutableArray<NamedThread>> Threads = new(
        "threads",
        new GroupListKind<NamedThread>(ThreadKeys.Group, 0, MostThreads) { GoesOn = true }
    )
    {
        Says =
            "Names for colours; a colour of the artwork takes the thread of exactly its colour. Those of "
            + "included files follow.",
        Example = "[{ name: deep water, color: \"#1b3a5c\" }]",
        Default = "[]",
    };

    internal static readonly Key<Cloth> Cloth = new("cloth", ClothKeys.Group)
    {
        Says = "What it is sewn on.",
        Example = "{ size: 460 x 620 mm, artwork-at: [20 mm, 30 mm] }",
        Default = "{}",
    };

    internal static readonly Key<ImmutableArray<Hoop>> Hoops = new(
        "hoops",
        new GroupListKind<Hoop>(HoopKeys.Group, 1, 20)
    )
    {
        Says = "The hoops that it must work for; each gets a set of parts of its own.",
        Example = "[{ name: small, field: 130 x 180 mm }]",
        Required = true,
    };

    internal static readonly Key<FieldRules> Fields = new("fields", FieldKeys.Group)
    {
        Says = "Where fields lie.",
        Example = "{ place: fewest, clearance: 3 mm }",
        Default = "{}",
    };

    internal static readonly Key<OverlapRules> Overlap = new("overlap", OverlapKeys.Group)
    {
        Says = "How parts meet.",
        Example = "{ width: auto, edges: interleaved }",
        Default = "{}",
    };

    internal static readonly Key<RegistrationRules> Registration = new("registration", RegistrationKeys.Group)
    {
        Says = "How a hooping finds the last one.",
        Example = "{ accuracy: 0.3 mm, alignment: cross }",
        Default = "{}",
    };

    internal static readonly Key<Machine> Machine = new("machine", MachineKeys.Group)
    {
        Says = "How long sewing, stops and hooping take, for estimates.",
        Example = "{ speed: 700, stop: 90 s, trim: 7 s, hooping: 15 min }",
        Default = "{}",
    };

    internal static readonly Key<OutputRules> Output = new("output", OutputKeys.Group)
    {
        Says = "What is written, and where to.",
        Example = "{ folder: parts/bay, files: [tape, svg] }",
        Default = "{}",
    };

    /// <summary>The language.</summary>
    internal static readonly GroupKind<Recipe> Group = new(
        [Splitter, Include, Title, Artwork, Threads, Cloth, Hoops, Fields, Overlap, Registration, Machine, Output],
        Build,
        Check
    );

    /// <summary>The name of the file without folder and extension, whichever system's path it is.</summary>
    internal static string NameOf(string file)
    {
        var name = file[(file.LastIndexOfAny(['/', '\\']) + 1)..];
        var point = name.LastIndexOf('.');
        name = point < 0 ? name : name[..point];
        return name.Length > 0 ? name : "recipe";
    }

    private static string FolderOf(string file) => $"parts/{NameOf(file)}";

    private static void Check(Group group)
    {
        // A recipe's own name may be one that no folder can have everywhere.
        var folder = FolderOf(group.Given.Reading.File);
        if (
            group.TryGet(Output, out var output)
            && output.Folder.Length == 0
            && PortablePath.Fault(folder) is { } fault
        )
            group.Report(RecipeValueProblems.BadPath(group.PlaceOf(Output), OutputKeys.Folder, folder, fault));

        ReportThroats(group);
        if (!group.TryGet(Hoops, out var hoops) || !group.TryGet(Fields, out var fields))
            return;
        foreach (var hoop in hoops)
        {
            var side = Math.Min(hoop.Width, hoop.Height);
            if (side - (2 * fields.Clearance) < LeastUsable)
            {
                var place = group.PlaceOf(Fields, FieldKeys.Clearance);
                group.Report(RecipeProblems.ClearanceTooLarge(place, fields.Clearance, hoop, (side - LeastUsable) / 2));
            }
        }
    }

    /// <summary>What lies in the throat is known only of a cloth whose edges are known.</summary>
    private static void ReportThroats(Group group)
    {
        if (
            !group.TryGet(Hoops, out var hoops)
            || !group.TryGet(Cloth, out var cloth)
            || cloth.Size is not null
            || cloth.IsCutToArtwork
        )
            return;
        foreach (var (i, hoop) in hoops.Index())
            if (hoop.Throat is not null)
                group.Report(
                    RecipeProblems.ThroatNeedsSize(
                        group.Given.Reading.Places[FormattableString.Invariant($"hoops[{i}].throat")]
                    )
                );
    }

    private static Recipe Build(Group group)
    {
        var reading = group.Given.Reading;
        var output = group.Get(Output);
        return new()
        {
            File = reading.File,
            Title = group.OrNull(Title) ?? NameOf(reading.File),
            Artwork = group.Get(Artwork),
            Threads = group.Get(Threads),
            Cloth = group.Get(Cloth),
            Hoops = group.Get(Hoops),
            Fields = group.Get(Fields),
            Overlap = group.Get(Overlap),
            Registration = group.Get(Registration),
            Machine = group.Get(Machine),
            Output = output.Folder.Length > 0 ? output : output with { Folder = FolderOf(reading.File) },
            Places = reading.Places.ToImmutable(),
        };
    }
}
