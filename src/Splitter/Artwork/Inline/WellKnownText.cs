using NetTopologySuite.IO;
using Nts = NetTopologySuite.Geometries;

namespace Splitter.Artwork.Inline;

/// <summary>Geometry as text (OGC 06-103r4), or what is wrong with the text.</summary>
internal static class WellKnownText
{
    /// <summary>Geometry collections nest no deeper than this in a drawing; the parser descends into each.</summary>
    private const int DeepestNesting = 16;

    /// <summary>The geometry, not empty; or null and what is wrong.</summary>
    internal static (Nts.Geometry? Geometry, string Fault) Read(string text)
    {
        if (Depth(text) > DeepestNesting)
            return (null, "its brackets are nested too deeply");
        // An extension of some databases, which the parser takes; it stumbles over a broken one.
        if (text.TrimStart().StartsWith("SRID", StringComparison.OrdinalIgnoreCase))
            return (null, "it begins with 'SRID', which is not of the standard; begin with the geometry");
        try
        {
            var geometry = new WKTReader { IsOldNtsCoordinateSyntaxAllowed = false }.Read(text);
            return geometry.IsEmpty ? (null, "it is empty") : (geometry, "");
        }
        catch (Exception e) when (e is ParseException or ArgumentException or InvalidOperationException)
        {
            return (null, InPlainWords(e.Message));
        }
    }

    /// <summary>
    /// The parser's own words may hold a line break and its own type names; its first line says what is wrong.
    /// </summary>
    private static string InPlainWords(string complaint) =>
        complaint.Contains("closed linestring", StringComparison.Ordinal)
            ? "a ring is open: its last point must be its first once more"
        : complaint.Contains("but found Eof", StringComparison.Ordinal) ? "it ends too early"
        : complaint.Contains("Expected number but found", StringComparison.Ordinal)
            ? "a number is missing, or there is a comma too many"
        : complaint.Split('\n')[0].Trim().TrimEnd('.');

    private static int Depth(string text)
    {
        var (depth, deepest) = (0, 0);
        foreach (var c in text)
        {
            depth += c switch
            {
                '(' => 1,
                ')' => -1,
                _ => 0,
            };
            deepest = Math.Max(deepest, depth);
        }
        return deepest;
    }
}
