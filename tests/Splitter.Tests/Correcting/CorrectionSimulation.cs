using System.Collections.Immutable;
using Splitter.Correcting;
using Splitter.Geometry;
using Splitter.Planning;
using Splitter.Planning.Fit;
using Splitter.Recipes;
using Splitter.Tests.Planning.Fit;

namespace Splitter.Tests.Correcting;

/// <summary>
/// Measure, correct, sew: hoopings are set with random errors on cloth that gives, offsets are read with random errors, the part
/// is moved by them, and what it then misses is compared with what was expected.
/// </summary>
public sealed class CorrectionSimulation
{
    private const int Trials = 20_000;

    /// <summary>The figure that is asked for.</summary>
    private const double Share = 0.05;

    private static readonly Recipe Stiff = Samples.Recipe(Samples.Hoop(100, 100));

    private static readonly Recipe Giving = Stiff with
    {
        Cloth = new()
        {
            Stretch = new()
            {
                Warp = 0.001,
                Weft = 0.002,
                Bias = 0.003,
                WarpDirection = 70,
            },
        },
    };

    public static TheoryData<string, string, string, bool> Hoopings
    {
        get
        {
            var data = new TheoryData<string, string, string, bool>();
            foreach (var gives in new[] { false, true })
            {
                // Corners of each hooping by its donor; places measured of the last, by whose work is there; a place of a join.
                data.Add("0>1:0,0 100,0 50,8", "0:0,20 0:90,15", "0:50,80", gives);
                data.Add("0>1:0,0 100,0 50,8", "0:0,20 0:90,15 0:40,60", "0:95,90", gives);
                data.Add(
                    "0>1:100,0 100,90; 0>2:0,100 90,100; 1>2:110,100",
                    "0:20,105 1:150,102 0:80,95",
                    "1:180,100",
                    gives
                );
                data.Add("0>1:100,0 100,90; 1>2:200,10 200,80", "1:205,20 1:195,90", "0:210,50", gives);
            }
            return data;
        }
    }

    [Theory]
    [MemberData(nameof(Hoopings))]
    public void WhatIsExpectedComesOut(string corners, string measured, string at, bool gives)
    {
        var (recipe, given, seen) = (gives ? Giving : Stiff, Corners(corners), Places(measured));
        var last = given.Max(c => c.Receivers[0]);
        var (other, place) = Places(at)[0];
        var expected = new PredictedFit(
            recipe,
            last + 1,
            given,
            new(last, [.. seen.Select(s => new TakenCorner(s.At, s.Donor))])
        );
        var sum = 0.0;
        Simulate(
            recipe,
            given,
            seen,
            (placed, offsets, _, normal) =>
            {
                var move = RigidMove.Best(
                    [.. offsets.Select(o => new Vector(o.At.X, o.At.Y))],
                    [.. offsets.Select(o => new Vector(o.At.X, o.At.Y) - o.Offset)]
                );
                var mine = placed[last](move.Of(place));
                var theirs = placed[other](place);
                var (dx, dy) = (
                    normal.OnTape(mine.X) - normal.OnTape(theirs.X),
                    normal.OnTape(mine.Y) - normal.OnTape(theirs.Y)
                );
                sum += (dx * dx) + (dy * dy);
            }
        );
        var (simulated, predicted) = (Math.Sqrt(sum / Trials), expected.Budget(other, last, place).Total);
        Assert.True(
            Math.Abs((predicted / simulated) - 1) <= Share,
            FormattableString.Invariant($"expected {predicted:0} µm, simulated {simulated:0} µm")
        );
    }

    /// <summary>
    /// Errors as they are expected are taken for stretched cloth or for a mistake once in a hundred times; the bounds are five
    /// standard deviations of that count.
    /// </summary>
    [Theory]
    [MemberData(nameof(Hoopings))]
    public void ChanceIsTakenForStretchOnceInAHundredTimes(string corners, string measured, string at, bool gives)
    {
        _ = at;
        var refused = 0;
        Simulate(
            gives ? Giving : Stiff,
            Corners(corners),
            Places(measured),
            (_, _, judged, _) => refused += judged.Verdict is Verdict.Stretched or Verdict.Contradictory ? 1 : 0
        );
        Assert.InRange(refused / (double)Trials, 0.0065, 0.0135);
    }

