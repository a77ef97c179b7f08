using System.Collections.Immutable;
using System.Reflection;
using System.Reflection.Metadata;
using System.Reflection.PortableExecutable;
using Splitter.Tool;

namespace Splitter.Tests.Architecture;

/// <summary>
/// Neither the tool nor any library that it brings along calls what a connection is made with. The framework's own XML reader
/// could: it is given no resolver, and drawings that ask for files outside are refused (see their tests).
/// </summary>
public sealed class NetworkTests
{
    /// <summary>What terminals need for links: the machine's own name. It asks nobody else for it.</summary>
    private const string OwnName = "Spectre.Console: System.Net.Dns.GetHostName";

    private static readonly ImmutableArray<Assembly> Shipped =
    [
        .. From(typeof(CommandLine).Assembly, new(StringComparer.Ordinal)).Values,
    ];

    [Fact]
    public void NothingThatIsShippedCallsTheNetwork() =>
        Assert.Equal([OwnName], Shipped.SelectMany(NetworkCalls).Order(StringComparer.Ordinal));

    /// <summary>The walk sees what it is there for.</summary>
    [Fact]
    public void AllThatIsShippedIsLookedAt() =>
        Assert.Superset(
            new HashSet<string>
            {
                "Splitter",
                "NetTopologySuite",
                "YamlDotNet",
                "System.CommandLine",
                "ICSharpCode.SharpZipLib",
            },
            Shipped.Select(assembly => assembly.GetName().Name!).ToHashSet()
        );

    private static Dictionary<string, Assembly> From(Assembly assembly, Dictionary<string, Assembly> found)
    {
        if (found.TryAdd(assembly.GetName().Name!, assembly))
            foreach (var named in assembly.GetReferencedAssemblies().Select(Assembly.Load).Where(IsOurs))
                From(named, found);
        return found;
    }

    /// <summary>The framework lies in a folder of its own.</summary>
    private static bool IsOurs(Assembly assembly) =>
        Path.GetDirectoryName(assembly.Location) != Path.GetDirectoryName(typeof(object).Assembly.Location);

    private static IEnumerable<string> NetworkCalls(Assembly assembly)
    {
        using var file = new PEReader(File.OpenRead(assembly.Location));
        var code = file.GetMetadataReader();
        foreach (var member in code.MemberReferences.Select(code.GetMemberReference))
        {
            if (member.Parent.Kind != HandleKind.TypeReference)
                continue;
            var type = code.GetTypeReference((TypeReferenceHandle)member.Parent);
            var space = code.GetString(type.Namespace);
            if (space.StartsWith("System.Net", StringComparison.Ordinal))
                yield return $"{assembly.GetName().Name}: {space}.{code.GetString(type.Name)}.{code.GetString(member.Name)}";
        }
    }
}
