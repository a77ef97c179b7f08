namespace Splitter.Stitching.Density;

/// <summary>Counts what is covered of quarters.</summary>
internal interface IQuarterCounter
{
    /// <param name="area">More of a quarter that is covered, µm².</param>
    void Add(Quarter quarter, long area);
}
