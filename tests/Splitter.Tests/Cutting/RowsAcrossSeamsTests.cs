using System.Collections.Immutable;
using CsCheck;
using Splitter.Artwork;
using Splitter.Cutting;
using Splitter.Geometry;
using Splitter.Planning;
using Splitter.Recipes;
using Splitter.Stitching;

namespace Splitter.Tests.Cutting;

/// <summary>
/// The rows that are sewn on both sides of a straight seam through random shapes, parallel to it, across it and slanting:
/// one part is moved by all that is promised, in sixteen directions.
/// </summary>
public sealed class RowsAcrossSeamsTests
{
    /// <summary>Distance of rows, µm: a thread's width.</summary>
    private const int Spacing = 400;

    /// <summary>
    /// What the tape's grid adds to a gap, µm: a row lies up to half a step beside its place, and ends up to one before it.
    /// </summary>
    private const int OnTape = 100;

    /// <summary>By so much a row may end before its place, µm: a step of the tape along x and y, and half of one by rounding.</summary>
    private const int End = 250;

    /// <summary>Spots lie this far apart, µm.</summary>
    private const int Step = 100;

    private const int Overlap = 1000;

    private static readonly Gen<Case> Cases =
        from radii in Gen.Double[8, 16].Array[5, 12]
        from seam in Gen.Double[0, 180]
        from aside in Gen.Int[-3000, 3000]
        from between in Gen.OneOf(
            Gen.Const(0.0),
            Gen.Const(45.0),
            Gen.Const(90.0),
            Gen.Const(-45.0),
            Gen.Double[0, 180]
        )
        from edges in Gen.Frequency((3, Gen.Const(EdgeRule.Interleaved)), (1, Gen.Const(EdgeRule.Plain)))
        select new Case([.. radii], seam, aside, between, edges);

    [Fact]
    public void NoGapOpensThatIsWiderThanARow() =>
        Cases.Holds(
            c =>
            {
                var (shape, pieces) = Cut(c);
                var (first, second) = (Rows(pieces[0]), Rows(pieces[1]));
                // Its own edge moves away, too.
                var inside = Polygons.Offset(shape.Footprint, -(c.Promised + Spacing));
                var bare = new Cloth(inside.Bounds);
                bare.Sew(first, default);
                for (var way = 0; way < 16; way++)
                {
                    var cloth = bare.Copy();
                    var angle = way * Math.PI / 8;
                    cloth.Sew(second, new((int)(c.Promised * Math.Cos(angle)), (int)(c.Promised * Math.Sin(angle))));
                    Assert.Null(cloth.Bare(inside));
                }
            },
            cases: 40,
            print: c => c.ToString()
        );

    /// <summary>So the test sees gaps at all.</summary>
    [Theory]
    [InlineData(0)]
    [InlineData(45)]
    [InlineData(90)]
    public void ThreeRowsMoreThanIsPromisedOpenOne(double between)
    {
        var c = new Case([12, 12, 12, 12, 12, 12], 90, 0, between, EdgeRule.Plain);
        var (shape, pieces) = Cut(c);
        var cloth = new Cloth(shape.Footprint.Bounds);
        cloth.Sew(Rows(pieces[0]), default);
        cloth.Sew(Rows(pieces[1]), Case.Away(c.Seam + 90, c.Promised + (3 * Spacing)));
        Assert.NotNull(cloth.Bare(Polygons.Offset(shape.Footprint, -4000)));
    }

    /// <summary>Neighbouring rows end apart, by as much as the pattern says, on both sides of the seam.</summary>
    [Fact]
    public void NeighbouringRowsEndApart() =>
        Cases
            .Where(c => c.Edges == EdgeRule.Interleaved && Math.Abs(Math.Sin(c.Between * Math.PI / 180)) > 0.5)
            .Holds(
                c =>
                {
                    var (shape, pieces) = Cut(c);
                    var inside = Polygons.Containment(Polygons.Offset(shape.Footprint, -2 * Overlap));
                    foreach (var piece in pieces)
                    {
                        var past = Ends(piece, c, inside);
                        var pairs = past.Where(p => past.ContainsKey(p.Key + 1)).ToList();
                        foreach (var (row, end) in pairs)
                        {
                            var (less, more) = (Math.Min(end, past[row + 1]), Math.Max(end, past[row + 1]));
                            Assert.InRange(
                                less,
                                (Overlap * Overlaps.ShortShare) - End,
                                (Overlap * Overlaps.ShortShare) + OnTape
                            );
                            Assert.InRange(more, Overlap - End, Overlap + OnTape);
                        }
                    }
                },
                cases: 40,
                print: c => c.ToString()
            );