    /// <summary>
    /// A stretch that is followed is found in figures that err, and what it adds grows beyond the places that were measured. The
    /// other part's place is far outside of them; without what following adds, little more than half of the
    /// error would be expected there.
    /// </summary>
    [Theory]
    [InlineData("0:0,20 0:90,15 0:40,60", "0:150,90")]
    [InlineData("0:0,0 0:80,10 0:75,70 0:10,60", "0:40,160")]
    public void WhatIsExpectedWhereAStretchIsFollowedComesOut(string measured, string at)
    {
        var (given, seen, place) = (Corners("0>1:0,0 100,0 50,8"), Places(measured), Places(at)[0].At);
        var stretch = new GrainStretch(Stiff.Cloth.Stretch.WarpDirection, 0.025, -0.025, default);
        var (sum, followed) = (0.0, new List<Judgement>());
        Simulate(
            Stiff,
            given,
            seen,
            (placed, _, judged, normal) =>
            {
                if (judged.Verdict != Verdict.Stretched || judged.Stretch.Warp == 0 || judged.Stretch.Weft == 0)
                    return;
                followed.Add(judged);
                var laid = stretch.Of(judged.Lays(place));
                var mine = placed[1](laid.From(default));
                var (dx, dy) = (
                    normal.OnTape(mine.X) - normal.OnTape(place.X),
                    normal.OnTape(mine.Y) - normal.OnTape(place.Y)
                );
                sum += (dx * dx) + (dy * dy);
            },
            stretch
        );
        var fit = new PredictedFit(
            Stiff,
            2,
            given,
            new(1, [.. seen.Select(s => new TakenCorner(s.At, s.Donor))], followed[0].Followed!.At)
        );
        var (simulated, predicted) = (Math.Sqrt(sum / followed.Count), fit.Budget(0, 1, place).Total);
        // One in a hundred is taken for a contradiction.
        Assert.InRange(followed.Count, Trials * 98 / 100, Trials);
        Assert.True(
            Math.Abs((predicted / simulated) - 1) <= Share,
            FormattableString.Invariant($"expected {predicted:0} µm, simulated {simulated:0} µm")
        );
    }

    [Fact]
    public void ClothThatStretchedIsFoundAndFollowed()
    {
        var seen = ImmutableArray.Create((0, -40, -50), (0, 45, -45), (0, 40, 55), (0, -42, 48));
        // Longer by 1 % along x, the weft, and shorter by 0.5 % along y, the warp; shifted by 0.4 mm.
        var judged = Judged(seen, (x, y) => new((0.01 * x) + 400, -0.005 * y));
        Assert.Equal(Verdict.Stretched, judged.Verdict);
        Assert.Equal(-0.01, judged.Stretch.Weft, 4);
        Assert.Equal(0.005, judged.Stretch.Warp, 4);
        Assert.InRange(judged.Residual, 0, 10);
    }

    /// <summary>Nothing was measured across the way between two corners, and cloth may have drawn in there.</summary>
    [Theory]
    [InlineData(60, 5)]
    [InlineData(5, 60)]
    public void TwoPlacesTellOfTheWayBetweenThemAlone(int x, int y)
    {
        var judged = Judged([(0, 0, 0), (0, x, y)], (u, v) => new(0.02 * u, 0.02 * v));
        Assert.Equal(Verdict.Stretched, judged.Verdict);
        Assert.Equal(x > y, judged.Stretch.Weft != 0);
        Assert.Equal(x < y, judged.Stretch.Warp != 0);
    }

    [Fact]
    public void TwoPlacesNearEachOtherTellNothingOfAStretch() =>
        Assert.Equal(Verdict.Contradictory, Judged([(0, 0, 0), (0, 20, 20)], (x, y) => new(0.1 * x, 0.1 * y)).Verdict);

    /// <summary>Longer along x alone; what was read wrongly upwards, 0.1 mm, is not sewn.</summary>
    [Fact]
    public void OneStretchThatExplainsAllIsFollowedAlone()
    {
        var seen = ImmutableArray.Create((0, -40, -50), (0, 45, -45), (0, 40, 55), (0, -42, 48));
        var judged = Judged(seen, (x, y) => new(0.02 * x, y > 0 ? 100 : 0));
        Assert.Equal(Verdict.Stretched, judged.Verdict);
        Assert.Equal((true, 0.0), (judged.Stretch.Weft < -0.01, judged.Stretch.Warp));
    }

    [Fact]
    public void OneFigureThatDoesNotGoWithTheOthersIsContradicted()
    {
        var seen = ImmutableArray.Create((0, -40, -50), (0, 45, -45), (0, 40, 55), (0, -42, 48), (0, 0, 0));
        var judged = Judged(seen, (x, y) => new(x == 0 ? 3000 : 200, 0));
        Assert.Equal(Verdict.Contradictory, judged.Verdict);
    }

