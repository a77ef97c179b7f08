using System.Globalization;
using System.Text;
using Splitter.Diagnostics;
using Splitter.Recipes;
using Splitter.Recipes.Language;

namespace Splitter.Tests.Recipes;

public class RecipeValueTests
{
    // Source: one inch is 25.4 mm exactly (NIST Special Publication 811, 2008 edition, appendix B.8).
    [Theory]
    [InlineData("1 in", 25_400)]
    [InlineData("0.5in", 12_700)]
    [InlineData("2.54 cm", 25_400)]
    [InlineData("25.4 mm", 25_400)]
    [InlineData("+25.40 mm", 25_400)]
    [InlineData("5.0004 mm", 5_000)]
    [InlineData("5.0005 mm", 5_001)]
    [InlineData("20000 mm", 20_000_000)]
    public void A_length_is_whole_micrometres(string text, int micrometres) =>
        Assert.Equal(micrometres, Read($"  width: {text}\n", "").Value.Artwork.Width);

    // The issue's check value: a fold one inch up from the bottom edge lies 25.4 mm above it.
    [Fact]
    public void A_fold_is_measured_from_the_edge_that_it_names()
    {
        var cloth = Read(
            "",
            "cloth: { size: 460 x 620 mm, artwork-at: [20 mm, 30 mm], folds: { level: 1 in from bottom } }\n"
        ).Value.Cloth;
        Assert.Equal(25_400, cloth.Size!.Value.Height - cloth.LevelFold);
        Assert.Null(cloth.UprightFold);
    }

    // Source: CSS Color Module Level 4, section 5.2: three digits are doubled each ("#123" is "#112233").
    [Theory]
    [InlineData("#123", "#112233")]
    [InlineData("#0F0", "#00ff00")]
    [InlineData("#00FF00", "#00ff00")]
    public void A_colour_is_six_lower_case_digits(string text, string colour) =>
        Assert.Equal(colour, Read("", $"cloth: {{ color: \"{text}\" }}\n").Value.Cloth.Color);

    // Sources: from memory: "kitten" to "sitting" is the textbook case of the Levenshtein distance, 3; "ca" to "abc" is 3
    // in the optimal string alignment and 2 in the unrestricted distance.
    [Theory]
    [InlineData("kitten", "sitting", 3)]
    [InlineData("ca", "abc", 3)]
    [InlineData("center", "centre", 1)]
    [InlineData("", "abc", 3)]
    [InlineData("same", "same", 0)]
    public void Words_have_a_distance(string a, string b, int distance)
    {
        Assert.Equal(distance, Words.Distance(a, b));
        Assert.Equal(distance, Words.Distance(b, a));
    }

    // Source: YAML 1.2.2, example 5.10 "Invalid use of Reserved Indicators", and 5.14 "Invalid Escaped Characters".
    [Theory]
    [InlineData("commercial-at: @text\n")]
    [InlineData("grave-accent: `text\n")]
    [InlineData("Bad escapes:\n  \"\\c\n  \\xq-\"\n")]
    public void What_the_standard_calls_invalid_is_refused_with_its_place(string text)
    {
        var diagnostic = Assert.Single(RecipeReader.Read("r.yaml", Encoding.UTF8.GetBytes(text)).Diagnostics);
        Assert.Equal("SPL1006", diagnostic.Code);
        Assert.True(diagnostic.Place.Line > 0);
    }

    [Fact]
    public void Culture_changes_nothing()
    {
        var bytes = File.ReadAllBytes(Golden.Source("Recipes", "Readable", "every-form", "recipe.yaml"));
        var expected = RecipeDump.Of(RecipeReader.Read("r.yaml", bytes).Value);
        var before = CultureInfo.CurrentCulture;
        var odd = (CultureInfo)CultureInfo.InvariantCulture.Clone();
        odd.NumberFormat.NumberDecimalSeparator = ",";
        odd.NumberFormat.NumberGroupSeparator = ".";
        odd.NumberFormat.NegativeSign = "minus";
        try
        {
            CultureInfo.CurrentCulture = odd;
            Assert.Equal(expected, RecipeDump.Of(RecipeReader.Read("r.yaml", bytes).Value));
            Assert.Contains(
                "write 6.4 mm",
                Read("", "fields: { place: [{ center: [0.25 in, 1 in] }] }\n").Diagnostics[0].Message,
                StringComparison.Ordinal
            );
        }
        finally
        {
            CultureInfo.CurrentCulture = before;
        }
    }

    [Theory]
    [InlineData(null, "small large")]
    [InlineData("all", "small large")]
    [InlineData("large", "large")]
    public void A_hoop_is_chosen_by_its_name(string? name, string chosen) =>
        Assert.Equal(chosen, string.Join(' ', HoopChoice.Choose(TwoHoops(), name).Value.Select(h => h.Name)));

    [Theory]
    [InlineData("Large", "r.yaml(4,1): error SPL1068: the recipe has no hoop 'Large'; did you mean 'large'?")]
    [InlineData("7x5", "r.yaml(4,1): error SPL1068: the recipe has no hoop '7x5'; its hoops are small and large")]
    public void An_unknown_hoop_is_refused(string name, string message) =>
        Assert.Equal(message, Assert.Single(HoopChoice.Choose(TwoHoops(), name).Diagnostics).ToString());

    [Fact]
    public void A_key_that_the_file_lacks_stands_where_the_nearest_above_it_stands()
    {
        var recipe = TwoHoops();
        Assert.Equal(new Place("r.yaml", 5, 27), recipe.PlaceOf("hoops[0].field"));
        Assert.Equal(new Place("r.yaml", 6, 5), recipe.PlaceOf("hoops[1].clearance"));
        Assert.Equal(new Place("r.yaml", 2, 1), recipe.PlaceOf("artwork.sew[3].match"));
        // Artwork is in every file: an editor has a line to go to.
        Assert.Equal(new Place("r.yaml", 2, 1), recipe.PlaceOf("overlap.width"));
    }

    // The demo recipes lie outside this project.
    [SkippableFact]
    public void The_repository_s_own_recipes_are_right()
    {
        var folder = Golden.Source("..", "..", "recipes");
        Skip.IfNot(Directory.Exists(folder), "There are no recipes at the top of the repository.");
        var files = Directory.GetFiles(folder, "*.yaml");
        Assert.NotEmpty(files);
        Assert.All(files, f => Assert.Empty(RecipeReader.Read(f, File.ReadAllBytes(f)).Diagnostics));
    }

    private static Recipe TwoHoops() =>
        Read(
            "",
            "  - { name: large, field: 20 x 30 cm }\n",
            "hoops:\n  - { name: small, field: 130 x 180 mm }\n"
        ).Value;

    private static Result<Recipe> Read(
        string artwork,
        string rest,
        string hoops = "hoops: [{ name: small, field: 130 x 180 mm }]\n"
    ) =>
        RecipeReader.Read(
            "r.yaml",
            Encoding.UTF8.GetBytes($"splitter: 1\nartwork:\n  file: bay.svg\n{artwork}{hoops}{rest}")
        );
}