    /// <summary>
    /// Where a seam runs almost along the rows, none reaches further past it than all do: its thread would lie there
    /// twice, on the way there and back.
    /// </summary>
    [Theory]
    [InlineData(8, Overlap * Overlaps.ShortShare)]
    [InlineData(30, Overlap)]
    public void AlmostAlongTheSeamNoRowReachesFurtherThanAllDo(double between, double furthest)
    {
        var c = new Case([12, 12, 12, 12, 12, 12], 90, 0, between, EdgeRule.Interleaved);
        var (shape, pieces) = Cut(c);
        var inside = Polygons.Containment(Polygons.Offset(shape.Footprint, -2 * Overlap));
        Assert.All(pieces, p => Assert.InRange(Ends(p, c, inside).Values.Max(), furthest - End, furthest + OnTape));
    }

    /// <summary>
    /// Nor where it runs along them: a row of its own would lie further out, wherever the lattice lies, where it need not.
    /// </summary>
    [Fact]
    public void AlongTheSeamNoRowLiesFurtherThanAllReach()
    {
        List<double> furthest = [];
        for (var aside = 0; aside < 2 * Spacing; aside += 100)
        {
            var c = new Case([12, 12, 12, 12, 12, 12], 90, aside, 0, EdgeRule.Interleaved);
            foreach (var piece in Cut(c).Pieces)
                furthest.Add(
                    Rows(piece).Max(row => Math.Min(c.Past(row.A, piece.Hooping), c.Past(row.B, piece.Hooping)))
                );
        }
        const double All = Overlap * Overlaps.ShortShare;
        Assert.InRange(furthest.Max(), All - OnTape, All + OnTape);
    }

    /// <summary>For each row how far it is sewn past the seam, µm, where that is well inside the shape.</summary>
    private static Dictionary<int, double> Ends(FillPiece piece, Case c, Func<double, double, bool> inside)
    {
        var (sin, cos) = Math.SinCos(piece.Shape.Style.Angle * Math.PI / 180);
        var ends = new Dictionary<int, (double Past, Point At)>();
        foreach (var (a, b) in Rows(piece))
        {
            if (Math.Abs(Across(a) - Across(b)) > Spacing / 2)
                continue;
            var row = (int)Math.Floor(Across(a) / Spacing);
            foreach (var end in new[] { a, b })
                if (c.Past(end, piece.Hooping) is > 0 and var past && past > ends.GetValueOrDefault(row).Past)
                    ends[row] = (past, end);
        }
        return ends.Where(e => inside(e.Value.At.X, e.Value.At.Y)).ToDictionary(e => e.Key, e => e.Value.Past);

        double Across(Point p) => (p.Y * cos) - (p.X * sin);
    }

    private static ImmutableArray<(Point A, Point B)> Rows(FillPiece piece) =>
        [
            .. from block in FillStitcher.Stitch(piece)
            from pair in Stitching.Sewn.Pairs(block)
            where pair.B.Use == StitchUse.Fill
            select (pair.A.At, pair.B.At),
        ];

