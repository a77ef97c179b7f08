using System.Text;
using CsCheck;
using Splitter.Artwork;
using Splitter.Checking;
using Splitter.Checking.Inspecting;
using Splitter.Correcting;
using Splitter.Diagnostics;
using Splitter.Recipes;
using static Splitter.Tests.Checking.CheckerTests;

namespace Splitter.Tests.Fuzzing;

/// <summary>
/// Whatever is done to a good file, reading it gives a value or an error that names the file, never an exception. Recipes have
/// their own such tests. <c>SPLITTER_EXPLORE=N</c> reads N times as many from fresh seeds.
/// </summary>
public sealed class ReaderFuzzTests
{
    private static readonly string[] Svg =
    [
        "<g>",
        "</g>",
        "<path d='M0 0h9v9z'/>",
        "<use href='#a'/>",
        "<clipPath id='a'>",
        "</clipPath>",
        "<style>",
        "</style>",
        "<!--",
        "<![CDATA[",
        "&amp;",
        "&a;",
        " transform='scale(0)'",
        " transform='skewX(90)'",
        " viewBox='0 0 0 0'",
        " stroke='red'",
        " stroke-width='1e9'",
        " stroke-dasharray='0 0'",
        " fill='url(#a)'",
        " id='a'",
        "M",
        "A1 1 0 0 0 0 0",
        "C",
        "z",
        "%",
        "mm",
        "{",
        "}",
        ">",
        "'",
        "\"",
    ];

    private static readonly string[] GeoJson =
    [
        "[",
        "]",
        "{",
        "}",
        ",",
        ":",
        "null",
        "true",
        "[[]]",
        "\"type\"",
        "\"Polygon\"",
        "\"MultiPolygon\"",
        "\"GeometryCollection\"",
        "\"coordinates\"",
        "\"features\"",
        "\"geometry\"",
        "180",
        "-90.1",
        "\"",
        "\\u0000",
    ];

    private static readonly string[] Wkt =
    [
        "POLYGON",
        "MULTIPOLYGON",
        "LINESTRING",
        "POINT",
        "GEOMETRYCOLLECTION",
        "EMPTY",
        "Z",
        "M",
        "(",
        ")",
        ",",
        " ",
        "((",
        "))",
        "SRID=4326;",
    ];

    private static readonly string[] Offsets =
    [
        "part: ",
        "offsets: ",
        "at: ",
        "right: ",
        "left: ",
        "up: ",
        "down: ",
        " mm",
        " in",
        "[",
        "]",
        "{",
        "}",
        "- ",
        "\n",
        "&a ",
        "*a",
        "<<: ",
    ];

    private static readonly string[] Json =
    [
        "[",
        "]",
        "{",
        "}",
        ",",
        "null",
        "\"A\"",
        "\"letter\"",
        "\"corners\"",
        "\"field\"",
        "\"steps\"",
        "\"parts\"",
        "..",
        "/",
        "\n",
        "  part-A.dst\n",
    ];

    [Fact]
    public void DrawingsInSvg() =>
        Mutation
            .Of(Files("Artwork/Svg/Cases", "drawing.svg"), Svg)
            .Holds(bytes => Drawn("art.svg", bytes), cases: 400, print: Encoding.UTF8.GetString);

    [Fact]
    public void DrawingsInGeoJson() =>
        Mutation
            .Of(Files("Artwork/Cases", "land.geojson"), GeoJson)
            .Holds(bytes => Drawn("land.geojson", bytes), cases: 400, print: Encoding.UTF8.GetString);

