using System.Text.RegularExpressions;
using Splitter.Tests;

namespace Splitter.PackageTests;

/// <summary>Recipes as part of a build, with the packages as a user has them.</summary>
[Collection(nameof(PackedFeed))]
public sealed class BuildTests(PackedFeed feed)
{
    private const string UpToDate = "Skipping target \"_SplitterMake\" because all output files are up-to-date";

    [Fact]
    public async Task WhatNobodyTouchedIsNotMadeAgain()
    {
        var shop = Workshop.With(feed, "kite", "boat");
        var first = await shop.MustBuild();
        Assert.DoesNotContain(UpToDate, first.Output, StringComparison.Ordinal);
        Assert.Equal(4, shop.Parts().Keys.Count(name => name.EndsWith("part-A.dst", StringComparison.Ordinal)));

        Assert.Equal(2, Occurrences(UpToDate, await shop.MustBuild()));

        // One recipe is touched: the other is left alone.
        var before = shop.Parts();
        shop.Write("recipes/kite.yaml", Workshop.Recipe("10 10, 50 10, 50 30, 10 30, 10 10"));
        var touched = await shop.MustBuild();
        Assert.Equal(1, Occurrences(UpToDate, touched));
        Assert.Contains("recipes/kite.yaml -> ", touched.Output, StringComparison.Ordinal);
        var changed = shop.Parts().Where(part => before[part.Key] != part.Value).Select(part => part.Key);
        Assert.Contains("recipes/parts/kite/small/part-A.dst", changed);
        Assert.DoesNotContain(changed, name => name.Contains("boat", StringComparison.Ordinal));

        // So is what is missing, and what another hoop asks for.
        File.Delete(shop.PathOf("recipes/parts/boat/large/part-A.dst"));
        Assert.Equal(1, Occurrences(UpToDate, await shop.MustBuild()));
        Assert.Equal(0, Occurrences(UpToDate, await shop.MustBuild("-p:SplitterHoop=small")));

        // What was made of the same recipes for all hoops is still theirs.
        Assert.Equal(2, Occurrences(UpToDate, await shop.MustBuild()));
    }

    [Fact]
    public async Task ArtworkCountsAsInput()
    {
        const string Square =
            """<svg xmlns="http://www.w3.org/2000/svg" viewBox="0 0 60 60"><rect width="40" height="30"/></svg>""";
        var shop = Workshop.With(feed);
        shop.Write("art/square.svg", Square);
        shop.Write(
            "recipes/square.yaml",
            """
            splitter: 1
            artwork: { file: ../art/square.svg, width: 60 mm }
            hoops: [{ name: small, field: 130 x 180 mm }]
            output: { files: [tape] }
            """
        );
        await shop.MustBuild();
        Assert.Equal(1, Occurrences(UpToDate, await shop.MustBuild()));
        var before = shop.Parts()["recipes/parts/square/small/part-A.dst"];
        shop.Write("art/square.svg", Square.Replace("40", "50", StringComparison.Ordinal));
        await shop.MustBuild();
        Assert.NotEqual(before, shop.Parts()["recipes/parts/square/small/part-A.dst"]);
    }

    [Fact]
    public async Task AProjectWithoutARecipeSaysSo() =>
        Assert.Contains(
            "warning SPL9059: there is no recipe",
            (await Workshop.With(feed).MustBuild()).Output,
            StringComparison.Ordinal
        );

    [Fact]
    public async Task ABrokenRecipeFailsTheBuildOnItsLine()
    {
        var shop = Workshop.With(feed, "kite");
        shop.Write("recipes/kite.yaml", Workshop.Recipe().Replace("field:", "feild:", StringComparison.Ordinal));
        var ran = await shop.Build();
        Assert.Equal(1, ran.ExitCode);
        Assert.Matches(
            $@"(?m)^\s*(\d+>)?{Regex.Escape(shop.PathOf("recipes/kite.yaml"))}\(6,20\): error SPL1\d\d\d: .*feild.*\[{Regex.Escape(shop.PathOf("works.proj"))}",
            ran.Output
        );
        Assert.Empty(shop.Parts());
        // It stays an error until it is mended.
        Assert.Equal(1, (await shop.Build()).ExitCode);
        shop.Write("recipes/kite.yaml", Workshop.Recipe());
        await shop.MustBuild();
    }

    [Fact]
    public async Task AWarningIsOneOfTheBuildsOwn()
    {
        var shop = Workshop.With(feed, "kite");
        // A thread that no shape has, though one is drawn in nearly its colour, is worth a remark, nothing more.
        shop.Write("recipes/kite.yaml", Workshop.Recipe() + "\nthreads: [{ name: night, color: \"#14304e\" }]\n");
        Assert.Matches(@"kite\.yaml\(\d+,\d+\): warning SPL\d{4}: ", (await shop.MustBuild()).Output);
        shop.Write("recipes/kite.yaml", Workshop.Recipe() + "\nthreads: [{ name: dusk, color: \"#14304e\" }]\n");
        foreach (var strict in new[] { "-warnaserror", "-p:TreatWarningsAsErrors=true" })
        {
            var ran = await shop.Build(strict);
            Assert.True(ran.ExitCode == 1, $"{strict}: {ran}");
            Assert.Matches(@"kite\.yaml\(\d+,\d+\): error SPL\d{4}: ", ran.Output);
        }
    }

