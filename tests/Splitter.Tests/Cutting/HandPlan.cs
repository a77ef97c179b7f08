using System.Collections.Immutable;
using Splitter.Geometry;
using Splitter.Planning;
using Splitter.Recipes;

namespace Splitter.Tests.Cutting;

/// <summary>Plans of two parts, made by hand: territories that meet at x = 50 mm, 40 mm high. Arguments in millimetres.</summary>
internal static class HandPlan
{
    /// <summary>How far each part reaches past the seam, µm.</summary>
    internal const int Overlap = 800;

    /// <param name="right">The first field goes as far as this; its territory ends at 50.</param>
    /// <param name="left">The second field begins here.</param>
    internal static Plan Of(ImmutableArray<int?> owners, double right = 60, double left = 40) =>
        Of(owners, new Box(0, 0, Mm(right), 40_000), new Box(Mm(left), 0, 100_000, 40_000));

    private static Plan Of(ImmutableArray<int?> owners, Box first, Box second)
    {
        var hoop = new Hoop("test", 60_000, 40_000);
        return new()
        {
            Hoop = hoop,
            Hoopings =
            [
                Hooping("A", first, new(0, 0, 50_000, 40_000)),
                Hooping("B", second, new(50_000, 0, 100_000, 40_000)),
            ],
            LowerBound = 2,
            Owners = owners,
            SeamLines = [new(0, 1, new([new(50_000, 0), new(50_000, 40_000)]))],
            TurnedLayers = [],
            Joins =
            [
                new()
                {
                    Earlier = 0,
                    Later = 1,
                    WorstAt = new(50_000, 0),
                    PredictedError = 300,
                    Budget = new(300, 0, 0, 0, 0),
                    AlongSeam = 500,
                    Overlap = Overlap,
                    Narrowest = Overlap,
                    Covers = 500,
                },
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
}
