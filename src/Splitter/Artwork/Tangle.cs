namespace Splitter.Artwork;

/// <summary>
/// Outlines that cross themselves so often that dividing them into faces would take minutes: no drawing, but a mistake
/// or malice.
/// </summary>
internal static class Tangle
{
    /// <summary>
    /// Crossings that are still divided within seconds; a scribble that fills a sheet has some thousands.
    /// </summary>
    private const int MostCrossings = 50_000;

    /// <summary>Pairs of sides that are looked at; an outline of 100,000 waves needs a tenth of it.</summary>
    private const long MostPairs = 300_000_000;

    /// <param name="rings">From vertex to vertex and back to the first; in any unit.</param>
    internal static bool IsTooMuch(IEnumerable<IReadOnlyList<(double X, double Y)>> rings)
    {
        var sides = new List<Side>();
        foreach (var ring in rings)
            for (var i = 0; i < ring.Count; i++)
                sides.Add(new(ring[i], ring[(i + 1) % ring.Count]));
        sides.Sort((a, b) => a.Left.CompareTo(b.Left));
        var (crossings, pairs) = (0, 0L);
        for (var i = 0; i < sides.Count; i++)
        for (var j = i + 1; j < sides.Count && sides[j].Left <= sides[i].Right; j++)
        {
            if (++pairs > MostPairs)
                return true;
            if (sides[i].Crosses(sides[j]) && ++crossings > MostCrossings)
                return true;
        }
        return false;
    }

    private readonly record struct Side((double X, double Y) From, (double X, double Y) To)
    {
        internal double Left => Math.Min(From.X, To.X);

        internal double Right => Math.Max(From.X, To.X);

        /// <summary>Each one's ends lie on either side of the other; touching does not count.</summary>
        internal bool Crosses(Side other) =>
            Math.Max(From.Y, To.Y) > Math.Min(other.From.Y, other.To.Y)
            && Math.Max(other.From.Y, other.To.Y) > Math.Min(From.Y, To.Y)
            && Turn(other.From) * Turn(other.To) < 0
            && other.Turn(From) * other.Turn(To) < 0;

        private double Turn((double X, double Y) p) =>
            ((To.X - From.X) * (p.Y - From.Y)) - ((To.Y - From.Y) * (p.X - From.X));
    }
}
