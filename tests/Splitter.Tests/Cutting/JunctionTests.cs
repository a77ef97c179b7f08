using System.Collections.Immutable;
using CsCheck;
using Splitter.Artwork;
using Splitter.Cutting;
using Splitter.Geometry;
using Splitter.Planning;
using Splitter.Recipes;

namespace Splitter.Tests.Cutting;

/// <summary>
/// A square that is divided among two, three or four parts which meet in its middle: quarters, halves on a quarter, and
/// sectors between random rays, sewn in any order.
/// </summary>
public sealed class JunctionTests
{
    /// <summary>
    /// Moves stop this short of what is promised, µm: offsets stray by up to 10 µm, and a part that is turned by 4 thousandths
    /// more than its neighbour moves what it sews 1.5 mm past the seam by 6 µm more than what lies at it.
    /// </summary>
    private const double Rounding = 25;

    /// <summary>What three rounded edges may leave between them, mm²: a hundredth of the hole of a stitch.</summary>
    private const double Crumb = 0.0001;

    /// <summary>Side of the square, µm; they meet at its middle.</summary>
    private const int Side = 40_000;

    private static readonly FillShape Square = Samples.Rectangle("square", 0, 0, 40, 40);

    private static readonly Point Middle = new(Side / 2, Side / 2);

    /// <summary>Directions of the rays that divide the square, degrees, and by sectors the part that sews each.</summary>
    private static readonly Gen<Meeting> Random =
        from count in Gen.Int[2, 4]
        from turn in Gen.Double[0, 360]
        from bends in Gen.Double[-25, 25].Array[count]
        from order in Gen.Shuffle(Enumerable.Range(0, count).ToArray())
        from overlap in Gen.Int[8, 16]
        from edges in Gen.Enum<EdgeRule>()
        select new Meeting(
            [.. bends.Select((b, i) => turn + (i * 360.0 / count) + b)],
            [.. order],
            overlap * 100,
            edges
        );

    public static TheoryData<double[]> Plain =>
        [
            [0, 180],
            [0, 90, 180],
            [30, 150, 270],
            [0, 90, 180, 270],
        ];

    [Theory]
    [MemberData(nameof(Plain))]
    public void PartsThatMissEachOtherByAllThatIsPromisedCoverTheirSeams(double[] rays) =>
        Assert.All(
            Enum.GetValues<EdgeRule>(),
            edges => Check(new([.. rays], [.. Enumerable.Range(0, rays.Length)], 1000, edges))
        );

    [Fact]
    public void SoDoPartsAroundAnyPointInAnyOrder() =>
        Random.Holds(
            Check,
            cases: 40,
            print: m =>
                FormattableString.Invariant(
                    $"rays {string.Join(" ", m.Rays)}, order {string.Join(" ", m.Order)}, {m.Overlap} {m.Edges}"
                )
        );

    /// <summary>So the test sees holes at all, and where three parts meet the promise could not be larger.</summary>
    [Fact]
    public void MoreThanIsPromisedOpensAHole()
    {
        var meeting = new Meeting([30, 150, 270], [0, 1, 2], 1000, EdgeRule.Plain);
        var grounds = Cut(meeting).ConvertAll(AnyRow);
        // Each away from its neighbour, round and round.
        Point[] swirl = [.. meeting.Rays.Select(ray => Away(ray + 90, 1.05 * meeting.Promised / Math.Sqrt(3)))];
        Assert.True(Open([.. grounds.Select((g, i) => Moved(g, swirl[i], 0))]).Area / 1e6 > 0.001);
    }