    /// <summary>Whoever takes warnings for errors need not have been there when the parts were made.</summary>
    [Fact]
    public async Task AWarningIsToldWhileNothingIsTouched()
    {
        var shop = Workshop.With(feed, "kite", "boat");
        // An apostrophe, a semicolon, a letter beyond ASCII and what MSBuild would read as its own.
        shop.Write(
            "recipes/kite.yaml",
            Workshop.Recipe() + "\nthreads: [{ name: \"it's; ä %41 $(OS)\", color: \"#14304e\" }]\n"
        );
        const string Told = @"kite\.yaml\(\d+,\d+\): {0} SPL2134: .* thread .it's; ä %41 \$\(OS\).,";
        Assert.Matches(Told.Replace("{0}", "warning", StringComparison.Ordinal), (await shop.MustBuild()).Output);
        var again = await shop.MustBuild();
        Assert.Equal(2, Occurrences(UpToDate, again));
        Assert.Matches(Told.Replace("{0}", "warning", StringComparison.Ordinal), again.Output);
        foreach (var strict in new[] { "-warnaserror", "-p:TreatWarningsAsErrors=true", "-warnaserror" })
        {
            var ran = await shop.Build(strict);
            Assert.True(ran.ExitCode == 1, $"{strict}: {ran}");
            Assert.Matches(Told.Replace("{0}", "error", StringComparison.Ordinal), ran.Output);
        }
        shop.Write("recipes/kite.yaml", Workshop.Recipe());
        await shop.MustBuild("-warnaserror");
        Assert.DoesNotContain("SPL2134", (await shop.MustBuild("-warnaserror")).Output, StringComparison.Ordinal);
    }

    [Fact]
    public async Task CheckFailsWhereThePartsAreNotTheRecipes()
    {
        var shop = Workshop.With(feed, "kite");
        await shop.MustBuild();
        await shop.MustBuild("-p:SplitterMode=check");
        shop.Write("recipes/kite.yaml", Workshop.Recipe("10 10, 50 10, 50 30, 10 30, 10 10"));
        var before = shop.Parts();
        var ran = await shop.Build("-p:SplitterMode=check");
        Assert.Equal(1, ran.ExitCode);
        Assert.Contains($"{shop.PathOf("recipes/kite.yaml")} : error SPL9053: ", ran.Output, StringComparison.Ordinal);
        Assert.Equal(before, shop.Parts());
    }

    [Fact]
    public async Task OptionsReachTheToolAndWrongOnesAreErrors()
    {
        var shop = Workshop.With(feed, "kite", "boat");
        await shop.MustBuild("-p:SplitterHoop=large", "-p:SplitterOutput=made here");
        Assert.Equal(["boat", "kite"], shop.Parts("made here").Keys.Select(name => name.Split('/')[1]).Distinct());
        Assert.All(shop.Parts("made here").Keys, name => Assert.Contains("/large/", name, StringComparison.Ordinal));
        Assert.Empty(shop.Parts());
        Assert.Contains("error SPL9050: ", (await shop.Build("-p:SplitterMode=sew")).Output, StringComparison.Ordinal);
        foreach (var hoop in new[] { "a;b", "$(id)", "small hoop" })
            Assert.Contains(
                "error SPL9055: ",
                (await shop.Build($"-p:SplitterHoop={Uri.EscapeDataString(hoop)}")).Output,
                StringComparison.Ordinal
            );
        Assert.Contains(
            "error SPL9056: ",
            (await shop.Build("-p:SplitterOutput=a%22b")).Output,
            StringComparison.Ordinal
        );
        foreach (var shard in new[] { "0/2", "3/2" })
            Assert.Contains(
                "error SPL9051: ",
                (await shop.Build($"-p:SplitterShard={shard}")).Output,
                StringComparison.Ordinal
            );
    }

    [Fact]
    public async Task RecipesThatWriteToOneFolderAreToldApart()
    {
        var shop = Workshop.With(feed, "kite", "boat");
        foreach (var name in new[] { "kite", "boat" })
            shop.Write($"recipes/{name}.yaml", Workshop.Recipe().Replace("{ files", "{ folder: one, files"));
        var ran = await shop.Build("-m:1");
        Assert.Equal(1, ran.ExitCode);
        Assert.Contains("error SPL5059: holds the parts of another recipe", ran.Output, StringComparison.Ordinal);
    }

