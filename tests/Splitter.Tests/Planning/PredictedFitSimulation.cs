using System.Collections.Immutable;
using Splitter.Geometry;
using Splitter.Planning;
using Splitter.Planning.Marks;
using Splitter.Planning.Order;

namespace Splitter.Tests.Planning;

/// <summary>
/// The prediction against what it predicts: every hooping's corners are set with normal errors, fitted by least squares
/// (rigid, Umeyama 1991, IEEE TPAMI 13(4):376-380, in its 2-D form), and the fits are chained.
/// </summary>
public sealed class PredictedFitSimulation
{
    private const int Trials = 20_000;

    /// <summary>The figure that design.md asks for.</summary>
    private const double Share = 0.05;

    /// <summary>One standard deviation per axis, µm.</summary>
    private const double Accuracy = 300;

    [Theory]
    [InlineData("0,0 130,0", "65,40")]
    [InlineData("0,0 130,0 0,180", "130,180")]
    [InlineData("0,0 130,0 130,180 0,180", "65,90")]
    [InlineData("0,0 60,8 120,2", "60,150")]
    public void OneHooping(string corners, string at) => Check([corners], at);

    [Theory]
    [InlineData("0,0 120,0 60,8", "0,110 120,110", "60,200")]
    [InlineData("0,0 0,100", "110,0 110,100 105,50", "200,30")]
    public void HoopingsInAChain(string first, string second, string at) => Check([first, second], at);

    [Fact]
    public void ALongChain() =>
        Check(["0,0 100,0 50,8", "0,100 100,100", "0,200 100,200 40,205", "0,300 100,300"], "90,380");

    private static void Check(string[] chain, string at)
    {
        var place = Points(at)[0];
        var corners = chain.SelectMany((marks, i) => Points(marks).Select((p, k) => (p, k, i)));
        var fit = new PredictedFit(
            Samples.Recipe(Samples.Hoop(100, 100)) with
            {
                Registration = new() { Accuracy = (int)Accuracy },
            },
            new Sequence([.. Enumerable.Range(0, chain.Length + 1)], [null, .. Enumerable.Range(0, chain.Length)]),
            [.. corners.Select(c => new Corner($"{c.i}-{c.k}", c.p, c.p, c.p, c.i, [c.i + 1]))]
        );
        var predicted = fit.Misfit(0, chain.Length, place);

        var errors = new Normals(20_171);
        var sum = 0.0;
        for (var trial = 0; trial < Trials; trial++)
        {
            // From the last hooping to the first: each maps a place of its own part onto its donor's.
            (double X, double Y) moved = (place.X, place.Y);
            foreach (var marks in chain.Reverse())
                moved = Set(Points(marks), errors)(moved);
            sum += Math.Pow(moved.X - place.X, 2) + Math.Pow(moved.Y - place.Y, 2);
        }
        Assert.InRange(predicted / Math.Sqrt(sum / Trials), 1 - Share, 1 + Share);
    }

    /// <summary>The rigid move that fits marks to where they were set.</summary>
    private static Func<(double X, double Y), (double X, double Y)> Set(ImmutableArray<Point> marks, Normals errors)
    {
        var set = marks
            .Select(p => (X: p.X + (Accuracy * errors.Next()), Y: p.Y + (Accuracy * errors.Next())))
            .ToArray();
        var (mx, my) = (marks.Average(p => (double)p.X), marks.Average(p => (double)p.Y));
        var (sx, sy) = (set.Average(p => p.X), set.Average(p => p.Y));
        var (dot, cross) = (0.0, 0.0);
        for (var i = 0; i < set.Length; i++)
        {
            var (ax, ay, bx, by) = (marks[i].X - mx, marks[i].Y - my, set[i].X - sx, set[i].Y - sy);
            dot += (ax * bx) + (ay * by);
            cross += (ax * by) - (ay * bx);
        }
        var (sin, cos) = Math.SinCos(Math.Atan2(cross, dot));
        return p => (sx + ((p.X - mx) * cos) - ((p.Y - my) * sin), sy + ((p.X - mx) * sin) + ((p.Y - my) * cos));
    }

    private static ImmutableArray<Point> Points(string text) =>
        [
            .. text.Split(' ')
                .Select(c => c.Split(',').Select(double.Parse).ToArray())
                .Select(c => Point.FromMillimetres(c[0], c[1])),
        ];

    /// <summary>Standard normal numbers by Box and Muller 1958 from a seed.</summary>
    private sealed class Normals(int seed)
    {
        private readonly Random random = new(seed);

        internal double Next() =>
            Math.Sqrt(-2 * Math.Log(1 - random.NextDouble())) * Math.Cos(2 * Math.PI * random.NextDouble());
    }
}