    [Theory]
    [InlineData(60, 0, 0, Verdict.Fits)]
    [InlineData(900, -300, 0, Verdict.Moved)]
    [InlineData(900, -300, 0.02, Verdict.Turned)]
    [InlineData(0, 0, 0.02, Verdict.Turned)]
    internal void WhatHasHappenedIsTold(double right, double down, double angle, Verdict verdict)
    {
        var seen = ImmutableArray.Create((0, -40, -50), (0, 45, 45));
        var judged = Judged(seen, (x, y) => new(right - (angle * y), down + (angle * x)));
        Assert.Equal((Verdict)verdict, judged.Verdict);
    }

    /// <summary>
    /// Corners near each other leave a donor turned, far off by more than this; that it may be the donor that erred is
    /// no reason to leave a part beside it.
    /// </summary>
    [Theory]
    [InlineData(100, Verdict.Fits)]
    [InlineData(800, Verdict.Moved)]
    internal void WhatMayBeTheDonorsErrorIsFollowedAllTheSame(double right, Verdict verdict)
    {
        var corners = Corners("0>1:0,0 10,0; 1>2:200,0 200,100");
        ImmutableArray<Sighting> seen =
        [
            .. new[] { At("200,0"), At("200,100") }.Select(at => new Sighting(at, 1, new(right, 0))),
        ];
        var fit = new PredictedFit(Stiff, 3, corners);
        Assert.True(fit.Budget(0, 1, seen[1].At).Total > right, "The donor errs less than this.");
        Assert.Equal((Verdict)verdict, Judgement.Of(Stiff, fit, 2, seen).Verdict);
    }

    private static Judgement Judged(
        ImmutableArray<(int Donor, int X, int Y)> places,
        Func<double, double, Vector> offset
    )
    {
        var corners = Corners("0>1:-50,-50 50,50");
        return Judgement.Of(
            Stiff,
            new PredictedFit(Stiff, 2, corners),
            1,
            [
                .. places.Select(p =>
                {
                    var at = Point.FromMillimetres(p.X, p.Y);
                    return new Sighting(at, p.Donor, offset(at.X, at.Y));
                }),
            ]
        );
    }

    private static void Simulate(
        Recipe recipe,
        ImmutableArray<Corner> corners,
        ImmutableArray<(int Donor, Point At)> measured,
        Action<List<Func<Point, (double X, double Y)>>, ImmutableArray<Sighting>, Judgement, Normals> each,
        GrainStretch? stretched = null
    )
    {
        var stretch = stretched ?? GrainStretch.None;
        var normal = new Normals(40_913);
        var last = corners.Max(c => c.Receivers[0]);
        var fit = new PredictedFit(recipe, last + 1, corners);
        for (var trial = 0; trial < Trials; trial++)
        {
            var placed = new List<Func<Point, (double X, double Y)>> { p => (p.X, p.Y) };
            for (var i = 1; i <= last; i++)
            {
                var taken = corners.Where(c => c.Receivers.Contains(i)).ToArray();
                var set = taken
                    .Select(c => placed[c.Donor](c.At))
                    .Select(p => (p.X + Error(recipe.Registration.Accuracy), p.Y + Error(recipe.Registration.Accuracy)))
                    .ToArray();
                placed.Add(SimulatedHooping.Set([.. taken.Select(c => c.At)], set, recipe.Cloth.Stretch, normal));
            }
            var seen = measured
                .Select(m =>
                {
                    var laid = stretch.Of(new(m.At.X, m.At.Y)).From(default);
                    var (mine, theirs) = (placed[last](laid), placed[m.Donor](m.At));
                    return new Sighting(
                        m.At,
                        m.Donor,
                        new(
                            mine.X - normal.OnTape(theirs.X) + Error(recipe.Registration.Reading),
                            mine.Y - normal.OnTape(theirs.Y) + Error(recipe.Registration.Reading)
                        )
                    );
                })
                .ToImmutableArray();
            each(placed, seen, Judgement.Of(recipe, fit, last, seen), normal);
        }

        double Error(int deviation) => deviation * normal.Next();
    }

    private static ImmutableArray<Corner> Corners(string text) =>
        [
            .. from set in text.Split("; ")
            let two = set.Split('>', ':')
            from place in two[2].Split(' ')
            let at = At(place)
            select new Corner(set, at, at, at, int.Parse(two[0]), [int.Parse(two[1])]),
        ];

    private static ImmutableArray<(int Donor, Point At)> Places(string text) =>
        [.. text.Split(' ').Select(p => p.Split(':')).Select(p => (int.Parse(p[0]), At(p[1])))];

    private static Point At(string place)
    {
        var both = place.Split(',');
        return Point.FromMillimetres(double.Parse(both[0]), double.Parse(both[1]));
    }
}
