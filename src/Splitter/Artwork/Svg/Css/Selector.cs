using System.Collections.Immutable;
using System.Xml.Linq;

namespace Splitter.Artwork.Svg.Css;

/// <summary>A test of an attribute: it is there, or has this value, or has this word in it.</summary>
internal sealed record AttributeTest(string Name, string? Value, bool AsWord);

/// <summary>What one element must be: type, id, classes, attributes; null or empty asks nothing.</summary>
internal sealed record Compound(
    string? Type,
    string? Id,
    ImmutableArray<string> Classes,
    ImmutableArray<AttributeTest> Attributes
)
{
    internal bool Matches(XElement element) =>
        (Type is null || element.Name.LocalName == Type)
        && (Id is null || (string?)element.Attribute("id") == Id)
        && Classes.All(c => HasWord((string?)element.Attribute("class"), c))
        && Attributes.All(a => Matches((string?)element.Attribute(a.Name), a));

    /// <summary>Comparable as a number: ids count more than any classes, classes more than any types.</summary>
    internal int Specificity =>
        ((Id is null ? 0 : 1) << 20) + ((Classes.Length + Attributes.Length) << 10) + (Type is null ? 0 : 1);

    private static bool Matches(string? value, AttributeTest test) =>
        value is not null && (test.Value is null || (test.AsWord ? HasWord(value, test.Value) : value == test.Value));

    private static bool HasWord(string? list, string word) =>
        list is not null && XmlWords.Of(list).Contains(word, StringComparer.Ordinal);
}

/// <summary>
/// Compounds joined by "child of" and "inside of". Kept as chains from the right: within a chain each compound is the
/// parent of the one before it; each chain lies somewhere above the one before it.
/// </summary>
internal sealed record Selector(ImmutableArray<ImmutableArray<Compound>> Chains)
{
    internal Compound Subject => Chains[0][0];

    internal int Specificity => Chains.Sum(c => c.Sum(p => p.Specificity));

    /// <summary>
    /// The nearest place for each chain leaves most room for the next one, so no other need be tried.
    /// </summary>
    internal bool Matches(XElement element)
    {
        if (Climb(Chains[0], element) is not { } top)
            return false;
        foreach (var chain in Chains.Skip(1))
        {
            var candidate = top.Parent;
            XElement? found = null;
            while (candidate is not null && (found = Climb(chain, candidate)) is null)
                candidate = candidate.Parent;
            if (found is null)
                return false;
            top = found;
        }
        return true;
    }

    /// <summary>The highest element of the chain when it starts at this element.</summary>
    private static XElement? Climb(ImmutableArray<Compound> chain, XElement element)
    {
        XElement? at = element;
        XElement? top = null;
        foreach (var compound in chain)
        {
            if (at is null || !compound.Matches(at))
                return null;
            (top, at) = (at, at.Parent);
        }
        return top;
    }
}
