namespace Splitter.Recipes.Including;

/// <summary>Where an included file lies.</summary>
internal static class IncludedPath
{
    /// <summary>
    /// Relative to the recipe's folder, as a file there or below names it; null beyond the recipe's folder.
    /// </summary>
    internal static string? From(string file, string path)
    {
        var steps = file.Split('/')[..^1].ToList();
        foreach (var step in path.Split('/'))
        {
            if (step != "..")
                steps.Add(step);
            else if (steps.Count == 0)
                return null;
            else
                steps.RemoveAt(steps.Count - 1);
        }
        return string.Join('/', steps);
    }
}