    [Fact]
    public void ShapesInWellKnownText() =>
        Mutation
            .Of(
                [
                    "POLYGON ((0 0, 40 0, 40 30, 0 30, 0 0), (10 10, 20 10, 20 20, 10 20, 10 10))"u8.ToArray(),
                    "MULTILINESTRING ((0 0, 30 20), (5 5, 9 5, 9 9, 5 9, 5 5))"u8.ToArray(),
                    "GEOMETRYCOLLECTION (MULTIPOLYGON (((0 0, 9 0, 9 9, 0 0))), LINESTRING (0 0, 9 9))"u8.ToArray(),
                ],
                Wkt
            )
            .Holds(
                bytes =>
                {
                    var text = new string([
                        .. Encoding.UTF8.GetString(bytes).Where(c => c is not ('"' or '\\') && c >= ' '),
                    ]);
                    var art = $"{{ shapes: [{{ wkt: \"{text}\", fill: \"#14304f\" }}] }}";
                    Answers(
                        from recipe in RecipeReader.Read("recipe.yaml", Recipe(art))
                        from drawing in DrawingReader.Read(recipe, [])
                        select drawing
                    );
                },
                cases: 400,
                print: Encoding.UTF8.GetString
            );

    [Fact]
    public void OffsetsThatWereMeasured() =>
        Mutation
            .Of(
                [
                    "part: D\noffsets:\n  - { at: 1, right: 0.6 mm, down: 0.2 mm }\n  - { at: 2, left: 0.1 mm }\n"u8.ToArray(),
                    "part: AA\noffsets: [{ at: A1, up: 0.02 in }, { at: B2, right: 0 mm, up: 1 mm }]\n"u8.ToArray(),
                ],
                Offsets
            )
            .Holds(
                bytes => Answers(OffsetFile.Read("offsets.yaml", bytes)),
                cases: 3_000,
                print: Encoding.UTF8.GetString
            );

    /// <summary>A manifest, sums and tapes that were changed on disk are differences, as <c>check</c> finds them.</summary>
    [Theory]
    [InlineData("manifest.json")]
    [InlineData("SHA256SUMS")]
    [InlineData("part-A.dst")]
    public void SetsOnDisk(string name)
    {
        var path = $"{Set.Hoop}/{name}";
        Mutation
            .Of([Disk(Set)[path]], Json)
            .Holds(
                bytes =>
                {
                    var disk = Disk(Set);
                    disk[path] = bytes;
                    Assert.NotNull(DifferenceText.Of(Check(Set, disk)));
                },
                cases: 100,
                print: Encoding.UTF8.GetString
            );
    }

    [Fact]
    public void Tapes() =>
        Mutation
            .Of([Disk(Set)[$"{Set.Hoop}/part-A.dst"]], Json)
            .Holds(
                bytes => Answers(TapeReport.Read("part-A.dst", bytes, Disk(Set)[$"{Set.Hoop}/manifest.json"])),
                cases: 400,
                print: Convert.ToHexString
            );

    private static void Drawn(string name, byte[] bytes)
    {
        var recipe = RecipeReader.Read("recipe.yaml", Recipe($"{{ file: {name}, width: 90 mm }}")).Value;
        Answers(DrawingReader.Read(recipe, [new SourceFile(name, bytes)]));
    }

    private static byte[] Recipe(string artwork) =>
        Encoding.UTF8.GetBytes($"splitter: 1\nartwork: {artwork}\nhoops: [{{ name: small, field: 130 x 180 mm }}]\n");

    /// <summary>A value, or an error whose place names a file, on one line.</summary>
    private static void Answers<T>(Result<T> result)
        where T : notnull
    {
        Assert.NotEqual(result.Succeeded, result.Diagnostics.Any(d => d.Severity == Severity.Error));
        Assert.All(
            result.Diagnostics,
            diagnostic =>
            {
                Assert.NotEmpty(diagnostic.Place.File);
                Assert.DoesNotContain('\n', diagnostic.ToString());
            }
        );
    }

    private static byte[][] Files(string folder, string name) =>
        [
            .. Directory
                .EnumerateFiles(Golden.Source(folder.Split('/')), name, SearchOption.AllDirectories)
                .Order(StringComparer.Ordinal)
                .Select(File.ReadAllBytes),
        ];
}
