using System.Collections.Immutable;
using CsCheck;
using Splitter.Artwork;
using Splitter.Artwork.Columns;
using Splitter.Cutting;
using Splitter.Diagnostics;
using Splitter.Geometry;
using Splitter.Recipes;
using Splitter.Stitching;
using Splitter.Tests.Artwork.Columns;

namespace Splitter.Tests.Stitching;

/// <summary>Satin against closed forms, and how much thread and how many holes it lays where columns meet.</summary>
public sealed class SatinFiguresTests
{
    private const double Spacing = 400;
    private const int Widest = 8000;

    /// <summary>
    /// The most thread on a square millimetre: a little over twice that of a plain column, of which the fullest, ties and
    /// underlay included, has 3.7 layers (<see cref="APlainColumnIsTheMeasure"/>).
    /// </summary>
    private const double MostLayers = 8;

    private const double PlainLayers = 3.7;

    /// <summary>Penetrations on a square millimetre. Common practice, no source.</summary>
    private const int MostHoles = 14;

    private static readonly Gen<Region> Letters = Gen.Select(
        Gen.Int[3200, 5500],
        Gen.Select(Gen.Int[0, 3], Gen.Int[0, 3], Gen.Int[0, 3], Gen.Int[0, 3]).Array[2, 4],
        (width, bars) =>
            Polygons.Union(
                bars.Where(b => (b.Item1, b.Item2) != (b.Item3, b.Item4))
                    .Select(b =>
                        Polygons.Stroke(
                            new Polyline([
                                new(b.Item1 * 14_000, b.Item2 * 14_000),
                                new(b.Item3 * 14_000, b.Item4 * 14_000),
                            ]),
                            width,
                            Cap.Butt,
                            Join.Round
                        )
                    )
            )
    );

    [Fact]
    public void APlainColumnIsTheMeasure()
    {
        var columns = OutlineColumns.From(OutlineColumnsTests.Shape("bar"), Widest);
        Assert.InRange(Layers(Sew(columns, OutlineColumnsTests.Shape("bar"))), 2.5, PlainLayers);
    }

    /// <summary>Thread per area of a plain column is two threads in a spacing: 2 layers of 0.4 mm at 0.4 mm.</summary>
    [Theory]
    [InlineData(3000, 12_000)]
    [InlineData(5000, 30_000)]
    [InlineData(7500, 60_000)]
    public void AStraightColumnHasTwoThreadsInASpacing(int width, int length)
    {
        var column = new Column([new(new(0, 0), new(0, width)), new(new(length, 0), new(length, width))]);
        var thread = Satin(Sew([column], ColumnGround.Of([column]), underlay: [], pull: 0));
        // Crossings lean by half a spacing, and both ends have one or two more.
        var crossing = Math.Sqrt(((double)width * width) + (Spacing * Spacing / 4));
        Assert.InRange(thread, length / (Spacing / 2) * width, ((length / (Spacing / 2)) + 4) * crossing);
    }

    /// <summary>Area of a ring: π (R² - r²). From its outline and as a stroke its columns have it, and the thread that goes with it.</summary>
    [Theory]
    [InlineData(10, 6)]
    [InlineData(20, 17)]
    [InlineData(6, 1.5)]
    public void ARingHasItsArea(double outer, double inner)
    {
        var ground = Polygons.FromRings(
            [OutlineSamples.Circle(0, 0, outer, 720), OutlineSamples.Circle(0, 0, inner, 720)],
            FillRule.EvenOdd
        );
        var middle = OutlineSamples.Circle(0, 0, (outer + inner) / 2, 720).Points;
        var stroke = StrokeColumns.From(
            new Polyline([.. middle, middle[0]]),
            (outer - inner) * 1000,
            Cap.Butt,
            Join.Round,
            4
        );
        var area = Math.PI * ((outer * outer) - (inner * inner));
        foreach (var columns in new[] { OutlineColumns.From(ground, Widest), stroke })
        {
            Assert.InRange(ColumnGround.Of(columns).Area / 1e6, area * 0.995, area * 1.005);
            // 2 π R / (spacing / 2) crossings of R - r, of which those that are crowded inside are up to a fifth shorter
            // in the mean; the closing overlap and slanting crossings add a little.
            var thread = Satin(Sew(columns, ground, underlay: [], pull: 0)) / 1000;
            var full = 2 * Math.PI * outer / (Spacing / 2000) * (outer - inner);
            Assert.InRange(thread, full * 0.75, full * 1.05);
        }
    }

