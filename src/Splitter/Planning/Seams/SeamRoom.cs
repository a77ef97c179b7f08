using System.Collections.Immutable;
using Splitter.Geometry;

namespace Splitter.Planning.Seams;

/// <summary>
/// How much room an overlap has beside a seam, and what too little costs: past a seam each side is sewn on as far as
/// its own ground reaches. Distances in µm, prices in millimetres of plain fill.
/// </summary>
/// <param name="grounds">Of all fields.</param>
/// <param name="width">
/// The overlap that the recipe asks for; null when it is worked out from the expected misfit.
/// </param>
/// <param name="isSewn">Whether something that seams cut shows at a place.</param>
internal sealed class SeamRoom(ImmutableArray<Box> grounds, int? width, Func<Point, bool> isSewn)
{
    /// <summary>
    /// Nothing is made to overlap less than this, µm: thread pulls each edge back by up to 0.4 mm. Common practice, no
    /// source.
    /// </summary>
    internal const int Least = 800;

    /// <summary>
    /// With less room than this, µm, an overlap that is worked out may not be as wide as it wants to be. Misfits are
    /// not known when seams are drawn: on plain firm cloth most overlaps come out no wider, and where one side ends
    /// nearer than its misfit needs, the other side reaches further.
    /// </summary>
    private const int Wanted = 1000;

    /// <summary>
    /// An overlap that is worked out is seldom wider than this, µm, unless corners are set roughly or the cloth
    /// stretches.
    /// </summary>
    private const int Usual = 3 * Units.Millimetre;

    /// <summary>
    /// A square millimetre of sewn ground right at the edge; less inwards, nothing where there is room enough. A seam
    /// along the edge itself then costs four and a half times its length, so that it runs there only when it must.
    /// </summary>
    private const double MarginPrice = 3;

    /// <summary>
    /// A square millimetre of sewn ground without room for the overlap that is wanted: with that a seam goes there only
    /// where the common ground offers nothing else.
    /// </summary>
    private const double TightPrice = 30;

    /// <summary>
    /// A square millimetre for each millimetre less room than in the field with the most: where nothing else decides,
    /// the seam runs through the middle. So little that 15 mm beside the middle cost less than half of what length
    /// does.
    /// </summary>
    private const double MiddlePrice = 0.0001;

    /// <summary>How far beyond an edge one looks for something to sew, µm: a thread's width.</summary>
    private const int Beyond = 400;

    /// <summary>A seam with more room than this on both sides has enough.</summary>
    private readonly int margin = Math.Max(Usual, width ?? 0);

    /// <summary>A seam with less room than this is drawn only where there is no other.</summary>
    private readonly int tight = width ?? Wanted;

    private readonly int[][] neighbours =
    [
        .. grounds.Select(
            (ground, a) =>
                Enumerable.Range(0, grounds.Length).Where(b => b != a && ground.Grown(1).Meets(grounds[b])).ToArray()
        ),
    ];

    /// <summary>
    /// How far past a place each of two fields sews on. A ground's edge counts where the other field's ground and
    /// something to sew lie beyond it: elsewhere there is nothing to overlap.
    /// </summary>
    /// <param name="isSewn">Whether what the seam cuts goes on at a place.</param>
    internal static SideRoom Between(
        ImmutableArray<Box> grounds,
        int one,
        int other,
        Point at,
        Func<Point, bool> isSewn
    )
    {
        var room = Of(grounds, one, [other], at, int.MaxValue, isSewn);
        var others = Of(grounds, other, [one], at, int.MaxValue, isSewn);
        return new(Math.Min(room, others), Math.Max(room, others));
    }

    private static int Of(
        ImmutableArray<Box> grounds,
        int field,
        ReadOnlySpan<int> others,
        Point at,
        int most,
        Func<Point, bool> isSewn
    )
    {
        var ground = grounds[field];
        ReadOnlySpan<(int Room, Point Beyond)> sides =
        [
            (at.X - ground.Left, new(ground.Left - Beyond, at.Y)),
            (ground.Right - at.X, new(ground.Right + Beyond, at.Y)),
            (at.Y - ground.Top, new(at.X, ground.Top - Beyond)),
            (ground.Bottom - at.Y, new(at.X, ground.Bottom + Beyond)),
        ];
        var room = most;
        foreach (var (distance, beyond) in sides)
        foreach (var other in others)
            if (distance < room && grounds[other].Contains(beyond) && isSewn(beyond))
                room = distance;
        return room;
    }

    /// <summary>Distance of a place from the edges of a field's ground.</summary>
    internal double FromEdge(int field, double x, double y)
    {
        var ground = grounds[field];
        return Math.Min(Math.Min(x - ground.Left, ground.Right - x), Math.Min(y - ground.Top, ground.Bottom - y));
    }

    /// <summary>Ground in which a seam of two fields has room enough on all sides; may be empty.</summary>
    internal Box Ample(int one, int other) => grounds[one].Common(grounds[other]).Grown(-margin);

    /// <summary>What a square millimetre of sewn ground costs when this field sews it.</summary>
    internal double Shortage(int field, Point at)
    {
        var room = Of(grounds, field, neighbours[field], at, margin, isSewn);
        return Shortage(room) + (room < tight ? TightPrice : 0);
    }

    /// <summary>
    /// What a millimetre of seam through sewn ground costs: all ground between it and where there is room enough.
    /// </summary>
    internal double ShortageOfSeam(int one, int other, Point at)
    {
        var room = Math.Min(
            Of(grounds, one, [other], at, margin, isSewn),
            Of(grounds, other, [one], at, margin, isSewn)
        );
        return room >= margin
            ? 0
            : (Shortage(room) * (margin - room) / 2 / Units.Millimetre)
                + (room < tight ? TightPrice * tight / Units.Millimetre : 0);
    }

    /// <summary>A square millimetre of ground with this much less room than in another field.</summary>
    internal static double Preference(double less) => MiddlePrice * less / Units.Millimetre;

    private double Shortage(double room) => room >= margin ? 0 : MarginPrice * (1 - (room / margin));
}
