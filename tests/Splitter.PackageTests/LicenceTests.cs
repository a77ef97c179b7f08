using System.IO.Compression;
using System.Text.Json;
using System.Text.RegularExpressions;
using System.Xml.Linq;

namespace Splitter.PackageTests;

/// <summary>What others' licences ask of whoever builds Splitter, and of whoever hands it on.</summary>
[Collection(nameof(PackedFeed))]
public sealed partial class LicenceTests(PackedFeed feed)
{
    private const string Notices = "THIRD-PARTY-NOTICES.txt";

    /// <summary>SPDX names. What is handed on carries the first two only; the others build and test.</summary>
    private static readonly string[] Permitted = ["MIT", "BSD-3-Clause", "Apache-2.0", "MPL-2.0", "MS-PL"];

    /// <summary>Of a time before packages named their licence: the address that they give leads to the text of Apache-2.0.</summary>
    private static readonly string[] ByAddress = ["xunit.abstractions 2.0.3"];

    private static string Repository { get; } = Path.Combine(PackedFeed.Metadata("Sources"), "..");

    /// <summary>Those in the lock files, of the library, the tool, tests and all that they need in turn.</summary>
    [Fact]
    public void EveryPackageThatIsUsedHasALicenceThatAllowsIt()
    {
        var used = Directory
            .EnumerateFiles(Repository, "packages.lock.json", SearchOption.AllDirectories)
            .SelectMany(Locked)
            .Distinct()
            .Order(StringComparer.Ordinal)
            .ToArray();
        Assert.True(used.Length > 40, $"only {used.Length} packages were found");
        Assert.DoesNotContain(used.Except(ByAddress), package => !Permitted.Contains(Licence(package)));
    }

    [Theory]
    [InlineData("Splitter.MSBuild")]
    [InlineData("Splitter.Tool.any")]
    public void APackageNamesTheLibrariesOfOthersThatItCarries(string name)
    {
        using var package = ZipFile.OpenRead(Path.Combine(feed.Packages, $"{name}.{PackedFeed.Version}.nupkg"));
        using var text = new StreamReader(package.GetEntry(Notices)!.Open());
        var named = Named()
            .Matches(text.ReadToEnd())
            .ToDictionary(m => m.Groups["name"].Value, m => m.Groups["licence"].Value, StringComparer.Ordinal);

        var carried = package
            .Entries.Select(entry => entry.Name)
            .Where(file => file.EndsWith(".dll", StringComparison.Ordinal))
            .Select(file => Path.GetFileNameWithoutExtension(file))
            .Where(library => library is not ("Splitter" or "Splitter.Tool"));
        var locked = Locked(Path.Combine(Repository, "src", "Splitter.Tool", "packages.lock.json")).ToArray();
        Assert.Equal(
            carried
                .Select(File)
                .Select(library => locked.Single(p => p.StartsWith($"{library} ", StringComparison.Ordinal)))
                .Order(StringComparer.Ordinal),
            named.Keys.Order(StringComparer.Ordinal)
        );
        Assert.All(named, notice => Assert.Equal(Licence(notice.Key), notice.Value));

        // A file may have another name than its package.
        static string File(string library) => library == "ICSharpCode.SharpZipLib" ? "SharpZipLib" : library;
    }

    /// <summary>Name and version of each package of a lock file.</summary>
    private static IEnumerable<string> Locked(string file)
    {
        using var document = JsonDocument.Parse(File.ReadAllText(file));
        return
        [
            .. document
                .RootElement.GetProperty("dependencies")
                .EnumerateObject()
                .SelectMany(framework => framework.Value.EnumerateObject())
                .Where(package => package.Value.GetProperty("type").GetString() != "Project")
                .Select(package => $"{package.Name} {package.Value.GetProperty("resolved").GetString()}"),
        ];
    }

    private static string? Licence(string package)
    {
        var (name, version) = package.ToLowerInvariant().Split(' ') is [var n, var v] ? (n, v) : default;
        return XDocument
            .Load(Path.Combine(PackedFeed.OnThisMachine(), name, version, $"{name}.nuspec"))
            .Descendants()
            .SingleOrDefault(element =>
                element.Name.LocalName == "license" && element.Attribute("type")?.Value == "expression"
            )
            ?.Value;
    }

    [GeneratedRegex(
        @"^(?<name>[\w.]+ [\d.]+), (?<licence>\S+)\r?$",
        RegexOptions.ExplicitCapture | RegexOptions.Multiline,
        1000
    )]
    private static partial Regex Named();
}
