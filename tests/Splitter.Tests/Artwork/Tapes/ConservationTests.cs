using System.Text;
using Splitter.Parts;
using Splitter.Tapes;

namespace Splitter.Tests.Artwork.Tapes;

/// <summary>
/// Open drawings, stitched for one large hoop and then split for a small one; and tapes that are awkward.
/// </summary>
public sealed class ConservationTests
{
    private static readonly string[] Designs =
    [
        "butterfly",
        "cat",
        "feather",
        "fish",
        "flower",
        "leaf",
        "sailboat",
        "cz",
        "jm",
        "key",
    ];

    public static TheoryData<string> Names => [.. Designs];

    [Theory]
    [MemberData(nameof(Names))]
    public void OfADesignNothingIsLost(string name)
    {
        var folder = StitchSubject.Drawings.Single(d => d.Name == name).Folder;
        var drawn = StitchSubject.OfDrawing(folder, name).Request;
        var whole = Pipeline.Make(
            drawn with
            {
                Bytes = Encoding.UTF8.GetBytes(
                    Encoding.UTF8.GetString(drawn.Bytes.Span).Replace("130 x 180", "400 x 400")
                ),
            }
        );
        var set = whole.Value.Sets.Single();
        var tape = set.Files.Single(f => f.Path.EndsWith(".dst", StringComparison.Ordinal)).Bytes.ToArray();
        // Where fields lie does not matter here, and looking for the best takes most of the time.
        var (columns, rows, side) = folder == "flags" ? (3, 2, 100) : (2, 2, 80);
        var made = HandTape.Make(
            tape,
            set.Parts.Single().Steps.Length,
            side,
            side,
            $"fields: {{ place: {{ columns: {columns}, rows: {rows} }} }}"
        );
        Assert.True(made.Succeeded, string.Join('\n', made.Diagnostics));
        var split = made.Value.Sets.Single();
        Assert.True(split.Parts.Length >= 2);
        NothingLost.Check(tape, split);
    }

    /// <summary>In the order of their names below.</summary>
    public static TheoryData<string, int> Awkward =>
        new()
        {
            { "a long run", 1 },
            { "a wide fill", 1 },
            { "a long column", 1 },
            { "stops without stitches", 2 },
            { "few jumps", 1 },
            { "single holes", 1 },
            { "stitches of no length", 1 },
            { "stitches as long as a record", 1 },
            { "everything over everything", 3 },
            { "a thread that begins where an earlier one ended", 1 },
            { "long moves of two jumps", 1 },
        };

    [Theory]
    [MemberData(nameof(Awkward))]
    public void OfAnAwkwardTapeNothingIsLost(string what, int blocks)
    {
        var tape = ByHand(what).Bytes;
        var made = HandTape.Make(tape, blocks, 70, 70);
        Assert.True(made.Succeeded, string.Join('\n', made.Diagnostics));
        Assert.Equal(what == "stops without stitches", made.Diagnostics.Any(d => d.Code == "SPL2201"));
        NothingLost.Check(tape, made.Value.Sets.Single());
    }

    /// <summary>Its longest stitches are longer than a record then, and come in two.</summary>
    [Theory]
    [InlineData("stitches as long as a record", 133)]
    [InlineData("stitches as long as a record", 110)]
    [InlineData("everything over everything", 120)]
    public void OfATapeThatIsMadeWiderOrNarrowerNothingIsLost(string what, int width)
    {
        var tape = ByHand(what);
        var blocks = tape.Tape.Records.Count(r => r.Command == TapeCommand.Stop) + 1;
        var made = HandTape.Make(tape.Bytes, blocks, 70, 70, artwork: $", width: {width} mm");
        Assert.True(made.Succeeded, string.Join('\n', made.Diagnostics));
        NothingLost.Check(tape.Bytes, made.Value.Sets.Single(), width);
    }

    /// <summary>The second block lies in other parts than the first and the third: these sew both in one go.</summary>
    [Fact]
    public void OfAThreadThatComesAgainNothingIsLost()
    {
        var tape = new HandTape()
            .Rows(0, 0, 20, 20)
            .Stop()
            .Jump(90, 0, 12)
            .Rows(90, 0, 20, 20)
            .Stop()
            .Jump(20, 20, 12)
            .Rows(20, 20, 20, 20);
        var made = HandTape.Make(tape.Bytes, 2, 70, 70, artwork: ", blocks: [t1, t2, t1]");
        Assert.True(made.Succeeded, string.Join('\n', made.Diagnostics));
        var set = made.Value.Sets.Single();
        NothingLost.Check(tape.Bytes, set, threads: [0, 1, 0]);
        Assert.Equal(
            ["t1", "t2"],
            set.Parts.SelectMany(p => p.Steps)
                .Where(s => s.Kind == StepKind.Body)
                .Select(s => s.Thread!.Name)
                .Order(StringComparer.Ordinal)
        );
    }

    private static HandTape ByHand(string what) =>
        what switch
        {
            "a long run" => new HandTape().Sew((0, 0)).Run(150, 20).Run(150, 90).Run(0, 90),
            "a wide fill" => new HandTape().Rows(0, 0, 130, 50),
            "a long column" => new HandTape().Column(0, 0, 5, 160),
            "stops without stitches" => new HandTape()
                .Stop()
                .Stop()
                .Rows(0, 0, 20, 20)
                .Stop()
                .Stop()
                .Jump(90, 90, 8)
                .Rows(90, 90, 10, 10)
                .Stop(),
            "few jumps" => new HandTape()
                .Rows(0, 0, 10, 10)
                .Jump(20, 0, 2)
                .Rows(20, 0, 10, 10)
                .Jump(31, 0, 1)
                .Jump(31, 0, 1)
                .Column(31, 0, 3, 30)
                .Jump(100, 100, 9)
                .Jump(100, 100, 3)
                .Run(120, 100),
            "single holes" => new HandTape()
                .Sew((0, 0))
                .Jump(40, 0, 4)
                .Jump(40, 40, 4)
                .Jump(80, 80, 4)
                .Jump(81, 81, 1)
                .Jump(120, 120, 5),
            "stitches of no length" => new HandTape()
                .Sew((0, 0), (0, 0), (0, 0), (2, 0), (2, 0), (4, 0))
                .Run(100, 0)
                .Sew((100, 0), (100, 0))
                .Run(100, 80),
            "a thread that begins where an earlier one ended" => new HandTape()
                .Sew((0, 0))
                .Run(20, 0)
                .Jump(200, 0, 20)
                .Run(220, 0)
                .Jump(20, 0, 20)
                .Run(40, 0),
            "long moves of two jumps" => new HandTape()
                .Sew((0, 0))
                .Run(30, 0)
                .Jumps((42.1, 0), (54.2, 0))
                .Sew((66.3, 0))
                .Run(100, 0)
                .Jumps((107, 12), (114, 24))
                .Sew((121, 36))
                .Run(121, 80),
            "stitches as long as a record" => new HandTape()
                .Sew((0, 0))
                .Run(121, 0, 12.1)
                .Run(121, 121, 12.1)
                .Run(0, 0, 17.1),
            _ => new HandTape()
                .Rows(0, 0, 100, 40)
                .Stop()
                .Jump(10, 10, 9)
                .Column(10, 10, 6, 70)
                .Jump(20, 10, 8)
                .Rows(20, 10, 90, 40, 0.5)
                .Stop()
                .Jump(0, 0, 12)
                .Run(110, 80, 2.4)
                .Run(0, 80)
                .Run(110, 0),
        };
}
