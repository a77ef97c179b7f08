using System.Text;
using Splitter.Recipes;
using Splitter.Recipes.Keys;
using Splitter.Recipes.Language;
using Splitter.Recipes.Yaml;

namespace Splitter.Tests.Recipes;

/// <summary>The table of keys agrees with itself and with the recipe's own defaults.</summary>
public class RecipeKeysTests
{
    private static readonly (string Path, Key Key)[] All = [.. KeysOf(RecipeKeys.Group, "")];

    public static TheoryData<string> Paths => [.. All.Select(k => k.Path)];

    internal static int Count => All.Length;

    [Theory]
    [MemberData(nameof(Paths))]
    public void A_key_is_described_and_its_example_and_default_can_be_read(string path)
    {
        var key = All.First(k => k.Path == path).Key;

        Assert.Matches("^[a-z]+(-[a-z]+)*$", key.Name);
        Assert.Matches(@"^\P{C}+\.$", key.Says);
        Assert.NotNull(ReadExample(key));
        if (key.Default is not null)
            Assert.NotNull(key.DefaultValue);
        if (!key.Required)
            Assert.True(key.Default is null != key.Otherwise is null, "an optional key says what its absence means");
    }

    [Fact]
    public void No_mapping_has_a_key_twice() =>
        Assert.Equal(All.Length, All.Select(k => k.Path).Distinct(StringComparer.Ordinal).Count());

    [Fact]
    public void Defaults_of_the_table_are_those_of_the_recipe()
    {
        var recipe = RecipeReader
            .Read(
                "bay.yaml",
                "splitter: 1\nartwork: { file: a.svg }\nhoops: [{ name: a, field: 5 x 7 in }]"u8.ToArray()
            )
            .Value;

        Assert.Equal(new Cloth(), recipe.Cloth);
        Assert.Equal(new FieldRules { Place = new FewestFields() }, recipe.Fields);
        Assert.Equal(new OverlapRules { Seams = SeamRule.LeastVisible }, recipe.Overlap);
        Assert.Equal(new RegistrationRules(), recipe.Registration);
        Assert.Equal(new Machine(), recipe.Machine);
        Assert.Equal(SheetLanguage.English, recipe.Output.Language);
        Assert.Equal(LengthUnit.Millimetres, recipe.Output.Lengths);
        Assert.Equal(new OutputRules { Folder = "" }.Files.AsEnumerable(), recipe.Output.Files);
        Assert.Equal("parts/bay", recipe.Output.Folder);
        Assert.Equal("bay", recipe.Title);
    }

    [Theory]
    [InlineData("recipes/bay.yaml", "bay")]
    [InlineData("C:\\my recipes\\bay.v2.yaml", "bay.v2")]
    [InlineData("bay", "bay")]
    [InlineData(".yaml", "recipe")]
    public void A_recipe_is_called_after_its_file(string file, string name) =>
        Assert.Equal(name, RecipeKeys.NameOf(file));

    [Fact]
    public void A_recipe_whose_name_no_folder_can_have_must_name_its_folder()
    {
        var text = "splitter: 1\nartwork: { file: a.svg }\nhoops: [{ name: a, field: 5 x 7 in }]\n";
        var problem = Assert.Single(RecipeReader.Read("Aux.yaml", Encoding.UTF8.GetBytes(text)).Diagnostics);

        Assert.Equal("SPL1044", problem.Code);
        Assert.Empty(
            RecipeReader.Read("Aux.yaml", Encoding.UTF8.GetBytes(text + "output: { folder: bay }")).Diagnostics
        );
    }

    private static object? ReadExample(Key key)
    {
        var reading = new Reading("example");
        var node = YamlLoader.Load("example", Encoding.UTF8.GetBytes(key.Example), reading.Problems);
        Assert.NotNull(node);
        var value = key.ReadValue(new(node, key.Name, key, reading));
        Assert.Empty(reading.Problems);
        return value;
    }

    private static IEnumerable<(string, Key)> KeysOf(Kind kind, string path) =>
        kind
            .Keys.SelectMany(key => KeysOf(key.Kind, $"{path}.{key.Name}").Prepend(($"{path}.{key.Name}", key)))
            .Concat(kind.Parts.SelectMany((part, i) => KeysOf(part, $"{path}/{i}")));
}
