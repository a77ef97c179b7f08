using System.Text;
using CsCheck;
using Splitter.Checking;
using static Splitter.Tests.Checking.CheckerTests;

namespace Splitter.Tests.Checking;

/// <summary>What is on disk may be anything; it is told, and never a crash.</summary>
public sealed class DamagedSetTests
{
    [Fact]
    public void ATapeThatCannotBeReadIsTold()
    {
        var disk = Disk(Set);
        disk["small/part-A.dst"] = new byte[100];
        var part = Check(Set, disk).Parts.Single();
        Assert.StartsWith("this is no tape", part.Unreadable, StringComparison.Ordinal);
        Assert.Empty(part.Shapes);
    }

    /// <summary>Sums may list a tape of the person's own: it is a file, but no part.</summary>
    [Theory]
    [InlineData("x.dst")]
    [InlineData("mast-and-sail.dst")]
    public void ATapeThatIsNoPartHasNoLetter(string name)
    {
        var disk = Disk(Set);
        disk[$"small/{name}"] = new byte[3];
        disk["small/SHA256SUMS"] =
        [
            .. disk["small/SHA256SUMS"],
            .. Encoding.UTF8.GetBytes($"{new string('0', 64)}  {name}\n"),
        ];
        var found = Check(Set, disk);
        Assert.Contains($"small/{name} is not made any more", DifferenceText.Of(found));
        Assert.DoesNotContain(
            DifferenceText.SummaryOf(found),
            line => line.StartsWith("parts:", StringComparison.Ordinal)
        );
    }

    [Fact]
    public void AMiddleWithoutItsNumbersIsNotKnown()
    {
        var part = """{"letter": "A", "field": {"center_mm": [], "turn_deg": 0}, "steps": []}""";
        var manifest = Encoding.UTF8.GetBytes($$"""{"tool": {"version": "1.0"}, "parts": [{{part}}]}""");
        var known = KnownManifest.Read(manifest);
        Assert.Equal(("1.0", KnownPart.Unknown), (known.Version, known.Part("A")));
    }

    [Fact]
    public void WhateverLiesOnDiskTheCheckAnswers() =>
        Gen
            .Byte.Array[0, 700]
            .Holds(
                bytes =>
                {
                    var disk = Disk(Set);
                    foreach (var path in disk.Keys.ToList())
                        disk[path] = bytes;
                    return Check(Set, disk).Files.Length >= Set.Files.Length - 1;
                },
                cases: 50
            );
}
