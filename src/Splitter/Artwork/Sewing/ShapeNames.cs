namespace Splitter.Artwork.Sewing;

/// <summary>
/// Gives every shape a name of its own that stays the same while the artwork does: the element's id, else its innermost
/// group's, else <c>shape</c>; a number follows where a name is taken.
/// </summary>
internal sealed class ShapeNames
{
    private readonly HashSet<string> ids;
    private readonly HashSet<string> taken = new(StringComparer.Ordinal);
    private readonly Dictionary<string, int> last = new(StringComparer.Ordinal);

    internal ShapeNames(Sheet sheet) =>
        ids = sheet.Elements.Select(e => e.Id).OfType<string>().ToHashSet(StringComparer.Ordinal);

    internal string Next(DrawnElement element)
    {
        if (element.Id is { } id && taken.Add(id))
            return id;
        var stem = element.Id ?? (element.Ids.IsEmpty ? "shape" : element.Ids[0]);
        while (true)
        {
            var number = last[stem] = last.GetValueOrDefault(stem, element.Id is null ? 0 : 1) + 1;
            var name = FormattableString.Invariant($"{stem}-{number}");
            // A name that the artwork itself gives is left to its owner.
            if (!ids.Contains(name) && taken.Add(name))
                return name;
        }
    }
}
