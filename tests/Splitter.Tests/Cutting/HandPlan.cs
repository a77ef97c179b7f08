using System.Collections.Immutable;
using Splitter.Geometry;
using Splitter.Planning;
using Splitter.Recipes;

namespace Splitter.Tests.Cutting;

/// <summary>Plans made by hand, for tests of cutting alone. Arguments in millimetres.</summary>
internal static class HandPlan
{
    /// <summary>How far each part reaches past a seam, µm.</summary>
    internal const int Overlap = 800;

    /// <summary>Two parts that meet at x = 50 mm, 40 mm high.</summary>
    /// <param name="right">The first field goes as far as this.</param>
    /// <param name="left">The second field begins here.</param>
    internal static Plan Of(ImmutableArray<int?> owners, double right = 60, double left = 40) =>
        Of(
            owners,
            (new(0, 0, Mm(right), Mm(40)), new(0, 0, Mm(50), Mm(40))),
            (new(Mm(left), 0, Mm(100), Mm(40)), new(Mm(50), 0, Mm(100), Mm(40)))
        );

    /// <summary>Parts that all meet each other.</summary>
    internal static Plan Of(ImmutableArray<int?> owners, params ImmutableArray<(Box Ground, Box Territory)> parts)
    {
        var hoop = new Hoop("test", 60_000, 40_000);
        return new()
        {
            Hoop = hoop,
            Hoopings = [.. parts.Select((part, i) => Hooping(Letters.Of(i), part.Ground, part.Territory))],
            LowerBound = parts.Length,
            Owners = owners,
            SeamLines = [],
            TurnedLayers = [],
            Joins =
            [
                .. from later in Enumerable.Range(0, parts.Length)
                from earlier in Enumerable.Range(0, later)
                orderby earlier, later
                select Join(earlier, later),
            ],
            Corners = [],
            PlacementLines = [],
            Seams = new(0, 0, 1),
        };

        Hooping Hooping(string letter, Box ground, Box territory) =>
            new()
            {
                Letter = letter,
                Field = new Field(hoop, ground.Centre, Turn.None, 0),
                Ground = ground,
                Territory = Region.Of(territory),
                Takes = [],
                Gives = [],
                Alignments = [],
            };
    }

    internal static int Mm(double length) => Units.FromMillimetres(length);

    private static PartJoin Join(int earlier, int later) =>
        new()
        {
            Earlier = earlier,
            Later = later,
            WorstAt = default,
            PredictedError = 300,
            Budget = new(300, 0, 0, 0, 0),
            AlongSeam = 500,
            Overlap = Overlap,
            Narrowest = Overlap,
            Covers = 500,
        };
}
