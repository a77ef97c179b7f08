using System.Collections.Immutable;
using Splitter.Diagnostics;

namespace Splitter.Recipes;

/// <summary>
/// One recipe, read and checked, every default filled in. Lengths in whole micrometres, angles in degrees clockwise as
/// seen on the drawing.
/// </summary>
internal sealed record Recipe
{
    /// <summary>The recipe's file name as it was given; the sources that it names are relative to its folder.</summary>
    public required string File { get; init; }

    /// <summary>What the work is called; the file's name when the recipe does not say.</summary>
    public required string Title { get; init; }

    /// <summary>The files that it includes, in the order in which they were read.</summary>
    public ImmutableArray<SourceFile> Included { get; init; } = [];

    /// <summary>What is sewn.</summary>
    public required ArtworkSource Artwork { get; init; }

    /// <summary>
    /// Named threads; a colour of the artwork takes the thread of exactly its colour, else a name of its own.
    /// </summary>
    public ImmutableArray<NamedThread> Threads { get; init; } = [];

    /// <summary>What it is sewn on.</summary>
    public required Cloth Cloth { get; init; }

    /// <summary>The hoops it must work for, at least one, in the recipe's order.</summary>
    public required ImmutableArray<Hoop> Hoops { get; init; }

    /// <summary>Where fields lie.</summary>
    public required FieldRules Fields { get; init; }

    /// <summary>How parts meet.</summary>
    public required OverlapRules Overlap { get; init; }

    /// <summary>How a hooping finds the last one.</summary>
    public required RegistrationRules Registration { get; init; }

    /// <summary>How long things take.</summary>
    public Machine Machine { get; init; } = new();

    /// <summary>What is written, and where to.</summary>
    public required OutputRules Output { get; init; }

    /// <summary>Where each value stands in the file, by its key path (<c>hoops[1].field</c>).</summary>
    public required ImmutableDictionary<string, Place> Places { get; init; }

    /// <summary>
    /// The place of a key path, or of the nearest key above it that the file has; else that of the next path. Artwork
    /// is in every file, so an editor always has a line to go to.
    /// </summary>
    internal Place PlaceOf(params ReadOnlySpan<string> paths)
    {
        foreach (var given in paths)
            for (var path = given; path.Length > 0; path = path[..Math.Max(0, path.LastIndexOfAny(['.', '[']))])
                if (Places.TryGetValue(path, out var place))
                    return place;
        return Places.TryGetValue("artwork", out var artwork) ? artwork : Place.Whole(File);
    }
}
