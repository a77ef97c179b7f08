using System.Text;
using System.Text.Json;
using CsCheck;

namespace Splitter.Tests.EndToEnd;

/// <summary>What a machine would sew, read by the tests' own tape reader and laid back by the manifest alone.</summary>
public sealed class PartsMeetTests
{
    /// <summary>A stitch this near to where a corner's arms meet hides the hole for the tack, in tenths of a millimetre.</summary>
    private const int Hidden = 15;

    [Theory]
    [InlineData("lighthouse-bay", "small")]
    [InlineData("lighthouse-bay", "large")]
    [InlineData("faroe-islands", "small")]
    [InlineData("faroe-islands", "large")]
    public void EveryStitchOfTheExamplesLiesInTheUsableFieldAndEveryCornerMeetsItself(string recipe, string hoop) =>
        Check(Examples.Made(recipe, hoop), clearance: 3);

    /// <summary>Random polygons, hoops and turns.</summary>
    [Fact]
    public void EveryStitchLiesInTheUsableFieldAndEveryCornerMeetsItself()
    {
        var points =
            from radii in Gen.Double[20, 95].Array[4, 12]
            select string.Join(
                ",",
                Enumerable
                    .Range(0, radii.Length + 1)
                    .Select(i =>
                        FormattableString.Invariant(
                            $"{100 + (radii[i % radii.Length] * Math.Cos(2 * Math.PI * i / radii.Length)):0.###} {100 + (radii[i % radii.Length] * Math.Sin(2 * Math.PI * i / radii.Length)):0.###}"
                        )
                    )
            );
        var requests =
            from outline in points
            from satin in points
            from width in Gen.Int[75, 130]
            from height in Gen.Int[90, 170]
            from clearance in Gen.Int[0, 5]
            from rope in Gen.Int[1, 8]
            from seams in Gen.Bool.Select(straight => straight ? "straight" : "least-visible")
            select (
                Clearance: clearance,
                Recipe: $$"""
                splitter: 1
                artwork:
                  shapes:
                    - { wkt: "POLYGON(({{outline}}))", id: ground, fill: "#336699" }
                    - { wkt: "LINESTRING({{satin}})", id: rope, stroke: "#993333", stroke-width: {{rope}} mm }
                    - { wkt: "LINESTRING({{outline}})", id: line, stroke: "#222222", stroke-width: 0.4 mm }
                hoops: [{ name: test, field: {{width}} x {{height}} mm }]
                fields: { clearance: {{clearance}} mm }
                overlap: { seams: {{seams}} }
                output: { folder: parts, files: [tape] }
                """
            );
        requests.Holds(
            r =>
            {
                var made = Pipeline.Make(new("random.yaml", Encoding.UTF8.GetBytes(r.Recipe), _ => default));
                Assert.True(made.Succeeded, string.Join("\n", made.Diagnostics));
                Check(made.Value, r.Clearance);
            },
            cases: 25
        );
    }

    private static void Check(Production made, int clearance)
    {
        var files = made.Sets.Single().Files.ToDictionary(f => f.Path.Split('/')[^1], f => f.Bytes.ToArray());
        using var manifest = JsonDocument.Parse(files["manifest.json"]);
        var hoop = manifest.RootElement.GetProperty("hoop");
        var halfU = (hoop.GetProperty("width_mm").GetDouble() / 2) - clearance;
        var halfV = (hoop.GetProperty("height_mm").GetDouble() / 2) - clearance;
        var seen = new Dictionary<string, List<(int X, int Y)>>();
        var bodies = new List<List<(int X, int Y)>>();
        var uses = new Dictionary<string, List<int>>();
        foreach (var part in manifest.RootElement.GetProperty("parts").EnumerateArray())
        {
            var letter = part.GetProperty("letter").GetString();
            var steps = PlainTape.Steps(files[$"part-{letter}.dst"]);
            foreach (var (u, v) in steps.SelectMany(s => s).SelectMany(r => r))
                Assert.True(
                    Math.Abs(u) / 10.0 <= halfU && Math.Abs(v) / 10.0 <= halfV,
                    $"part {letter}: a stitch at {u / 10.0}, {v / 10.0}"
                );
            var kinds = part.GetProperty("steps")
                .EnumerateArray()
                .Select(s => s.GetProperty("kind").GetString()!)
                .ToList();
            bodies.Add([
                .. steps
                    .Where((_, i) => kinds[i] == "body")
                    .SelectMany(s => s)
                    .SelectMany(r => r)
                    .Select(p => LaidBack.OnDrawing(part, p)),
            ]);
            foreach (var corner in part.GetProperty("corners").EnumerateArray())
            {
                var step = steps[
                    kinds.IndexOf(corner.GetProperty("sewn").GetString() == "first" ? "corners" : "next-corners")
                ];
                var id = corner.GetProperty("id").GetString()!;
                var at = (
                    X: (int)Math.Round(corner.GetProperty("x_mm").GetDouble() * 10),
                    Y: (int)Math.Round(corner.GetProperty("y_mm").GetDouble() * 10)
                );
                Assert.Contains(at, step.SelectMany(r => r).Select(p => LaidBack.OnDrawing(part, p)));
                if (!seen.TryGetValue(id, out var places))
                {
                    seen[id] = places = [];
                    uses[id] = [];
                }
                places.Add(at);
                uses[id].Add(bodies.Count - 1);
            }
        }
        foreach (var (id, places) in seen)
        {
            Assert.True(places.Count >= 2, $"corner {id} is in one part only");
            var at = Assert.Single(places.Distinct());
            // The donor sews it after its body; until the last of those that are set by it, nobody else sews there.
            for (var between = uses[id][0] + 1; between < uses[id][^1]; between++)
                Assert.DoesNotContain(
                    bodies[between],
                    p => Math.Abs(p.X - at.X) <= Hidden && Math.Abs(p.Y - at.Y) <= Hidden
                );
        }
    }
}
