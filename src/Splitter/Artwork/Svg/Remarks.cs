using System.Xml.Linq;
using Splitter.Diagnostics;

namespace Splitter.Artwork.Svg;

/// <summary>
/// What there is to say about the drawing, and the bounds that stop a hostile one. Once a bound is broken the walk
/// ends.
/// </summary>
internal sealed class Remarks(SvgDocument document)
{
    /// <summary>Elements after <c>use</c> is expanded: beyond any drawing that a person would sew.</summary>
    private const int MostElements = 200_000;

    /// <summary>Points of all flattened outlines: some 100 MB.</summary>
    private const int MostPoints = 4_000_000;

    private readonly HashSet<Diagnostic> all = [];
    private int elements;
    private int points;

    internal IEnumerable<Diagnostic> All => all;

    /// <summary>A bound was broken: nothing more is read.</summary>
    internal bool Stopped { get; private set; }

    internal void Add(Diagnostic diagnostic)
    {
        all.Add(diagnostic);
        Stopped |= diagnostic.Severity == Severity.Error;
    }

    /// <summary>About an element: its place and its name in messages are filled in.</summary>
    internal void Add(XElement element, Func<Place, string, Diagnostic> problem) =>
        Add(problem(document.PlaceOf(element), SvgDocument.Label(element)));

    internal void CountElement(XElement element)
    {
        if (++elements > MostElements && !Stopped)
            Add(ArtworkProblems.TooManyElements(document.PlaceOf(element), MostElements));
    }

    internal void CountPoints(XElement element, int count)
    {
        points += count;
        if (points > MostPoints && !Stopped)
            Add(ArtworkProblems.TooManyPoints(document.PlaceOf(element), MostPoints));
    }
}
