using CsCheck;
using Splitter.Artwork.Svg;
using Splitter.Artwork.Svg.Paths;

namespace Splitter.Tests.Artwork.Svg;

/// <summary>Path data: its grammar, and lengths, areas and boxes known from outside.</summary>
public class PathTests
{
    /// <summary>Flattening for the checks, user units: lengths then miss by far less than the digits compared.</summary>
    private const double Fine = 1e-6;

    /// <summary>Lengths computed independently (SVG 1.1's own example paths; the ellipse by the complete elliptic integral).</summary>
    [Theory]
    [InlineData("M0 0C0 100 100 100 100 0", 200)]
    [InlineData("M100,200C100,100 250,100 250,200S400,300 400,200", 475.747298896)]
    [InlineData("M200,300Q400,50 600,300T1000,300", 975.542187791)]
    [InlineData("M-2 0A2 1 0 0 1 2 0A2 1 0 0 1 -2 0Z", 9.688448220547675)]
    [InlineData("M300,200h-150a150,150 0 1,0 150,-150z", 300 + (225 * Math.PI))]
    public void A_path_has_this_length(string data, double length) => Assert.Equal(length, Length(Flat(data)), 3);

    /// <summary>6000 exactly: the curve is x(t), y(t) with an elementary integral. The circle's: three quarters of pi r².</summary>
    [Theory]
    [InlineData("M0 0C0 100 100 100 100 0", 6000)]
    [InlineData("M300,200h-150a150,150 0 1,0 150,-150z", 0.75 * Math.PI * 150 * 150)]
    public void A_path_has_this_area(string data, double area) => Assert.Equal(area, Math.Abs(Flat(data).Sum(Area)), 1);

    [Theory]
    [InlineData("M0 0C0 100 100 100 100 0", 0, 0, 100, 75)]
    [InlineData("M300,200h-150a150,150 0 1,0 150,-150z", 150, 50, 450, 350)]
    public void A_path_has_this_box(string data, double left, double top, double right, double bottom)
    {
        var points = Flat(data).SelectMany(p => p.Points).ToList();
        Assert.Equal(left, points.Min(p => p.X), 3);
        Assert.Equal(top, points.Min(p => p.Y), 3);
        Assert.Equal(right, points.Max(p => p.X), 3);
        Assert.Equal(bottom, points.Max(p => p.Y), 3);
    }

    [Theory]
    [InlineData("M1-2.5.5e1,3", "M1 -2.5 L5 3")]
    [InlineData("M1 2 3 4 5 6", "M1 2 L3 4 L5 6")]
    [InlineData("m1 2 3 4z3 4", "M1 2 L4 6 Z", 9)]
    [InlineData("m1 2 3 4zl3 4", "M1 2 L4 6 Z M1 2 L4 6")]
    [InlineData("M0,0H5V-5h-2v+1.z", "M0 0 L5 0 L5 -5 L3 -5 L3 -4 Z")]
    [InlineData("", "")]
    [InlineData("M10 20", "M10 20")]
    [InlineData("L1 2", "", 0)]
    [InlineData("M1 2 L3", "M1 2", 5)]
    [InlineData("M1 2 L3 4 X", "M1 2 L3 4", 10)]
    [InlineData("M1 2 L3 4 L5 NaN", "M1 2 L3 4", 13)]
    [InlineData("M1 2 L1e999 4", "M1 2", 6)]
    [InlineData("M1 2 a1 1 0 2 1 3 4", "M1 2", 12)]
    [InlineData("M1,2,", "M1 2", 4)]
    public void Path_data_mean_this(string data, string meaning, int? fault = null)
    {
        var (outline, at) = PathDataReader.Read(data);
        Assert.Equal(meaning, Written(outline));
        Assert.Equal(fault, at);
    }

    [Fact]
    public void Flags_of_arcs_need_no_separators() =>
        Assert.Equal(
            Length(Flat("M0 0 a 25 25 -30 0 1 50 -25 a 25 50 -30 1 0 50 -25")),
            Length(Flat("M0 0a25,25-30 0150-25a25 50-30 1050-25")),
            9
        );

    /// <summary>SVG 1.1, F.6.6: radii too short for the chord grow to half of it.</summary>
    [Fact]
    public void Short_radii_grow() => Assert.Equal(50 * Math.PI, Length(Flat("M0 0A1 1 0 0 1 100 0")), 4);

    [Fact]
    public void Every_curve_stays_within_the_tolerance() =>
        Gen.Double[-100, 100]
            .Array[8]
            .Holds(n =>
            {
                var path = new Outline();
                path.Begin(new(n[0], n[1])).Cubic(new(n[2], n[3]), new(n[4], n[5]), new(n[6], n[7]));
                var coarse = Flattening.Flatten(path, Matrix.Identity, 0.5)[0].Points;
                var fine = Flattening.Flatten(path, Matrix.Identity, 0.001)[0].Points;
                return fine.TrueForAll(p => Distance(coarse, p) <= 0.5 + 1e-9);
            });

