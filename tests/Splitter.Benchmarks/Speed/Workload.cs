using System.Collections.Immutable;
using System.Text;

namespace Splitter.Benchmarks.Speed;

/// <summary>A generated work whose making is timed: every output, in the common small hoop.</summary>
/// <param name="Name">How the table calls it.</param>
/// <param name="Stitches">About how many it has; those that are small are measured in quick runs, too.</param>
/// <param name="Width">Finished width, mm.</param>
/// <param name="Drawing">Its artwork, SVG.</param>
internal sealed record Workload(string Name, int Stitches, int Width, Func<string> Drawing)
{
    /// <summary>What artwork files are called.</summary>
    internal const string ArtworkFile = "artwork.svg";

    /// <summary>What a quick run takes.</summary>
    private const int Quick = 100_000;

    /// <summary>
    /// One kind of drawing from a motif to a bedspread, from which growth is told, and drawings of other kinds.
    /// </summary>
    internal static ImmutableArray<Workload> All { get; } =
    [
        OfQuilt("10 k", 10_000, 2),
        OfQuilt("100 k", 100_000, 6),
        OfQuilt("1 M", 1_000_000, 20),
        OfQuilt("3 M", 3_000_000, 35),
        new("huge polygons", 230_000, 500, () => Drawings.Coast(polygons: 4, vertices: 100_000, side: 500)),
        new("small polygons", 340_000, 1250, () => Drawings.Seeds(count: 20_000, side: 1250)),
        new("lines", 80_000, 800, () => Drawings.Waves(count: 160, side: 800)),
    ];

    /// <summary>
    /// What a process makes before it is timed: small, but of several fields, so that it goes where larger ones go.
    /// </summary>
    internal static Workload First => All[1];

    /// <summary>It is a quilt: the same in all sizes.</summary>
    internal bool IsQuilt => Name.StartsWith("quilt", StringComparison.Ordinal);

    internal bool IsQuick => Stitches <= Quick;

    /// <param name="jobs">How many threads may work.</param>
    internal Request Request(int jobs)
    {
        var artwork = Encoding.UTF8.GetBytes(Drawing());
        return new("recipe.yaml", Encoding.UTF8.GetBytes(Recipe), _ => new(artwork, Problem: null)) { Jobs = jobs };
    }

    internal string Recipe =>
        $$"""
            splitter: 1
            artwork:
              file: {{ArtworkFile}}
              width: {{Width}} mm
            hoops:
              - { name: small, field: 130 x 180 mm }
            output:
              folder: parts
              files: [tape, svg, png, thread, csv, worksheet, template]

            """;

    /// <param name="tiles">Along each side.</param>
    private static Workload OfQuilt(string size, int stitches, int tiles) =>
        new($"quilt, {size}", stitches, tiles * Drawings.Tile, () => Drawings.Quilt(tiles));
}
