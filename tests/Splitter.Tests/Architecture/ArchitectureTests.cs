using System.Collections.Immutable;
using System.Reflection;
using Splitter.Outputs;
using Splitter.Planning;
using Splitter.Planning.Drafting;

namespace Splitter.Tests.Architecture;

/// <summary>The flow of the stages, and what the library keeps away from.</summary>
public sealed class ArchitectureTests
{
    private const string Root = "Splitter";
    private const string Vocabulary = "Geometry";
    private const string Messages = "Diagnostics";

    /// <summary>A stage may name the values of those before it, never of one behind it.</summary>
    private static readonly ImmutableArray<string> Flow =
    [
        "Recipes",
        "Texts",
        "Tapes",
        "Artwork",
        "Starting",
        "Planning",
        "Cutting",
        "Stitching",
        "Parts",
        "Correcting",
        "Outputs",
        "Checking",
    ];

    /// <summary>
    /// Within planning: its values, which name no folder of it, and then the folders as they build on each other.
    /// </summary>
    private static readonly ImmutableArray<string> PlanningFlow =
    [
        "",
        "Seams",
        "Fit",
        "Fields",
        "Order",
        "Marks",
        "Drafting",
        "Remedies",
    ];

    /// <summary>What the pipeline hands to its stages; all else of its own is for those who call it.</summary>
    private static readonly ImmutableHashSet<Type> HandedDown =
    [
        typeof(Request),
        typeof(Job),
        typeof(SourceFile),
        typeof(SourceRead),
        typeof(ReadSource),
        typeof(InOrder),
    ];

    /// <summary>What comes out at its end, and is checked.</summary>
    private static readonly ImmutableHashSet<Type> Finished = [typeof(PartSet)];

    private static readonly ImmutableArray<Type> Library = [.. typeof(Pipeline).Assembly.GetTypes().Where(IsOurs)];

    [Fact]
    public void EveryFolderOfTheLibraryHasItsPlace() =>
        Assert.Equal(
            [],
            Library.Select(Stage).Distinct().Except([.. Flow, "", Vocabulary, Messages]).Order(StringComparer.Ordinal)
        );

    [Fact]
    public void NoReferenceRunsAgainstTheFlow() => Assert.Equal("", string.Join('\n', References(Library, IsAllowed)));

    [Fact]
    public void NoReferenceRunsAgainstTheFlowOfPlanning()
    {
        var planning = Library.Where(type => Stage(type) == "Planning").ToList();
        Assert.Equal([], planning.Select(PlanningFolder).Distinct().Except(PlanningFlow).Order(StringComparer.Ordinal));
        Assert.Equal("", string.Join('\n', References(planning, IsAllowedInPlanning)));
        // The check sees what it is there for.
        var named = CompiledCode.TypesNamedBy(typeof(PlanDraft)).Where(t => Stage(t) == "Planning");
        Assert.Superset(new HashSet<string> { "Seams", "Order" }, named.Select(PlanningFolder).ToHashSet());
    }

    /// <summary>The check itself finds what it is there for: seen from the front, the pipeline names every stage.</summary>
    [Fact]
    public void ReferencesAreFound()
    {
        var named = CompiledCode.TypesNamedBy(typeof(Pipeline)).Select(Stage).ToHashSet();
        Assert.Superset(new HashSet<string> { "Recipes", "Artwork", "Planning" }, named);
        var outputs = CompiledCode.TypesNamedBy(typeof(OutputRenderer)).Select(Stage).ToHashSet();
        Assert.Superset(new HashSet<string> { "Recipes", "Planning", "Parts" }, outputs);
    }

    [Fact]
    public void TheLibraryTouchesNeitherConsoleNorDiskNorClockNorEnvironmentNorNetwork() =>
        Assert.Equal(
            "",
            string.Join(
                '\n',
                Library
                    .SelectMany(type => CompiledCode.MembersNamedBy(type).Select(member => (type, member)))
                    .Where(use => IsOutside(use.member))
                    .Select(use => $"{Outermost(use.type)}: {use.member.DeclaringType}.{use.member.Name}")
                    .Distinct()
                    .Order(StringComparer.Ordinal)
            )
        );

    private static IEnumerable<string> References(IEnumerable<Type> types, Func<Type, Type, bool> isAllowed) =>
        types
            .SelectMany(type => CompiledCode.TypesNamedBy(type).Where(IsOurs).Select(other => (type, other)))
            .Where(pair => !isAllowed(pair.type, pair.other))
            .Select(pair => $"{Outermost(pair.type)} names {Outermost(pair.other)}")
            .Distinct()
            .Order(StringComparer.Ordinal);

    private static bool IsAllowed(Type type, Type other)
    {
        var (from, to) = (Stage(type), Stage(other));
        if (from == to || from.Length == 0)
            return true;
        if (from == Vocabulary)
            return false;
        if (to is Vocabulary or Messages)
            return true;
        // Catalogues of messages name what they speak of; what a message is, no stage has a part in.
        if (from == Messages)
            return Outermost(type).Name.EndsWith("Problems", StringComparison.Ordinal) && to.Length > 0;
        if (to.Length == 0)
            return HandedDown.Contains(Outermost(other)) || (from == Flow[^1] && Finished.Contains(Outermost(other)));
        return Flow.IndexOf(to) <= Flow.IndexOf(from);
    }

    /// <summary>The entry alone names all folders, and none of them names it.</summary>
    private static bool IsAllowedInPlanning(Type type, Type other) =>
        Stage(other) != "Planning"
        || Outermost(type) == typeof(Planner)
        || (
            Outermost(other) != typeof(Planner)
            && PlanningFlow.IndexOf(PlanningFolder(other)) <= PlanningFlow.IndexOf(PlanningFolder(type))
        );

    private static string PlanningFolder(Type type) =>
        type.Namespace!.Split('.') is [_, _, var folder, ..] ? folder : "";

    /// <summary>Source generators keep helpers of their own in namespaces of the system.</summary>
    private static bool IsOurs(Type type) =>
        type.Assembly == typeof(Pipeline).Assembly
        && (type.Namespace == Root || type.Namespace?.StartsWith($"{Root}.", StringComparison.Ordinal) == true);

    private static string Stage(Type type) =>
        type.Namespace is { } name && name.Split('.') is [Root, var stage, ..] ? stage : "";

    private static Type Outermost(Type type) => type.DeclaringType is { } outer ? Outermost(outer) : type;

    private static bool IsOutside(MemberInfo member)
    {
        var type = member as Type ?? member.DeclaringType;
        return type?.FullName switch
        {
            "System.Console" or "System.DateTime" or "System.DateTimeOffset" or "System.TimeProvider" => true,
            "System.Diagnostics.Stopwatch" or "System.Diagnostics.Process" => true,
            "System.IO.File" or "System.IO.Directory" or "System.IO.FileStream" or "System.IO.DriveInfo" => true,
            "System.IO.FileInfo" or "System.IO.DirectoryInfo" or "System.IO.FileSystemInfo" => true,
            // Every iterator that the compiler makes asks for the number of its thread.
            "System.Environment" => member.Name != "get_CurrentManagedThreadId",
            { } name => name.StartsWith("System.Net.", StringComparison.Ordinal),
            null => false,
        };
    }
}