    private static (FillShape Shape, ImmutableArray<FillPiece> Pieces) Cut(Case c)
    {
        var hoop = new Hoop("test", 60_000, 60_000);
        var ground = Polygons.FromRings(
            [new Ring([.. c.Radii.Select((r, i) => Case.Middle + Case.Away(i * 360.0 / c.Radii.Length, r * 1000))])],
            FillRule.NonZero
        );
        var shape = Samples.Fill("blob", ground);
        shape = shape with { Style = shape.Style with { Angle = c.Seam + c.Between, Underlay = [] } };
        var plan = new Plan
        {
            Hoop = hoop,
            Hoopings = [Hooping(0), Hooping(1)],
            LowerBound = 2,
            Owners = [null],
            SeamLines = [],
            TurnedLayers = [],
            Joins =
            [
                new()
                {
                    Earlier = 0,
                    Later = 1,
                    WorstAt = Case.Middle,
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
        return (shape, [.. Cutter.Cut(Samples.Drawing(shape), plan, new() { Edges = c.Edges }).Cast<FillPiece>()]);

        Hooping Hooping(int index)
        {
            var field = new Field(hoop, Case.Middle, Turn.None, 0);
            return new()
            {
                Letter = Letters.Of(index),
                Field = field,
                Ground = field.Usable,
                Territory = c.Half(index),
                Takes = [],
                Gives = [],
                Alignments = [],
            };
        }
    }

    /// <param name="Radii">Of the shape, mm.</param>
    /// <param name="Seam">Its direction, degrees.</param>
    /// <param name="Aside">How far it passes the middle, µm.</param>
    /// <param name="Between">The angle from the seam to the rows.</param>
    private sealed record Case(ImmutableArray<double> Radii, double Seam, int Aside, double Between, EdgeRule Edges)
    {
        internal static readonly Point Middle = new(30_000, 30_000);

        internal double Promised => Overlaps.Together(Overlap, Edges);

        internal static Point Away(double angle, double by) =>
            new(
                (int)Math.Round(by * Math.Cos(angle * Math.PI / 180)),
                (int)Math.Round(by * Math.Sin(angle * Math.PI / 180))
            );

        internal Region Half(int index)
        {
            var (at, along, side) = (
                Middle + Away(Seam + 90, Aside),
                Away(Seam, 60_000),
                Away(Seam + (index == 0 ? -90 : 90), 60_000)
            );
            return Polygons.FromRings(
                [new Ring([at - along, at + along, at + along + side, at - along + side])],
                FillRule.NonZero
            );
        }

        /// <summary>How far past the seam a place of a part lies, µm.</summary>
        internal double Past(Point at, int index)
        {
            var (sin, cos) = Math.SinCos((Seam + 90) * Math.PI / 180);
            var across = ((at.X - Middle.X) * cos) + ((at.Y - Middle.Y) * sin) - Aside;
            return index == 0 ? across : -across;
        }
    }

    /// <summary>
    /// Spots, and which of them lie within half a row of a thread as wide as a row. A gap that is wider than a row has a spot
    /// that does not.
    /// </summary>
    private sealed class Cloth(Box box, bool[,] sewn)
    {
        private const int Reach = (Spacing / 2) + OnTape;

        private const int Around = Spacing + OnTape;

        internal Cloth(Box box)
            : this(box, new bool[(box.Width / Step) + 1, (box.Height / Step) + 1]) { }

        internal Cloth Copy() => new(box, (bool[,])sewn.Clone());

        internal void Sew(ImmutableArray<(Point A, Point B)> rows, Point by)
        {
            foreach (var (from, to) in rows)
            {
                var (a, b) = (from + by, to + by);
                double dx = b.X - a.X,
                    dy = b.Y - a.Y;
                var length = Math.Max(1, Math.Sqrt((dx * dx) + (dy * dy)));
                for (
                    var x = Index(Math.Min(a.X, b.X) - Around - box.Left, 0);
                    x <= Index(Math.Max(a.X, b.X) + Around - box.Left, 0);
                    x++
                )
                for (
                    var y = Index(Math.Min(a.Y, b.Y) - Around - box.Top, 1);
                    y <= Index(Math.Max(a.Y, b.Y) + Around - box.Top, 1);
                    y++
                )
                {
                    double px = box.Left + (x * Step) - a.X,
                        py = box.Top + (y * Step) - a.Y;
                    var (along, across) = (((px * dx) + (py * dy)) / length, Math.Abs((px * dy) - (py * dx)) / length);
                    var (ex, ey) = (
                        Math.Max(0, Math.Max(-along, along - length)),
                        Math.Max(0, across - (Spacing / 2.0))
                    );
                    sewn[x, y] |= (ex * ex) + (ey * ey) <= (double)Reach * Reach;
                }
            }

            int Index(int distance, int axis) => Math.Clamp(distance / Step, 0, sewn.GetLength(axis) - 1);
        }

        /// <summary>A spot of the ground that is bare; null without any.</summary>
        internal Point? Bare(Region ground)
        {
            var contains = Polygons.Containment(ground);
            for (var x = 0; x < sewn.GetLength(0); x++)
            for (var y = 0; y < sewn.GetLength(1); y++)
                if (!sewn[x, y] && contains(box.Left + (x * Step), box.Top + (y * Step)))
                    return new(box.Left + (x * Step), box.Top + (y * Step));
            return null;
        }
    }
}
