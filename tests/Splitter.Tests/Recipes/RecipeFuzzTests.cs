using System.Text;
using CsCheck;
using Splitter.Diagnostics;
using Splitter.Recipes;
using Splitter.Tests.Fuzzing;

namespace Splitter.Tests.Recipes;

/// <summary>Whatever is done to a good recipe, reading it gives a recipe or messages, never an exception.</summary>
public class RecipeFuzzTests
{
    private static readonly byte[] Good = File.ReadAllBytes(
        Golden.Source("Recipes", "Readable", "every-form", "recipe.yaml")
    );

    /// <summary>What YAML or the language gives a meaning to, so that mutations go deep.</summary>
    private static readonly string[] Pieces =
    [
        "[",
        "]",
        "{",
        "}",
        ":",
        ": ",
        ", ",
        "- ",
        "? ",
        "\n",
        "\n\n  ",
        "\t",
        "\"",
        "'",
        "#",
        "&a ",
        "*a",
        "!t ",
        "|",
        ">",
        "%",
        "---\n",
        "...\n",
        "\0",
        "\u0085",
        "\u2028",
        "\ufeff",
        "é",
        "🪡",
        "\\ud800",
        "0",
        "-",
        "9999999999",
        "1e9",
        "NaN",
        ".inf",
        " mm",
        " in",
        " deg",
        " %",
        "x",
        "centre",
        "from",
        "auto",
        "none",
        "null",
        "~",
        "true",
        "splitter",
        "<<",
        "#fff",
    ];

    private static readonly Gen<string> Piece = Gen.Int[0, Pieces.Length - 1].Select(i => Pieces[i]);

    [Fact]
    public void A_mutated_recipe_never_throws() =>
        Mutation.Of([Good], Pieces).Holds(Holds, cases: 5_000, print: bytes => Encoding.UTF8.GetString(bytes));

    [Fact]
    public void Bytes_at_random_never_throw() => Gen.Byte.Array[0, 200].Holds(Holds, cases: 3_000);

    [Fact]
    public void Pieces_at_random_never_throw() =>
        Piece
            .Array[0, 60]
            .Select(pieces => Encoding.UTF8.GetBytes(string.Concat(pieces)))
            .Holds(Holds, cases: 4_000, print: bytes => Encoding.UTF8.GetString(bytes));

    private static void Holds(byte[] bytes)
    {
        var result = RecipeReader.Read("recipe.yaml", bytes);
        Assert.NotEqual(result.Succeeded, result.Diagnostics.Any(d => d.Severity == Severity.Error));
        var lines = bytes.Count(b => b == '\n') + 1;
        foreach (var diagnostic in result.Diagnostics)
        {
            Assert.DoesNotContain('\n', diagnostic.ToString());
            // YAML and the parser also end lines at CR, NEL and the Unicode separators.
            Assert.InRange(diagnostic.Place.Line, 0, lines + bytes.Length);
        }
        if (result.Succeeded)
            Assert.NotEmpty(RecipeDump.Of(result.Value));
    }
}
