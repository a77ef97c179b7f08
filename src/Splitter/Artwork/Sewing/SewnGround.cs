using Splitter.Geometry;

namespace Splitter.Artwork.Sewing;

/// <summary>
/// What is sewn of the ground that a shape is drawn on, where later shapes hide some of it: what shows, a rim that
/// reaches under the hiding shape where the two meet, and hidden ground that is too narrow to be left out. Nowhere two
/// hidden layers lie over each other: where a later shape reaches under another one already, nothing more is sewn.
/// </summary>
/// <param name="Left">Ground that is left out.</param>
/// <param name="Sewn">All that is sewn.</param>
/// <param name="Hidden">Of this, what lies under later shapes.</param>
/// <param name="Rims">Of this, what reaches under them along edges that show, and ends there.</param>
/// <param name="Deep">Of what is hidden, all that lies further in than a rim.</param>
internal sealed record SewnGround(Region Left, Region Sewn, Region Hidden, Region Rims, Region Deep)
{
    /// <summary>
    /// How far the lower shape reaches under the upper one, µm: less, and a gap shows where the cloth draws in; more
    /// only thickens the edge. Common practice, no source.
    /// </summary>
    internal const int Trap = 800;

    /// <summary>
    /// Hidden ground narrower than this stays sewn where ground that shows lies on both sides, µm: a small thing stands
    /// better on a closed fill, and holes break the rows up. Common practice, no source.
    /// </summary>
    private const int NarrowestHole = 4000;

    /// <summary>What shows of a shape, and is narrower than this everywhere, cannot be sewn, µm; tips are.</summary>
    internal const int NarrowestRest = 300;

    /// <summary>Nobody sees what is narrower than this, µm: it comes of outlines that were to be the same.</summary>
    private const int NarrowestSeen = 2 * Straying;

    /// <summary>Less than this is not cut out, µm: no more than a thread's width, so that hidden lines are.</summary>
    private const int NarrowestCut = 300;

    /// <summary>Offsets stray by up to 10 µm each way; what is cut out leaves no splinters beside it.</summary>
    private const int Straying = 20;

    /// <summary>More hiding polygons than this are looked at one by one.</summary>
    private const int Many = 100;

    /// <param name="drawn">What the artwork draws.</param>
    /// <param name="cover">What later shapes hide.</param>
    /// <param name="taken">Of this, where one of them is sewn under another.</param>
    /// <param name="jobs">How many threads may work.</param>
    internal static SewnGround Of(Region drawn, Region cover, Region taken, int jobs) =>
        cover.Polygons.Length > Many ? OneByOne(drawn, cover, taken, jobs) : At(drawn, cover, taken);

    /// <summary>Something is seen of a shape beside what hides it, be it too narrow to sew.</summary>
    internal static bool Shows(Region drawn, Region cover) =>
        !Polygons.Offset(Polygons.Subtract(drawn, cover), -NarrowestSeen / 2).IsEmpty;

    /// <summary>Near each hiding polygon alone: the engine compares each of thousands with all others.</summary>
    private static SewnGround OneByOne(Region drawn, Region cover, Region taken, int jobs)
    {
        var near = InOrder.Select(
            cover.Polygons,
            jobs,
            polygon =>
            {
                var (own, window) = (new Region([polygon]), polygon.Outer.Bounds.Grown(NarrowestHole + (2 * Trap)));
                var ground = At(
                    Polygons.Intersect(drawn, Region.Of(window)),
                    Within(cover, window),
                    Within(taken, window)
                );
                return (
                    Left: Polygons.Intersect(ground.Left, own),
                    Rims: Polygons.Intersect(ground.Rims, own),
                    Deep: Polygons.Intersect(ground.Deep, own)
                );
            }
        );
        var left = Polygons.Union(near.Select(n => n.Left));
        var sewn = Shown(Polygons.Subtract(drawn, left), Polygons.Subtract(drawn, cover));
        return new(
            left,
            sewn,
            Polygons.Intersect(sewn, cover),
            // What is sewn near a hiding polygon is sewn.
            Polygons.Union(near.Select(n => n.Rims)),
            Polygons.Union(near.Select(n => n.Deep))
        );

        static Region Within(Region region, Box window) =>
            Polygons.Intersect(new([.. region.Polygons.Where(p => p.Outer.Bounds.Meets(window))]), Region.Of(window));
    }

    private static SewnGround At(Region drawn, Region cover, Region taken)
    {
        var shown = Polygons.Subtract(drawn, cover);
        var seeds = Polygons.Offset(shown, -NarrowestRest / 2);
        if (seeds.IsEmpty)
            return new(drawn, Region.Empty, Region.Empty, Region.Empty, Region.Empty);
        var reach = Polygons.Intersect(Polygons.Offset(seeds, (NarrowestRest / 2) + Trap), drawn);
        var wanted = Polygons.Subtract(Polygons.Union(reach, Closed(reach, NarrowestHole, drawn)), taken);
        var left = Polygons.Subtract(drawn, wanted);
        left = Polygons.Offset(Polygons.Offset(left, -NarrowestCut / 2), (NarrowestCut / 2) + Straying);
        var sewn = Shown(Polygons.Subtract(drawn, left), seeds);
        var hidden = Polygons.Intersect(sewn, cover);
        return new(
            left,
            sewn,
            hidden,
            Polygons.Subtract(sewn, Closed(Polygons.Intersect(shown, reach), NarrowestHole + (2 * Trap), sewn)),
            Polygons.Subtract(hidden, reach)
        );
    }

    /// <summary>The ground with gaps narrower than a width filled, within some ground.</summary>
    private static Region Closed(Region ground, int width, Region within) =>
        Polygons.Intersect(Polygons.Offset(Polygons.Offset(ground, width / 2), -width / 2), within);

    /// <summary>Those of the areas of which something shows.</summary>
    private static Region Shown(Region sewn, Region seeds) =>
        new([.. sewn.Polygons.Where(p => !Polygons.Intersect(new Region([p]), seeds).IsEmpty)]);
}
