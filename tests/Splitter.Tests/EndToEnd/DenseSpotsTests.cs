using System.Text;
using System.Text.Json;
using CsCheck;
using Splitter.Geometry;
using Splitter.Parts;
using Splitter.Stitching;
using Xunit.Abstractions;

namespace Splitter.Tests.EndToEnd;

/// <summary>
/// Nothing above the limits is untold. Thread and needle holes of the parts are counted a second time, by taking samples
/// along four lines of each thread, and compared with what the manifest lists.
/// </summary>
public sealed class DenseSpotsTests(ITestOutputHelper output)
{
    /// <summary>Samples along a line, µm apart.</summary>
    private const double Step = 20;

    /// <summary>
    /// Layers that such samples miss or add on a square: each line ends on it up to 20 µm off, and counts for 0.1 mm of
    /// 1 mm²; some ten lines do so.
    /// </summary>
    private const double Sampling = 0.03;

    private const int MostHoles = 16;

    [Theory]
    [InlineData("lighthouse-bay", "small")]
    [InlineData("lighthouse-bay", "large")]
    [InlineData("faroe-islands", "small")]
    public void EverySpotOfTheRecipesIsTold(string recipe, string hoop) => Check(Examples.Made(recipe, hoop), 3);

    [Theory]
    [InlineData("flags", "gb")]
    [InlineData("flags", "np")]
    [InlineData("outline-icons", "umbrella")]
    public void EverySpotOfOpenDrawingsIsTold(string folder, string name) =>
        Check(Made(StitchSubject.OfDrawing(folder, name).Request), 3);

    /// <summary>But for a few square millimetres of the demo at seams, as measured.</summary>
    [Theory]
    [InlineData("lighthouse-bay", "small", 3)]
    [InlineData("lighthouse-bay", "large", 1)]
    [InlineData("faroe-islands", "large", 0)]
    public void RecipesHaveNoSquareMillimetreTooFull(string recipe, string hoop, double most) =>
        Assert.InRange(Told(Examples.Made(recipe, hoop).Sets.Single()).Sum(spot => spot.Area), 0, most);

    private static readonly Gen<string> Shape = Gen.Select(
        Gen.Int[0, 6],
        Gen.Int[0, 120],
        Gen.Int[0, 120],
        Gen.Int[3, 60],
        Gen.Int[1, 8],
        (kind, x, y, size, width) =>
            kind < 2
                ? $$"""wkt: "POLYGON (({{x}} {{y}}, {{x + size}} {{y}}, {{x + size}} {{y + size}}, {{x}} {{y
                    + (2 * width)}}, {{x}} {{y}}))", fill: "#14304f" """
                : $$"""wkt: "LINESTRING ({{x}} {{y}}, {{x + size}} {{y
                    + width}})", stroke: "#{{kind}}0304f", stroke-width: {{(kind < 4 ? width : 0)}}.4 mm """
    );

    /// <summary>Areas, columns and lines over each other in every way, in one part and in several.</summary>
    [Fact]
    public void EverySpotOfGeneratedWorksIsTold() =>
        Gen.Select(Shape.Array[3, 12], Gen.Int[1, 4], Gen.Bool)
            .Holds(
                (shapes, limit, isSmall) =>
                {
                    var recipe = $$"""
                        splitter: 1
                        artwork:
                          shapes:
                        {{string.Join('\n', shapes.Select((s, i) => $"    - {{ {s}, id: s{i} }}"))}}
                        cloth: { most-layers: {{limit}} }
                        hoops: [{ name: a, field: {{(isSmall ? "100 x 100" : "240 x 300")}} mm }]
                        output: { folder: parts, files: [tape] }
                        """;
                    Check(Made(new("a.yaml", Encoding.UTF8.GetBytes(recipe), _ => default)), limit);
                },
                cases: 12
            );

    private static Production Made(Request request)
    {
        var made = Pipeline.Make(request);
        Assert.True(made.Succeeded, string.Join('\n', made.Diagnostics));
        return made.Value;
    }

    private void Check(Production made, int limit)
    {
        var set = made.Sets.Single();
        var (layers, holes) = Counted(set);
        var told = Told(set);
        // What is surely too much, and what may be.
        var (sure, maybe) = (TooMuch(Sampling), TooMuch(-Sampling));
        output.WriteLine(
            FormattableString.Invariant(
                $"{layers.Values.Count(l => l > limit)} squares above {limit} of {layers.Count}, most {layers.Values.Max():0.0}, {told.Count} places, most holes {holes.Values.Max()}"
            )
        );
        foreach (var spot in told)
        {
            Assert.Contains(spot.At, maybe);
            Assert.InRange(spot.Layers, layers[spot.At] - Sampling, layers[spot.At] + Sampling + 0.01);
            Assert.NotEmpty(spot.Shapes);
        }
        Assert.InRange(told.Sum(t => t.Area), Area(sure), Area(maybe));
        var reached = Around(told.Select(t => t.At), maybe);
        Assert.Empty(sure.Except(reached));

        HashSet<(int, int)> TooMuch(double by) =>
            [
                .. layers.Where(l => l.Value > limit + by).Select(l => l.Key),
                .. holes.Where(h => h.Value > MostHoles).Select(h => h.Key),
            ];
    }