    /// <summary>
    /// Arc length of r = a t from 0 to T: a/2 (T sqrt(1 + T²) + asinh T). A band about it is as long as its middle line,
    /// and its area is width times length, while it is narrower than twice the least radius of curvature.
    /// </summary>
    [Fact]
    public void ASpiralHasItsLengthAndArea()
    {
        const double A = 1.2,
            From = Math.PI,
            To = 4 * Math.PI,
            Width = 2.5;
        double Length(double t) => A / 2 * ((t * Math.Sqrt(1 + (t * t))) + Math.Asinh(t));
        var spiral = new Polyline([
            .. Enumerable
                .Range(0, 721)
                .Select(i => From + ((To - From) * i / 720))
                .Select(t => Point.FromMillimetres(A * t * Math.Cos(t), A * t * Math.Sin(t))),
        ]);
        var ground = Polygons.Stroke(spiral, Width * 1000, Cap.Butt, Join.Round);
        var length = Length(To) - Length(From);
        foreach (
            var columns in new[]
            {
                StrokeColumns.From(spiral, Width * 1000, Cap.Butt, Join.Round, 4),
                OutlineColumns.From(ground, Widest),
            }
        )
        {
            var rungs = Assert.Single(columns).Rungs;
            var middle = new Polyline([.. rungs.Select(r => r.Middle)]).Length / 1000;
            Assert.InRange(middle, length * 0.985, length * 1.005);
            Assert.InRange(ColumnGround.Of(columns).Area / 1e6, length * Width * 0.99, length * Width * 1.005);
        }
    }

    /// <summary>Outside a curve penetrations follow each other at the spacing, wherever one looks.</summary>
    [Theory]
    [InlineData(8, 3)]
    [InlineData(12, 6)]
    [InlineData(25, 5)]
    public void TheOutsideOfARingIsEvenlyDense(double radius, double width)
    {
        var circle = OutlineSamples.Circle(0, 0, radius, 360).Points;
        var columns = StrokeColumns.From(new Polyline([.. circle, circle[0]]), width * 1000, Cap.Butt, Join.Round, 4);
        var outside = Sew(columns, ColumnGround.Of(columns), underlay: [], pull: 0)
            .SelectMany(b => b.Stitches)
            .Where(s => s.Use == StitchUse.Satin && s.At.DistanceTo(default) > ((radius + (width / 2)) * 1000) - 120)
            .Select(s => s.At)
            // Once round; what closes the ring lies over its start.
            .Take((int)(2 * Math.PI * (radius + (width / 2)) * 1000 / Spacing))
            .ToList();
        var gaps = outside.Zip(outside.Skip(1)).Select(p => p.First.DistanceTo(p.Second)).ToList();
        // On the tape's grid a penetration lies up to 0.07 mm beside its place.
        Assert.InRange(gaps.Average(), Spacing - 20, Spacing + 20);
        Assert.All(gaps, gap => Assert.InRange(gap, Spacing - 150, Spacing + 150));
    }

    [Fact]
    public void StitchesAboveTheWidestAreSplit()
    {
        var column = new Column([new(new(0, 0), new(0, 14_000)), new(new(20_000, 0), new(20_000, 14_000))]);
        var blocks = Sew([column], ColumnGround.Of([column]));
        Assert.All(
            blocks.SelectMany(Sewn.Pairs).Where(p => p.B.Use == StitchUse.Satin),
            p => Assert.True(p.A.At.DistanceTo(p.B.At) <= StitchRules.WidestSatin + StitchRules.GridSlack)
        );
    }

    [Fact]
    public void AnyLetterIsCoveredWithoutAPileOfThread() => Letters.Holds(Check, cases: 60);

    [Theory]
    [MemberData(nameof(OutlineColumnsTests.Shapes), MemberType = typeof(OutlineColumnsTests))]
    public void EveryShapeIsCoveredWithoutAPileOfThread(string name) => Check(OutlineColumnsTests.Shape(name));

