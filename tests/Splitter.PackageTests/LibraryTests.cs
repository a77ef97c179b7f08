using System.Text.RegularExpressions;

namespace Splitter.PackageTests;

/// <summary>The library as a package: the example of its README is a program that makes parts.</summary>
[Collection(nameof(PackedFeed))]
public sealed partial class LibraryTests(PackedFeed feed)
{
    [Fact]
    public async Task TheExampleInTheReadMeRuns()
    {
        var shop = new Workshop(feed);
        var readMe = await File.ReadAllTextAsync(Path.Combine(PackedFeed.Metadata("Sources"), "Splitter", "README.md"));
        shop.Write("Program.cs", Example().Match(readMe).Groups["code"].Value);
        shop.Write("recipes/bay.yaml", Workshop.Recipe());
        shop.Write(
            "host.csproj",
            $"""
            <Project Sdk="Microsoft.NET.Sdk">
              <PropertyGroup>
                <OutputType>Exe</OutputType>
                <TargetFramework>net10.0</TargetFramework>
                <ImplicitUsings>enable</ImplicitUsings>
                <Nullable>enable</Nullable>
                <NuGetAudit>false</NuGetAudit>
              </PropertyGroup>
              <ItemGroup><PackageReference Include="Splitter" Version="{PackedFeed.Version}" /></ItemGroup>
            </Project>
            """
        );
        var ran = await feed.Dotnet(shop.Folder, "run", "recipes/bay.yaml");
        Assert.True(ran.ExitCode == 0, ran.ToString());
        Assert.Contains("parts/small/part-A.dst", shop.Parts("parts").Keys);
    }

    [GeneratedRegex("```csharp\n(?<code>.*?)```", RegexOptions.ExplicitCapture | RegexOptions.Singleline, 1000)]
    private static partial Regex Example();
}