    private static List<((int X, int Y) At, double Area, double Layers, List<string> Shapes)> Told(PartSet set)
    {
        using var manifest = JsonDocument.Parse(
            set.Files.Single(f => f.Path.EndsWith("manifest.json", StringComparison.Ordinal)).Bytes
        );
        return manifest.RootElement.TryGetProperty("dense", out var dense)
            ?
            [
                .. dense
                    .EnumerateArray()
                    .Select(spot =>
                        (
                            (
                                (int)Math.Round(spot.GetProperty("at_mm")[0].GetDouble() * 2) - 1,
                                (int)Math.Round(spot.GetProperty("at_mm")[1].GetDouble() * 2) - 1
                            ),
                            spot.GetProperty("area_mm2").GetDouble(),
                            spot.GetProperty("layers").GetDouble(),
                            spot.GetProperty("shapes").EnumerateArray().Select(s => s.GetString()!).ToList()
                        )
                    ),
            ]
            : [];
    }

    /// <summary>
    /// Layers on each square millimetre that begins at a half of one: a thread covers 0.4 mm, and of a column's, which goes
    /// out and back, half of it counts.
    /// </summary>
    private static (Dictionary<(int, int), double> Layers, Dictionary<(int, int), int> Holes) Counted(PartSet set)
    {
        var (layers, holes) = (new Dictionary<(int, int), double>(), new Dictionary<(int, int), int>());
        foreach (var step in set.Parts.SelectMany(p => p.Steps).Where(s => s.Kind == StepKind.Body))
        {
            Point? needle = null;
            foreach (var stitches in step.Moves.Select(m => m.Block.Stitches))
            {
                foreach (var stitch in stitches.Skip(needle == stitches[0].At ? 1 : 0))
                foreach (var square in SquaresOver(stitch.At.X, stitch.At.Y))
                    holes[square] = holes.GetValueOrDefault(square) + 1;
                needle = stitches[^1].At;
                for (var i = 1; i < stitches.Length; i++)
                    Lay(layers, stitches[i - 1].At, stitches[i].At, stitches[i].Use == StitchUse.Satin ? 0.5 : 1);
            }
        }
        return (layers, holes);
    }

    private static void Lay(Dictionary<(int, int), double> layers, Point from, Point to, double weight)
    {
        var (dx, dy) = (to.X - (double)from.X, to.Y - (double)from.Y);
        var length = Math.Sqrt((dx * dx) + (dy * dy));
        var count = (int)Math.Ceiling(length / Step);
        foreach (var aside in (ReadOnlySpan<double>)[-150, -50, 50, 150])
            for (var k = 0; k < count; k++)
            {
                var share = (k + 0.5) / count;
                var squares = SquaresOver(
                    from.X + (dx * share) - (aside * dy / length),
                    from.Y + (dy * share) + (aside * dx / length)
                );
                foreach (var square in squares)
                    layers[square] = layers.GetValueOrDefault(square) + (weight * length / count * 100 / 1e6);
            }
    }

    /// <summary>By where they begin, in halves of a millimetre.</summary>
    private static (int, int)[] SquaresOver(double x, double y)
    {
        var (right, lower) = ((int)Math.Floor(x / 500), (int)Math.Floor(y / 500));
        return [(right, lower), (right - 1, lower), (right, lower - 1), (right - 1, lower - 1)];
    }

    /// <summary>That squares cover together, mm².</summary>
    private static double Area(HashSet<(int X, int Y)> squares) =>
        squares.SelectMany(s => new[] { s, (s.X + 1, s.Y), (s.X, s.Y + 1), (s.X + 1, s.Y + 1) }).Distinct().Count()
        / 4.0;

    /// <summary>All squares of some that can be reached from others over touching ones or such as lie over them.</summary>
    private static HashSet<(int, int)> Around(IEnumerable<(int X, int Y)> starts, HashSet<(int, int)> squares)
    {
        var reached = starts.ToHashSet();
        var open = new Queue<(int X, int Y)>(reached);
        while (open.TryDequeue(out var at))
            for (var n = 0; n < 25; n++)
                if ((at.X + (n % 5) - 2, at.Y + (n / 5) - 2) is var next && squares.Contains(next) && reached.Add(next))
                    open.Enqueue(next);
        return reached;
    }
}
