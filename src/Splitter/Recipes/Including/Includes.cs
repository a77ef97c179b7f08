using System.Collections.Immutable;
using Splitter.Diagnostics;
using Splitter.Recipes.Keys;
using Splitter.Recipes.Language;
using Splitter.Recipes.Yaml;

namespace Splitter.Recipes.Including;

/// <summary>
/// Lays the keys of included files under those of a recipe, before any is understood: so each is read, and complained
/// about, by the same table and at its own place. Files are taken in the order in which they are named, each followed
/// by what it includes itself; a file that was taken already is not taken again.
/// </summary>
internal sealed class Includes(Reading reading, ReadSource read)
{
    /// <summary>All of them together; a handful is usual, and this many take no time.</summary>
    private const int MostFiles = 50;

    private readonly ImmutableArray<SourceFile>.Builder taken = ImmutableArray.CreateBuilder<SourceFile>();

    /// <summary>The files, in the order in which they were read.</summary>
    internal ImmutableArray<SourceFile> Read => taken.ToImmutable();

    /// <summary>The recipe with all that it includes; mistakes are reported.</summary>
    internal MappingNode Expand(MappingNode recipe) =>
        Expand(recipe, [reading.File[(reading.File.LastIndexOfAny(['/', '\\']) + 1)..]]);

    /// <param name="chain">The file and those that led to it, the recipe first.</param>
    private MappingNode Expand(MappingNode file, ImmutableArray<string> chain)
    {
        var whole = file;
        foreach (var (path, place) in Named(file))
        {
            if (reading.IsFull)
                break;
            if (IncludedPath.From(chain[^1], path) is not { } found)
                reading.Problems.Add(IncludeProblems.OutsideTheTree(place, path));
            else if (chain.Contains(found))
                reading.Problems.Add(IncludeProblems.Circle(place, [.. chain.SkipWhile(f => f != found), found]));
            else if (taken.All(source => source.Path != found) && Load(found, place) is { } included)
                whole = (MappingNode)RecipeKeys.Group.Merge(whole, Expand(included, chain.Add(found)));
        }
        return whole;
    }

    private IEnumerable<(string Path, Place Place)> Named(MappingNode file)
    {
        if (file.Entries.FirstOrDefault(e => e.Key == RecipeKeys.Include.Name)?.Value is not { } list)
            return [];
        var own = new Reading(reading.File);
        var paths = RecipeKeys.Include.ReadValue(new(list, RecipeKeys.Include.Name, RecipeKeys.Include, own));
        reading.Problems.AddRange(own.Problems);
        return paths is ImmutableArray<string> all
            ? all.Zip(((SequenceNode)list).Items, (path, item) => (path, item.Place))
            : [];
    }

    private MappingNode? Load(string path, Place place)
    {
        if (taken.Count == MostFiles)
        {
            reading.Problems.Add(IncludeProblems.TooMany(place, MostFiles));
            return null;
        }
        var got = read(path);
        if (got.Problem is { } why)
        {
            reading.Problems.Add(IncludeProblems.NotReadable(place, path, why));
            return null;
        }
        taken.Add(new(path, got.Bytes));
        var root = YamlLoader.Load(path, got.Bytes.Span, reading.Problems);
        if (root is MappingNode mapping && RecipeReader.OtherVersion(mapping) is { } other)
            reading.Problems.Add(other);
        else if (root is MappingNode)
            return Shared((MappingNode)root, RecipeKeys.Group.Keys);
        else if (root is not null)
            reading.Problems.Add(IncludeProblems.NotKeys(root.Place));
        return null;
    }

    /// <summary>
    /// Without the version, which the recipe states itself; a key that is the recipe's alone is a mistake.
    /// </summary>
    private MappingNode Shared(MappingNode mapping, ImmutableArray<Key> keys)
    {
        var shared = ImmutableArray.CreateBuilder<Entry>();
        foreach (var entry in mapping.Entries)
        {
            var key = keys.FirstOrDefault(k => k.Name == entry.Key);
            if (key is { IsOwn: true })
                reading.Problems.Add(IncludeProblems.OfTheRecipe(entry.KeyPlace, entry.Key));
            else if (key is not null && entry.Value is MappingNode inner)
                shared.Add(entry with { Value = Shared(inner, key.Kind.Keys) });
            else if (key != RecipeKeys.Splitter)
                shared.Add(entry);
        }
        return mapping with { Entries = shared.ToImmutable() };
    }
}