    [Fact]
    public void Every_arc_ends_where_it_should_and_stays_within_the_tolerance() =>
        Gen.Select(Gen.Double[-50, 50].Array[5], Gen.Double[1, 50].Array[2], Gen.Select(Gen.Bool, Gen.Bool))
            .Holds(sample =>
            {
                var (n, radii, flags) = sample;
                var path = new Outline();
                var start = path.Begin(new(n[0], n[1]));
                ArcReader.Add(start, new(radii[0], radii[1]), n[2], flags.Item1, flags.Item2, new(n[3], n[4]));
                var coarse = Flattening.Flatten(path, Matrix.Identity, 0.5)[0].Points;
                var fine = Flattening.Flatten(path, Matrix.Identity, 0.001)[0].Points;
                // The last step is as long as the one before: the arc reaches the point where it must end.
                var steps = fine.Zip(fine.Skip(1), (a, b) => (b - a).Length).ToList();
                return fine.TrueForAll(p => Distance(coarse, p) <= 0.5 + 1e-6)
                    && (steps.Count < 8 || steps[^1] <= (2 * steps[^2]) + 1e-6);
            });

    [Fact]
    public void Any_text_is_read_without_harm() =>
        Gen.String[Gen.Char["MmZzLlHhVvCcSsQqTtAa0123456789.,-+eE \n"], 0, 60]
            .Holds(text =>
            {
                var (outline, fault) = PathDataReader.Read(text);
                return (fault is null || (fault >= 0 && fault <= text.Length))
                    && outline.Subpaths.TrueForAll(s => s.Strokes.TrueForAll(k => k.End.IsFinite));
            });

    /// <summary>What is drawn up to a mistake is what the text before it draws.</summary>
    [Fact]
    public void What_stands_before_a_mistake_is_drawn() =>
        Gen.Int[-99, 99]
            .Array[2, 12]
            .Where(n => n.Length % 2 == 0)
            .Holds(n =>
            {
                var good = "M" + string.Join(' ', n);
                return Written(PathDataReader.Read(good + " L 5 x").Outline)
                    == Written(PathDataReader.Read(good).Outline);
            });

    /// <summary>A length is what the dashes and the gaps come to: the pattern goes on round corners.</summary>
    [Fact]
    public void Dashes_cover_their_share()
    {
        var dashes = Dashes.Cut(Flat("M0 0H10V10H0Z"), [3, 1], 0);
        Assert.Equal(30, Length(dashes!), 9);
        Assert.Equal(10, dashes!.Count);
        var shifted = Dashes.Cut(Flat("M0 0H10"), [3, 1], -1);
        Assert.Equal([1, 5, 9], shifted!.Select(d => d.Points[0].X));
    }

    private static List<FlatPath> Flat(string data)
    {
        var (outline, fault) = PathDataReader.Read(data);
        Assert.Null(fault);
        return Flattening.Flatten(outline, Matrix.Identity, Fine);
    }

    private static double Length(List<FlatPath> paths) =>
        paths.Sum(p => Sides(p, p.Closed).Sum(s => (s.To - s.From).Length));

    private static double Area(FlatPath path) =>
        Sides(path, closed: true).Sum(s => (s.From.X * s.To.Y) - (s.To.X * s.From.Y)) / 2;

    private static IEnumerable<(Spot From, Spot To)> Sides(FlatPath path, bool closed)
    {
        var points = path.Points;
        for (var i = 1; i < points.Count; i++)
            yield return (points[i - 1], points[i]);
        if (closed)
            yield return (points[^1], points[0]);
    }

    private static double Distance(List<Spot> path, Spot p) =>
        path.Zip(path.Skip(1), (a, b) => (p - Nearest(a, b, p)).Length).Append((p - path[0]).Length).Min();

    private static Spot Nearest(Spot a, Spot b, Spot p)
    {
        var d = b - a;
        var length = (d.X * d.X) + (d.Y * d.Y);
        var share = length == 0 ? 0 : ((p - a).X * d.X + (p - a).Y * d.Y) / length;
        return a.Towards(b, Math.Clamp(share, 0, 1));
    }

    private static string Written(Outline outline) =>
        string.Join(
            ' ',
            outline.Subpaths.SelectMany(s =>
                s.Strokes.Select(k => FormattableString.Invariant($"L{k.End.X} {k.End.Y}"))
                    .Prepend(FormattableString.Invariant($"M{s.Start.X} {s.Start.Y}"))
                    .Concat(s.Closed ? ["Z"] : [])
            )
        );
}
