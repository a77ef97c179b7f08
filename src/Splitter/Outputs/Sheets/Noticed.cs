namespace Splitter.Outputs.Sheets;

/// <summary>
/// A step between two parts that people notice, µm. Overlap closes gaps; it hides no step across a satin column or a
/// line. Common practice, no source.
/// </summary>
internal static class Noticed
{
    /// <summary>Across satin and lines.</summary>
    internal const int InLines = 500;

    /// <summary>Between fills that stand out from the cloth.</summary>
    internal const int InFills = 1000;
}
