using System.Xml.Linq;

namespace Splitter.Artwork.Svg.Css;

/// <summary>
/// Which value each property of an element has by itself, before inheritance: attributes, then rules by specificity and
/// order, then the <c>style</c> attribute, then what is <c>!important</c> (CSS 2.2, 6.4; SVG 1.1, 6.4).
/// </summary>
internal sealed class Cascade
{
    private readonly Dictionary<string, List<Rule>> byId = new(StringComparer.Ordinal);
    private readonly Dictionary<string, List<Rule>> byClass = new(StringComparer.Ordinal);
    private readonly Dictionary<string, List<Rule>> byType = new(StringComparer.Ordinal);
    private readonly List<Rule> general = [];
    private readonly Dictionary<XElement, Declarations> known = [];

    internal Cascade(IEnumerable<Rule> rules)
    {
        foreach (var rule in rules)
        {
            var subject = rule.Selector.Subject;
            var list =
                subject.Id is { } id ? Of(byId, id)
                : subject.Classes is [var name, ..] ? Of(byClass, name)
                : subject.Type is { } type ? Of(byType, type)
                : general;
            list.Add(rule);
        }

        static List<Rule> Of(Dictionary<string, List<Rule>> index, string key) =>
            index.TryGetValue(key, out var list) ? list : index[key] = [];
    }

    internal Declarations Of(XElement element)
    {
        if (!known.TryGetValue(element, out var declarations))
            known[element] = declarations = Read(element);
        return declarations;
    }

    private Declarations Read(XElement element)
    {
        var values = new Dictionary<string, string>(StringComparer.Ordinal);
        foreach (var attribute in element.Attributes())
            if (attribute.Name.NamespaceName.Length == 0)
                values[attribute.Name.LocalName] = attribute.Value.Trim();
        var rules = Candidates(element)
            .Where(r => r.Selector.Matches(element))
            .OrderBy(r => r.Specificity)
            .ThenBy(r => r.Order)
            .ToList();
        var own = (string?)element.Attribute("style") is { } style ? CssReader.ReadDeclarations(style) : [];
        Declaration[] all = [.. rules.SelectMany(r => r.Declarations), .. own];
        foreach (var declaration in all.Where(d => !d.Important).Concat(all.Where(d => d.Important)))
            values[declaration.Name] = declaration.Value;
        return new(values);
    }

    private IEnumerable<Rule> Candidates(XElement element)
    {
        IEnumerable<Rule> found = general;
        if ((string?)element.Attribute("id") is { } id && byId.TryGetValue(id, out var ofId))
            found = found.Concat(ofId);
        foreach (var name in XmlWords.Of((string?)element.Attribute("class")).Distinct(StringComparer.Ordinal))
            if (byClass.TryGetValue(name, out var ofClass))
                found = found.Concat(ofClass);
        return byType.TryGetValue(element.Name.LocalName, out var ofType) ? found.Concat(ofType) : found;
    }
}

/// <summary>An element's own values by property.</summary>
internal sealed class Declarations(Dictionary<string, string> values)
{
    /// <summary>Null when the element says nothing of it.</summary>
    internal string? this[string property] => values.GetValueOrDefault(property);
}
