using Splitter.Planning.Seams;

namespace Splitter.Benchmarks.Least;

/// <summary>
/// A minimum cut between what one field must sew and what it cannot sew. All else has a choice, and is a node.
/// </summary>
internal sealed class BorderCut(int field)
{
    /// <summary>Costs are whole numbers of this share of a millimetre of plain fill, rounded down.</summary>
    private const double Unit = 100_000;

    private const int Never = -1;
    private const int Always = -2;

    private readonly List<(int A, int B, long There, long Back)> links = [];
    private int free;

    /// <param name="fields">Those that may sew it.</param>
    internal int Add(int[] fields) =>
        !fields.Contains(field) ? Never
        : fields.Length == 1 ? Always
        : free++;

    /// <param name="there">What it costs when the field sews the first and not the second.</param>
    /// <param name="back">What it costs when the field sews the second and not the first.</param>
    internal void Link(int a, int b, double there, double back) =>
        links.Add((a, b, (long)(there * Unit), (long)(back * Unit)));

    internal double Least()
    {
        var flow = new MaximumFlow(free);
        var certain = 0L;
        foreach (var (a, b, there, back) in links)
            switch (a, b)
            {
                case (>= 0, >= 0):
                    flow.AddArcs(a, b, there, back);
                    break;
                case (>= 0, _):
                    flow.AddTerminals(a, b == Always ? back : 0, b == Never ? there : 0);
                    break;
                case (_, >= 0):
                    flow.AddTerminals(b, a == Always ? there : 0, a == Never ? back : 0);
                    break;
                case (Always, Never):
                    certain += there;
                    break;
                case (Never, Always):
                    certain += back;
                    break;
            }
        return (flow.Solve() + certain) / Unit;
    }
}
