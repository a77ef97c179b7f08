namespace Splitter.PackageTests;

/// <summary>What <c>dotnet clean</c> takes away: all that builds ever wrote, and nothing of the person's.</summary>
[Collection(nameof(PackedFeed))]
public sealed class CleanTests(PackedFeed feed)
{
    [Fact]
    public async Task CleanTakesAwayWhatWasMadeAndNothingElse()
    {
        var shop = Workshop.With(feed, "kite");
        var whole = await shop.MustBuild();
        shop.Write("recipes/parts/kite/large/notes.txt", "sewn on linen");
        await Clean(shop);
        Assert.Equal(["recipes/parts/kite/large/notes.txt"], shop.Parts().Keys);
        Assert.False(Directory.Exists(shop.PathOf("recipes/parts/kite/small")));
        Assert.Contains("recipes/kite.yaml -> ", whole.Output, StringComparison.Ordinal);
        Assert.Contains("recipes/kite.yaml -> ", (await shop.MustBuild()).Output, StringComparison.Ordinal);
    }

    /// <summary>Other options, a hoop and a folder of another name: what was made before is forgotten by nobody.</summary>
    [Fact]
    public async Task CleanKnowsWhatEarlierBuildsWrote()
    {
        var shop = Workshop.With(feed, "kite", "boat");
        await shop.MustBuild();
        await shop.MustBuild("-p:SplitterHoop=small", "-p:SplitterOutput=shown");
        shop.Write(
            "recipes/kite.yaml",
            Workshop
                .Recipe()
                .Replace("name: large", "name: huge", StringComparison.Ordinal)
                .Replace("{ files", "{ folder: made, files", StringComparison.Ordinal)
        );
        await shop.MustBuild();
        File.Delete(shop.PathOf("recipes/boat.yaml"));
        await shop.MustBuild();
        Assert.Equal(4, shop.Parts().Keys.Count(IsTape));
        Assert.Equal(2, shop.Parts("recipes/made").Keys.Count(IsTape));
        Assert.Equal(2, shop.Parts("shown").Keys.Count(IsTape));
        await Clean(shop);
        foreach (var folder in new[] { "recipes/parts/kite", "recipes/parts/boat", "recipes/made", "shown/kite" })
            Assert.False(Directory.Exists(shop.PathOf(folder)), folder);
    }

    /// <summary>The parts of a build that failed by a warning alone are written all the same.</summary>
    [Fact]
    public async Task CleanKnowsWhatFailedBuildsWrote()
    {
        var shop = Workshop.With(feed, "kite");
        foreach (var folder in new[] { "first", "second" })
        {
            shop.Write(
                "recipes/kite.yaml",
                Workshop.Recipe().Replace("{ files", $"{{ folder: {folder}, files", StringComparison.Ordinal)
                    + "\nthreads: [{ name: night, color: \"#14304e\" }]\n"
            );
            Assert.Equal(1, (await shop.Build("-warnaserror")).ExitCode);
            Assert.Equal(2, shop.Parts($"recipes/{folder}").Keys.Count(IsTape));
        }
        await Clean(shop);
        Assert.False(Directory.Exists(shop.PathOf("recipes/first")));
        Assert.False(Directory.Exists(shop.PathOf("recipes/second")));
    }

    /// <summary>The name of a part on an old list is no leave to delete what the person has put there since.</summary>
    [Fact]
    public async Task AFileOfThePersonsThatHasAPartsNameStays()
    {
        var shop = Workshop.With(feed, "kite");
        await shop.MustBuild();
        Directory.Delete(shop.PathOf("recipes/parts/kite/large"), recursive: true);
        shop.Write("recipes/parts/kite/large/part-A.dst", "bought");
        await Clean(shop);
        Assert.Equal(["recipes/parts/kite/large/part-A.dst"], shop.Parts().Keys);
    }

    private async Task Clean(Workshop shop)
    {
        var ran = await feed.Dotnet(shop.Folder, "clean");
        Assert.True(ran.ExitCode == 0, ran.ToString());
    }

    private static bool IsTape(string name) => name.EndsWith(".dst", StringComparison.Ordinal);
}
