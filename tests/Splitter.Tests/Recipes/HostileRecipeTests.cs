using System.Diagnostics;
using System.Text;
using Splitter.Diagnostics;
using Splitter.Recipes;

namespace Splitter.Tests.Recipes;

/// <summary>Tests that look at the clock run by themselves.</summary>
[CollectionDefinition(nameof(Alone), DisableParallelization = true)]
public class Alone;

/// <summary>Input that was made to hurt: a clear error within a second, never an exception.</summary>
[Collection(nameof(Alone))]
public class HostileRecipeTests
{
    private const int Mebibyte = 1 << 20;

    private const string Valid =
        "splitter: 1\nartwork: { file: bay.svg }\nhoops: [{ name: small, field: 130 x 180 mm }]\n";

    public static TheoryData<string, string> Texts =>
        new()
        {
            { "SPL1008", new string('[', 100_000) },
            { "SPL1008", string.Concat(Enumerable.Repeat("{a: ", 100_000)) },
            { "SPL1008", string.Concat(Enumerable.Repeat("- ", 500_000)) },
            { "SPL1008", string.Concat(Enumerable.Repeat("? ", 500_000)) },
            { "SPL1008", string.Concat(Enumerable.Range(0, 1000).Select(i => new string(' ', i) + "a:\n")) },
            { "SPL1009", "a: [" + string.Concat(Enumerable.Repeat("a,", (Mebibyte / 2) - 5)) + "]" },
            { "SPL1009", string.Concat(Enumerable.Range(0, Mebibyte / 8).Select(i => $"{i}:\n")) },
            { "SPL1009", string.Concat(Enumerable.Repeat("---\n", Mebibyte / 4)) },
            { "SPL1020", string.Concat(Enumerable.Range(0, 9_000).Select(i => $"registratiom-{i}: 1\n")) },
            { "SPL1020", new string('k', 900) + ": 1\n" },
            { "SPL1015", string.Concat(Enumerable.Repeat("a: 1\n", 9_000)) },
            { "SPL1042", Valid + "output: { files: [" + string.Concat(Enumerable.Repeat("tape, ", 19_000)) + "] }\n" },
            { "SPL1042", "hoops:\n" + string.Concat(Enumerable.Repeat("- { name: a, field: 1 x 1 in }\n", 3_000)) },
            { "SPL1012", "a: [" + string.Concat(Enumerable.Repeat("*a,", 19_000)) + "]" },
            { "SPL1012", Bomb() },
            { "SPL1006", "a: \"" + new string('x', Mebibyte - 10) },
            { "SPL1006", "a: 'it\nb: 2\n" },
            { "SPL1006", "a:\n\tb: 1\n" },
            { "SPL1006", new string('%', Mebibyte) },
            { "SPL1006", new string('k', Mebibyte - 10) + ": 1" },
            { "SPL1030", "title: " + string.Concat(Enumerable.Repeat("x ", (Mebibyte / 2) - 10)) },
            { "SPL1030", Valid + "cloth: { thickness: " + new string('9', 1_000_000) + " }" },
            { "SPL1030", Valid + "cloth: { thickness: 1" + new string(' ', 1_000_000) + "- }" },
            { "SPL1004", Valid + "title: a\0b\n" },
            { "SPL1010", Valid + "---\n" + Valid },
            { "SPL1005", new string('\n', Mebibyte) },
            { "SPL1005", "" },
            { "SPL1014", "{ {a: 1}: 2, [b]: 3 }" },
        };

    [Theory]
    [MemberData(nameof(Texts))]
    public void A_hostile_text_gets_a_clear_error_quickly(string code, string text) =>
        Refuses(code, Encoding.UTF8.GetBytes(text));

    [Fact]
    public void Fifty_megabytes_are_refused_unread() => Refuses("SPL1001", new byte[50 * Mebibyte]);

    [Fact]
    public void Utf16_is_refused_with_and_without_a_mark()
    {
        foreach (var encoding in new[] { Encoding.Unicode, Encoding.BigEndianUnicode })
        {
            Refuses("SPL1003", [.. encoding.GetPreamble(), .. encoding.GetBytes(Valid)]);
            Refuses("SPL1004", encoding.GetBytes(Valid));
        }
    }

    // Source: RFC 3629, section 3 (octets C0, C1, F5 to FF never appear, no surrogates) and section 10 (overlong forms).
    [Theory]
    [InlineData(0xC0, 0x80)]
    [InlineData(0xC1, 0xBF)]
    [InlineData(0xE0, 0x80, 0x8A)]
    [InlineData(0xED, 0xA0, 0x80)]
    [InlineData(0xF4, 0x90, 0x80, 0x80)]
    [InlineData(0xF5, 0x80, 0x80, 0x80)]
    [InlineData(0xFF)]
    [InlineData(0x80)]
    [InlineData(0xE2, 0x82)]
    public void Bytes_that_are_not_Utf8_are_refused_where_they_stand(params int[] octets)
    {
        var diagnostic = Refuses(
            "SPL1002",
            [.. Encoding.UTF8.GetBytes("splitter: 1\ntitle: é"), .. octets.Select(o => (byte)o), (byte)'\n']
        );
        Assert.Equal(new Place("recipe.yaml", 2, 9), diagnostic.Place);
    }

    [Fact]
    public void A_byte_order_mark_and_carriage_returns_are_no_mistake()
    {
        byte[] bytes = [0xEF, 0xBB, 0xBF, .. Encoding.UTF8.GetBytes(Valid.Replace("\n", "\r\n"))];
        var result = RecipeReader.Read("recipe.yaml", bytes);

        Assert.Empty(result.Diagnostics);
        Assert.Equal(new Place("recipe.yaml", 3, 31), result.Value.PlaceOf("hoops[0].field"));
    }

    [Fact]
    public void More_mistakes_than_a_person_reads_are_cut_off()
    {
        var text = string.Concat(Enumerable.Range(0, 500).Select(i => $"wrong-{i}: 1\n"));
        var result = RecipeReader.Read("recipe.yaml", Encoding.UTF8.GetBytes(text));

        Assert.Equal(101, result.Diagnostics.Length);
        Assert.Equal("SPL1019", result.Diagnostics[^1].Code);
    }

    private static Diagnostic Refuses(string code, byte[] bytes)
    {
        RecipeReader.Read("warm.yaml", Encoding.UTF8.GetBytes(Valid));
        var clock = Stopwatch.StartNew();
        var result = RecipeReader.Read("recipe.yaml", bytes);
        clock.Stop();

        Assert.False(result.Succeeded);
        Assert.InRange(clock.ElapsedMilliseconds, 0, 1000);
        Assert.All(result.Diagnostics, d => Assert.InRange(d.ToString().Length, 1, 600));
        Assert.All(result.Diagnostics, d => Assert.DoesNotContain('\n', d.ToString()));
        Assert.Contains(result.Diagnostics, d => d.Code == code);
        return result.Diagnostics.First(d => d.Code == code);
    }

    /// <summary>Each level holds the one before it nine times: 9 to the power of 9 values if anyone followed them.</summary>
    private static string Bomb() =>
        "a0: &a0 x\n"
        + string.Concat(
            Enumerable
                .Range(1, 9)
                .Select(i => $"a{i}: &a{i} [{string.Join(", ", Enumerable.Repeat($"*a{i - 1}", 9))}]\n")
        );
}