    private static void Check(Meeting meeting)
    {
        var pieces = Cut(meeting);
        Assert.InRange(new LayerMap(Samples.Drawing(Square), [.. pieces]).Pieces.Max(), 2, 3);
        // A part that comes out a row further up meets any rows with any: what counts is where all of them are.
        var grounds = pieces.ConvertAll(AnyRow);
        foreach (var moves in Moves(meeting))
        {
            var open = Open([.. grounds.Select((ground, i) => Moved(ground, moves[i].Shift, moves[i].Turn))]);
            Assert.True(
                open.Area / 1e6 <= Crumb,
                FormattableString.Invariant(
                    $"{open.Area / 1e6:0.0000} mm² open at {open.Bounds}, moves {string.Join(" ", moves)}"
                )
            );
        }
    }

    /// <summary>
    /// Every part its own way, and turned a little: outwards, each away from the next one round and round, all ways by
    /// 45 degrees, and at random; as far as no two of them miss each other by more than is promised, anywhere in sight.
    /// </summary>
    private static IEnumerable<ImmutableArray<(Point Shift, double Turn)>> Moves(Meeting meeting)
    {
        var count = meeting.Rays.Length;
        var random = new PCG(stream: 1, seed: 27_182);
        var ways = new List<double[]>();
        double[] rays = [.. meeting.Rays];
        for (var i = 0; i < count; i++)
            if (rays[(i + 1) % count] < rays[i])
                rays[(i + 1) % count] += i + 1 < count ? 360 : 0;
        double[] middles = [.. rays.Select((r, i) => (r + (i + 1 < count ? rays[i + 1] : rays[0] + 360)) / 2)];
        ways.Add(middles);
        ways.Add([.. rays.Select(r => r + 90)]);
        ways.Add([.. rays.Select((_, i) => rays[(i + 1) % count] - 90)]);
        for (var eighths = 0; eighths < 1 << (3 * Math.Min(count, 2)); eighths++)
            ways.Add([.. rays.Select((_, i) => 45.0 * ((eighths >> (3 * (i % 2))) & 7))]);
        for (var i = 0; i < 40; i++)
            ways.Add([.. rays.Select(_ => Upto(360))]);
        foreach (var directions in ways)
        {
            // By sector, then by part.
            var moves = new (double X, double Y, double Turn)[count];
            for (var i = 0; i < count; i++)
            {
                var away = Away(directions[i], 1000 * (ways.IndexOf(directions) < 3 ? 1 : 0.3 + Upto(0.7)));
                moves[meeting.Order[i]] = (away.X, away.Y, Upto(0.004) - 0.002);
            }
            var most = (
                from a in moves
                from b in moves
                from at in Corners
                let turn = a.Turn - b.Turn
                select Math.Sqrt(Squared(a.X - b.X - (turn * at.Y)) + Squared(a.Y - b.Y + (turn * at.X)))
            ).Max();
            // Where all go the same way they need not go far.
            var scale = Math.Min((meeting.Promised - Rounding) / most, 2);
            yield return
            [
                .. moves.Select(m =>
                    (new Point((int)Math.Round(m.X * scale), (int)Math.Round(m.Y * scale)), m.Turn * scale)
                ),
            ];
        }

        double Upto(double most) => random.Next(1_000_000) * most / 1e6;

        static double Squared(double d) => d * d;
    }

    /// <summary>Around the middle, well inside the square; µm.</summary>
    private static Box Sight => new(Side / 2 - 9000, Side / 2 - 9000, Side / 2 + 9000, Side / 2 + 9000);

    /// <summary>Of what is in sight, from the middle: where turns move most.</summary>
    private static readonly Point[] Corners = [new(-9000, -9000), new(9000, -9000), new(9000, 9000), new(-9000, 9000)];

    private static Region Open(IEnumerable<Region> grounds) =>
        Polygons.Subtract(Region.Of(Sight), Polygons.Union(grounds));

    private static Region AnyRow(FillPiece piece) => Polygons.Intersect(piece.EvenRows, piece.OddRows);

    private static Point Away(double angle, double by) =>
        new(
            (int)Math.Round(by * Math.Cos(angle * Math.PI / 180)),
            (int)Math.Round(by * Math.Sin(angle * Math.PI / 180))
        );