    [Fact]
    public async Task RecipesOfOneNameThatWriteToOneFolderAreToldApart()
    {
        var shop = Workshop.With(feed);
        var project = Workshop.Project($"Sdk=\"Splitter.MSBuild/{PackedFeed.Version}\"");
        shop.Write("works.proj", project.Replace("recipes/*", "*/piece"));
        foreach (var folder in new[] { "kites", "boats" })
            shop.Write($"{folder}/piece.yaml", Workshop.Recipe().Replace("{ files", "{ folder: ../one, files"));
        var ran = await shop.Build("-m:1");
        Assert.Equal(1, ran.ExitCode);
        Assert.Contains("error SPL5059: holds the parts of another recipe", ran.Output, StringComparison.Ordinal);
    }

    /// <summary>Shares are disjoint, together they are all recipes, and a recipe's share is that of its name.</summary>
    [Fact]
    public async Task TwentyRecipesAreMadeSideBySideAndInShares()
    {
        string[] names = [.. Enumerable.Range(1, 20).Select(i => $"patch-{i}")];
        var shop = Workshop.With(feed, names);
        await shop.MustBuild("-m", "-p:SplitterHoop=small", "-p:SplitterShard=1/2");
        var half = shop.Parts();
        await shop.MustBuild("-m", "-p:SplitterHoop=small", "-p:SplitterShard=2/2");
        string[] Made(IEnumerable<string> parts) => [.. parts.Select(name => name.Split('/')[2]).Distinct()];
        Assert.InRange(Made(half.Keys).Length, 5, 15);
        Assert.Equal(names.Order(StringComparer.Ordinal), Made(shop.Parts().Keys));
        Assert.Equal(20, Occurrences(UpToDate, await shop.MustBuild("-m", "-p:SplitterHoop=small")));
    }

    /// <summary>Below /proc nobody can make a folder, not even root, for whom a read-only folder is none.</summary>
    [Fact]
    public async Task AnOutputThatCannotBeWrittenIsAnErrorOfTheBuild()
    {
        if (!OperatingSystem.IsLinux())
            return;
        var shop = Workshop.With(feed, "kite");
        var ran = await shop.Build("-p:SplitterOutput=/proc/parts");
        Assert.Equal(1, ran.ExitCode);
        Assert.Matches(@"/proc/parts/kite/small : error SPL5050: ", ran.Output);
    }

    [Fact]
    public async Task OfTwoBuildsAtOnceNeitherSpoilsTheOther()
    {
        var shop = Workshop.With(feed, "kite");
        var both = await Task.WhenAll(shop.Build(), shop.Build());
        Assert.Contains(both, ran => ran.ExitCode == 0);
        Assert.All(
            both.Where(ran => ran.ExitCode != 0),
            ran =>
            {
                Assert.Contains("error SPL5054", ran.Output, StringComparison.Ordinal);
                // The tool's own answer, and that it failed; nothing of the files by which builds remember.
                Assert.DoesNotMatch("error MSB(?!3073)", ran.Output);
            }
        );
        await shop.MustBuild("-p:SplitterMode=check");
    }

    /// <summary>Each remembers what it made by names of its own.</summary>
    [Fact]
    public async Task BuildsOfOtherOptionsAtOnceDoNotKnowOfEachOther()
    {
        var shop = Workshop.With(feed, "kite");
        string[] hoops = ["small", "large"];
        string[] Options(string hoop) => [$"-p:SplitterHoop={hoop}", $"-p:SplitterOutput={hoop}-made"];
        await Task.WhenAll(hoops.Select(hoop => shop.MustBuild(Options(hoop))));
        foreach (var hoop in hoops)
            Assert.Equal(1, Occurrences(UpToDate, await shop.MustBuild(Options(hoop))));
    }

    /// <summary>In a project of code a recipe is one more thing that is built.</summary>
    [Theory]
    [InlineData("<TargetFramework>net10.0</TargetFramework>")]
    [InlineData("<TargetFrameworks>net10.0</TargetFrameworks>")]
    public async Task AnyProjectMayHaveRecipes(string frameworks)
    {
        var shop = Workshop.With(feed, "kite");
        File.Delete(shop.PathOf("works.proj"));
        shop.Write(
            "works.csproj",
            Workshop.Project(
                "Sdk=\"Microsoft.NET.Sdk\"",
                $"""
                <PropertyGroup>{frameworks}<NuGetAudit>false</NuGetAudit></PropertyGroup>
                <ItemGroup><PackageReference Include="Splitter.MSBuild" Version="{PackedFeed.Version}" /></ItemGroup>
                """
            )
        );
        var ran = await shop.MustBuild();
        Assert.Equal(1, Occurrences("recipes/kite.yaml -> ", ran));
        Assert.Equal(1, Occurrences(UpToDate, await shop.MustBuild("--no-restore")));
    }

    private static int Occurrences(string text, Ran ran) => Regex.Count(ran.Output, Regex.Escape(text));
}
