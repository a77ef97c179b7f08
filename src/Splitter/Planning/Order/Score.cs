namespace Splitter.Planning.Order;

/// <summary>
/// How well the fields of an order will meet, µm²; less is better. First counts the worst seam, then all seams
/// together, then how far the fields lie from where they should, which is all there is where nothing is cut.
/// </summary>
/// <param name="Worst">The largest misfit of two fields at a seam that they share.</param>
/// <param name="Sum">For each two fields that share a seam their largest misfit there.</param>
/// <param name="Astray">For each field its misfit with the first, on average over the corners of its ground.</param>
internal readonly record struct Score(double Worst, double Sum, double Astray) : IComparable<Score>
{
    public static bool operator <(Score a, Score b) => a.CompareTo(b) < 0;

    public static bool operator >(Score a, Score b) => a.CompareTo(b) > 0;

    /// <summary>Both together.</summary>
    internal Score Joined(Score other) => new(Math.Max(Worst, other.Worst), Sum + other.Sum, Astray + other.Astray);

    /// <inheritdoc/>
    public int CompareTo(Score other) => (Worst, Sum, Astray).CompareTo((other.Worst, other.Sum, other.Astray));
}