    /// <summary>Turned about the middle by a small angle, then shifted.</summary>
    private static Region Moved(Region region, Point by, double turn)
    {
        return new([.. region.Polygons.Select(p => new Polygon(To(p.Outer), [.. p.Holes.Select(To)]))]);

        Ring To(Ring ring) =>
            new([
                .. ring.Points.Select(p => new Point(
                    (int)Math.Round(p.X + by.X - (turn * (p.Y - Middle.Y))),
                    (int)Math.Round(p.Y + by.Y + (turn * (p.X - Middle.X)))
                )),
            ]);
    }

    private static List<FillPiece> Cut(Meeting meeting)
    {
        var hoop = new Hoop("test", 60_000, 60_000);
        var count = meeting.Rays.Length;
        var territories = new Region[count];
        for (var i = 0; i < count; i++)
            territories[meeting.Order[i]] = Sector(meeting.Rays[i], meeting.Rays[(i + 1) % count]);
        var plan = new Plan
        {
            Hoop = hoop,
            Hoopings = [.. territories.Select(Hooping)],
            LowerBound = count,
            Owners = [null],
            SeamLines = [],
            TurnedLayers = [],
            // Those that lie side by side; parts of which only corners touch have no join.
            Joins =
            [
                .. Enumerable
                    .Range(0, count)
                    .Select(i => (meeting.Order[i], meeting.Order[(i + 1) % count]))
                    .Select(p => (Earlier: Math.Min(p.Item1, p.Item2), Later: Math.Max(p.Item1, p.Item2)))
                    .Distinct()
                    .Order()
                    .Select(p => Join(p.Earlier, p.Later)),
            ],
            Corners = [],
            PlacementLines = [],
            Seams = new(0, 0, 1),
        };
        return
        [
            .. Cutter
                .Cut(Samples.Drawing(Square), plan, new OverlapRules { Edges = meeting.Edges })
                .Cast<FillPiece>()
                .OrderBy(p => p.Hooping),
        ];

        Hooping Hooping(Region territory, int index)
        {
            var field = new Field(hoop, Middle, Turn.None, 0);
            return new()
            {
                Letter = Letters.Of(index),
                Field = field,
                Ground = field.Usable,
                Territory = territory,
                Takes = [],
                Gives = [],
                Alignments = [],
            };
        }

        PartJoin Join(int earlier, int later) =>
            new()
            {
                Earlier = earlier,
                Later = later,
                WorstAt = Middle,
                PredictedError = 300,
                Budget = new(300, 0, 0, 0, 0),
                AlongSeam = 500,
                Overlap = meeting.Overlap,
                Narrowest = meeting.Overlap,
                Covers = 500,
            };
    }

    /// <summary>From one ray to the next, clockwise as seen on the drawing.</summary>
    private static Region Sector(double from, double to)
    {
        var span = (((to - from) % 360) + 360) % 360;
        var points = new List<Point> { Middle };
        for (var k = 0; k <= 4; k++)
            points.Add(Middle + Away(from + (span * k / 4), 3 * Side));
        return Polygons.Intersect(
            Polygons.FromRings([new Ring([.. points])], FillRule.NonZero),
            Region.Of(Square.Footprint.Bounds)
        );
    }

    /// <param name="Rays">Rising, degrees clockwise from x; from each to the next lies a sector.</param>
    /// <param name="Order">By sectors the part that sews each.</param>
    /// <param name="Overlap">How far each reaches, µm.</param>
    private sealed record Meeting(ImmutableArray<double> Rays, ImmutableArray<int> Order, int Overlap, EdgeRule Edges)
    {
        /// <summary>The misfit that is covered, µm.</summary>
        internal double Promised =>
            Rays.Length == 2
                ? Overlaps.Together(Overlap, Edges)
                // The circle around three that miss each other by as much is 2/sqrt(3) wide.
                : Overlaps.Together(Overlap, Edges) * Math.Sqrt(3) / 2;
    }
}
