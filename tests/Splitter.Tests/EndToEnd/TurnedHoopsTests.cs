using System.Globalization;
using System.Text;
using System.Text.Json;

namespace Splitter.Tests.EndToEnd;

/// <summary>
/// The same work with its hoops turned upside down: the machine sews other numbers, the cloth gets the same stitches. Tapes
/// are read by the tests' own reader and laid back by the manifest alone.
/// </summary>
public sealed class TurnedHoopsTests
{
    [Theory]
    [InlineData(0, 180)]
    [InlineData(90, 270)]
    public void UpsideDownTheClothGetsTheSameStitches(int turn, int upsideDown)
    {
        var (across, down) = turn == 0 ? (115, 165) : (165, 115);
        var upright = Made(across, down, turn, turn);
        var turned = Made(across, down, upsideDown, upsideDown);
        var mixed = Made(across, down, turn, upsideDown);
        Assert.Equal(4, Cloth(upright).Count);
        Assert.Equal(Cloth(upright), Cloth(turned));
        Assert.Equal(Cloth(upright), Cloth(mixed));
        // What the machine gets does differ.
        Assert.NotEqual(upright["part-B.dst"], turned["part-B.dst"]);
        Assert.Equal(Marks(upright), Marks(turned));
        Assert.Equal(Marks(upright), Marks(mixed));
    }

    [Fact]
    public void StepsAndPicturesSayWhichWayTheClothLies()
    {
        foreach (var (turn, top) in new[] { (0, "top"), (90, "left"), (180, "bottom"), (270, "right") })
        {
            var (across, down) = turn % 180 == 0 ? (115, 165) : (165, 115);
            var files = Made(across, down, turn, turn);
            using var manifest = JsonDocument.Parse(files["manifest.json"]);
            foreach (var part in manifest.RootElement.GetProperty("parts").EnumerateArray())
            {
                Assert.Equal(turn, part.GetProperty("field").GetProperty("turn_deg").GetInt32());
                var stop = part.GetProperty("steps")[0].GetProperty("stop").GetString();
                Assert.Contains($"the top of the cloth towards the {top} of the hoop", stop, StringComparison.Ordinal);
            }
        }
    }

    /// <summary>The cloth in the throat, measured by the person's ruler: from the field's right edge as the machine holds it.</summary>
    [Theory]
    [InlineData(0, 500 - 50 - 115 - (130 / 2.0))]
    [InlineData(180, 50 + 115 - (130 / 2.0))]
    [InlineData(90, 600 - 60 - 115 - (130 / 2.0))]
    [InlineData(270, 60 + 115 - (130 / 2.0))]
    public void TheManifestAndTheStepsSayHowMuchClothLiesInTheThroat(int turn, double cloth)
    {
        // One field alone, its centre 115 mm right of and below the artwork's corner.
        var files = Made(
            $$"""
            splitter: 1
            artwork:
              shapes:
                - { wkt: "POLYGON((85 80, 145 80, 145 140, 85 140, 85 80))", id: patch, fill: "#336699" }
            cloth: { size: 500 x 600 mm, artwork-at: [50 mm, 60 mm], folds: { upright: 160 mm from left, level: 170 mm from top } }
            hoops: [{ name: test, field: 130 x 180 mm, throat: { side: right } }]
            fields: { place: [{ center: [115 mm, 115 mm], turn: {{turn}} }] }
            output: { folder: parts, files: [tape] }
            """
        );
        using var manifest = JsonDocument.Parse(files["manifest.json"]);
        var part = manifest.RootElement.GetProperty("parts")[0];
        Assert.Equal(cloth, part.GetProperty("field").GetProperty("in_throat_mm").GetDouble());
        Assert.Contains(
            string.Create(CultureInfo.InvariantCulture, $"Roll up the {cloth:0} mm of cloth at the right of the hoop"),
            part.GetProperty("steps")[0].GetProperty("stop").GetString(),
            StringComparison.Ordinal
        );
    }

    /// <summary>Part by part, step by step, run by run: all places that the needle goes to on the drawing.</summary>
    private static List<string> Cloth(Dictionary<string, byte[]> files)
    {
        using var manifest = JsonDocument.Parse(files["manifest.json"]);
        return
        [
            .. manifest
                .RootElement.GetProperty("parts")
                .EnumerateArray()
                .Select(part =>
                    string.Join(
                        "\n",
                        PlainTape
                            .Steps(files[$"part-{part.GetProperty("letter").GetString()}.dst"])
                            .Select(step =>
                                string.Join(
                                    " | ",
                                    step.Select(run => string.Join(" ", run.Select(p => LaidBack.OnDrawing(part, p))))
                                )
                            )
                    )
                ),
        ];
    }

    /// <summary>Letters, names and places of corners, and joins.</summary>
    private static string Marks(Dictionary<string, byte[]> files)
    {
        using var manifest = JsonDocument.Parse(files["manifest.json"]);
        var parts = manifest
            .RootElement.GetProperty("parts")
            .EnumerateArray()
            .Select(p => p.GetProperty("letter").GetString() + p.GetProperty("corners").GetRawText());
        return string.Concat(parts) + manifest.RootElement.GetProperty("joins").GetRawText();
    }

    private static Dictionary<string, byte[]> Made(int across, int down, int first, int second) =>
        Made(
            $$"""
            splitter: 1
            artwork:
              shapes:
                - { wkt: "POLYGON((0 0, {{across * 2}} 10, {{(across * 2) - 20}} {{(down * 2) - 10}}, 15 {{down
                * 2}}, 0 0))", id: ground, fill: "#336699" }
                - { wkt: "LINESTRING(10 20, {{across}} {{down + 30}}, {{(across * 2)
                - 30}} 40)", id: rope, stroke: "#993333", stroke-width: 4 mm }
                - { wkt: "LINESTRING(12 {{down}}, {{(across * 2) - 30}} {{down
                - 20}})", id: line, stroke: "#222222", stroke-width: 0.4 mm }
            cloth: { size: 500 x 600 mm, artwork-at: [50 mm, 60 mm], folds: { upright: {{50
                + 60}} mm from left, level: {{60 + 60}} mm from top } }
            hoops: [{ name: test, field: 140 x 200 mm }]
            fields:
              place:
                - { center: [{{across / 2}} mm, {{down / 2}} mm], turn: {{first}} }
                - { center: [{{across * 3 / 2}} mm, {{down / 2}} mm], turn: {{second}} }
                - { center: [{{across / 2}} mm, {{down * 3 / 2}} mm], turn: {{second}} }
                - { center: [{{across * 3 / 2}} mm, {{down * 3 / 2}} mm], turn: {{first}} }
            output: { folder: parts, files: [tape, svg] }
            """
        );

    private static Dictionary<string, byte[]> Made(string recipe)
    {
        var made = Pipeline.Make(new("turned.yaml", Encoding.UTF8.GetBytes(recipe), _ => default));
        Assert.True(made.Succeeded, string.Join("\n", made.Diagnostics));
        return made.Value.Sets.Single().Files.ToDictionary(f => f.Path.Split('/')[^1], f => f.Bytes.ToArray());
    }
}