    /// <summary>A stroke's pointed corner is mitred: thread does not gather at its inner corner, nor in its tip.</summary>
    [Theory]
    [InlineData(20)]
    [InlineData(36)]
    [InlineData(60)]
    [InlineData(90)]
    [InlineData(115)]
    public void APointedCornerIsMitred(double degrees)
    {
        var (sin, cos) = Math.SinCos(degrees * Math.PI / 180);
        var path = new Polyline([
            new(40_000, 0),
            new(0, 0),
            new((int)Math.Round(40_000 * cos), (int)Math.Round(40_000 * sin)),
        ]);
        var columns = StrokeColumns.From(path, 4000, Cap.Butt, Join.Mitre, 10);
        var ground = ColumnGround.Of(columns);
        var blocks = Sew(columns, ground);
        Assert.InRange(Layers(blocks), 2, MostLayers - 2);
        Assert.InRange(Sewn.Covered(ground, blocks, StitchUse.Satin), 0.97, 1);
    }

    private static void Check(Region ground)
    {
        var columns = OutlineColumns.From(ground, Widest);
        // Rows serve what columns do not fit.
        if (columns.IsEmpty)
            return;
        var blocks = Sew(columns, ground);
        Assert.All(blocks, Sewn.AssertSewable);
        Assert.InRange(Sewn.Covered(ground, blocks, StitchUse.Satin), 0.97, 1);
        Assert.InRange(Layers(blocks), 1, MostLayers);
        Assert.InRange(Holes(blocks), 1, MostHoles);
    }

    private static double Satin(ImmutableArray<Block> blocks) =>
        blocks.SelectMany(Sewn.Pairs).Where(p => p.B.Use == StitchUse.Satin).Sum(p => p.A.At.DistanceTo(p.B.At));

    /// <summary>Thread on the fullest square millimetre, wherever it lies: squares stand a quarter of a millimetre apart.</summary>
    private static double Layers(ImmutableArray<Block> blocks)
    {
        const int Pieces = 50;
        var thread = new Dictionary<(int, int), double>();
        foreach (var (a, b) in blocks.SelectMany(Sewn.Pairs))
        {
            var length = a.At.DistanceTo(b.At);
            var count = (int)Math.Ceiling(length / Pieces);
            for (var i = 0; i < count; i++)
                Add(thread, a.At.Towards(b.At, (i + 0.5) / count), length / count * 0.4 / 1000);
        }
        return Fullest(thread);
    }

    private static double Holes(ImmutableArray<Block> blocks)
    {
        var holes = new Dictionary<(int, int), double>();
        foreach (var stitch in blocks.SelectMany(b => b.Stitches).Where(s => s.Use == StitchUse.Satin))
            Add(holes, stitch.At, 1);
        return Fullest(holes);
    }

    private static void Add(Dictionary<(int X, int Y), double> cells, Point at, double what)
    {
        var cell = ((int)Math.Floor(at.X / 250.0), (int)Math.Floor(at.Y / 250.0));
        cells[cell] = cells.GetValueOrDefault(cell) + what;
    }

    private static double Fullest(Dictionary<(int X, int Y), double> cells) =>
        cells.Keys.Max(c => Enumerable.Range(0, 16).Sum(i => cells.GetValueOrDefault((c.X - (i % 4), c.Y - (i / 4)))));

    private static ImmutableArray<Block> Sew(
        ImmutableArray<Column> columns,
        Region ground,
        ImmutableArray<UnderlayKind>? underlay = null,
        int pull = 200
    ) =>
        SatinStitcher.Stitch(
            new SatinPiece
            {
                Shape = new SatinShape
                {
                    Id = "satin",
                    Place = new Place("test.svg", 1, 1),
                    Thread = 0,
                    Style = new()
                    {
                        RowSpacing = (int)Spacing,
                        StitchLength = 4000,
                        Pull = pull,
                        Underlay = underlay ?? [UnderlayKind.Edge],
                    },
                    Columns = columns,
                    Footprint = ground,
                },
                Hooping = 0,
                Columns = columns,
            }
        );
}
