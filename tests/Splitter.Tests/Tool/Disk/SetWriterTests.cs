using System.Collections.Immutable;
using System.Text;
using CsCheck;
using Splitter.Outputs;
using Splitter.Tool.Disk;

namespace Splitter.Tests.Tool.Disk;

public sealed class SetWriterTests : IDisposable
{
    private readonly string root = Directory.CreateTempSubdirectory("splitter-disk-").FullName;

    public void Dispose() => Directory.Delete(root, recursive: true);

    [Fact]
    public void AFirstSetIsWrittenAndNothingElse()
    {
        var folder = new SetFolder(Path.Combine(root, "parts", "bay"), "small", Recipe);
        Assert.Empty(Write(new LocalDisk(), folder, Set("one", "A", "B")));
        Assert.Equal(Set("one", "A", "B"), Read(folder.Path));
        Assert.Equal(["small"], Names(folder.Output));
    }

    [Fact]
    public void FilesOfTheEarlierSetGoAndFilesOfThePersonStay()
    {
        var folder = Folder();
        Assert.Empty(Write(new LocalDisk(), folder, Set("one", "A", "B", "C")));
        Add(folder, "notes.txt", "mine");
        Directory.CreateDirectory(Path.Combine(folder.Path, "photos"));
        Add(folder, "photos/first.jpg", "mine too");
        Assert.Empty(Write(new LocalDisk(), folder, Set("two", "A", "B")));
        Assert.Equal(
            Set("two", "A", "B").Add("notes.txt", "mine").Add("photos/first.jpg", "mine too"),
            Read(folder.Path)
        );
        Assert.Equal(["small"], Names(folder.Output));
    }

    [Fact]
    public void AFileOfThePersonsIsNotReplaced()
    {
        var folder = Folder();
        Directory.CreateDirectory(folder.Path);
        Add(folder, "part-A.dst", "mine");
        var problem = Assert.Single(Write(new LocalDisk(), folder, Set("one", "A", "B")));
        Assert.Equal("SPL5051", problem.Code);
        Assert.Equal(Path.Combine(folder.Path, "part-A.dst"), problem.Place.File);
        Assert.Equal(Empty.Add("part-A.dst", "mine"), Read(folder.Path));
        Assert.Equal(["small"], Names(folder.Output));
    }

    /// <summary>A mark that is broken, or names a recipe that is no more, keeps nobody from their own set.</summary>
    [Theory]
    [InlineData("", true)]
    [InlineData("\n", true)]
    [InlineData("../../gone/bay.yaml\n", true)]
    [InlineData("../../b\0ay.yaml\n", true)]
    [InlineData("../..\n", true)]
    [InlineData("../../bay.yaml\n", true)]
    [InlineData("../../other/bay.yaml\n", false)]
    public void OnlyAMarkOfARecipeThatIsThereKeepsAnotherAway(string mark, bool isOwn)
    {
        Directory.CreateDirectory(Path.Combine(root, "other"));
        File.WriteAllText(Path.Combine(root, "other", "bay.yaml"), "");
        var folder = Folder();
        Assert.Empty(Write(new LocalDisk(), folder, Set("one", "A")));
        Add(folder, RecipeMark.Name, mark);
        var problems = Write(new LocalDisk(), folder, Set("two", "A"));
        Assert.Equal(isOwn ? [] : ["SPL5059"], problems.Select(p => p.Code));
        Assert.Equal(Set(isOwn ? "two" : "one", "A"), Read(folder.Path));
        if (isOwn)
            Assert.Equal("../../bay.yaml\n", File.ReadAllText(Path.Combine(folder.Path, RecipeMark.Name)));
    }

    /// <summary>More than memory holds is no mark, and no manifest of ours: neither is read.</summary>
    [SkippableTheory]
    [InlineData(RecipeMark.Name, null)]
    [InlineData("manifest.json", "SPL5051")]
    public void AFileWithoutEndIsNotRead(string name, string? told)
    {
        Skip.If(OperatingSystem.IsWindows(), "a file of 3 GB without anything in it takes 3 GB here");
        var folder = Folder();
        Assert.Empty(Write(new LocalDisk(), folder, Set("one", "A")));
        using (var file = new FileStream(Path.Combine(folder.Path, name), FileMode.Create))
            file.SetLength(3L << 30);
        Assert.Equal(
            told is null ? [] : [told],
            Write(new LocalDisk(), folder, Set("two", "A")).Select(p => p.Code).Distinct()
        );
    }

    /// <summary>Where a folder has two names, a recipe in it does, too.</summary>
    [Fact]
    public void ARecipeBehindALinkIsTheSame()
    {
        foreach (var name in new[] { "recipes", "other" })
            File.WriteAllText(Path.Combine(Directory.CreateDirectory(At("work", name)).FullName, "bay.yaml"), "");
        Directory.CreateSymbolicLink(At("mine"), "work");
        Directory.CreateSymbolicLink(At("work", "now"), At("mine", "recipes"));
        Assert.Empty(Write("one", At("work", "recipes", "bay.yaml")));
        Assert.Empty(Write("two", At("mine", "recipes", "bay.yaml")));
        Assert.Empty(Write("three", At("mine", "now", "bay.yaml")));
        Assert.Empty(Write("four", At("work", "recipes", "bay.yaml")));
        Assert.Equal("SPL5059", Assert.Single(Write("five", At("mine", "other", "bay.yaml"))).Code);

        string At(params string[] names) => Path.Combine([root, .. names]);

        ImmutableArray<Diagnostics.Diagnostic> Write(string content, string recipe) =>
            SetWriterTests.Write(new LocalDisk(), Folder() with { Recipe = recipe }, Set(content, "A"));
    }

    /// <summary>A manifest that something else wrote gives no right to its folder.</summary>
    [Theory]
    [InlineData("{}")]
    [InlineData("[]")]
    [InlineData("not JSON")]
    [InlineData("""{ "manifest": 1, "tool": { "name": "other" }, "parts": [] }""")]
    [InlineData("""{ "manifest": 1, "tool": { "name": "splitter" } }""")]
    public void AManifestOfAnotherKindIsThePersons(string manifest)
    {
        var folder = Folder();
        Directory.CreateDirectory(folder.Path);
        Add(folder, "manifest.json", manifest);
        Assert.Equal("SPL5051", Assert.Single(Write(new LocalDisk(), folder, Set("one", "A"))).Code);
        Assert.Equal(manifest, Read(folder.Path)["manifest.json"]);
    }

    [Fact]
    public void AListThatWasTamperedWithDoesNotLeadOutOfTheFolder()
    {
        var folder = Folder();
        var precious = Path.Combine(root, "precious.txt");
        File.WriteAllText(precious, "mine");
        Directory.CreateDirectory(folder.Path);
        Add(
            folder,
            "manifest.json",
            """{ "manifest": 1, "tool": { "name": "splitter" }, "parts": [ { "files": ["../../precious.txt", "..", "/etc/passwd"] } ] }"""
        );
        Assert.Empty(Write(new LocalDisk(), folder, Set("one", "A")));
        Assert.Equal("mine", File.ReadAllText(precious));
        Assert.Equal(Set("one", "A"), Read(folder.Path));
    }

    [Fact]
    public void LinksAreNotFollowed()
    {
        var elsewhere = Directory.CreateDirectory(Path.Combine(root, "elsewhere")).FullName;
        var folder = Folder();
        Directory.CreateDirectory(folder.Output);
        foreach (var path in new[] { folder.Path, folder.Unfinished, folder.Exchanged, folder.Aside, folder.Lock })
        {
            Directory.CreateSymbolicLink(path, elsewhere);
            Assert.Equal("SPL5053", Assert.Single(Write(new LocalDisk(), folder, Set("one", "A"))).Code);
            Assert.Empty(Directory.EnumerateFileSystemEntries(elsewhere));
            File.Delete(path);
        }
    }

    /// <summary>A listed file that has become a link is the person's by now.</summary>
    [Fact]
    public void ALinkInTheFolderIsNeitherFollowedNorReplaced()
    {
        var elsewhere = Path.Combine(root, "elsewhere.dst");
        File.WriteAllText(elsewhere, "far");
        var folder = Folder();
        Assert.Empty(Write(new LocalDisk(), folder, Set("one", "A", "B")));
        foreach (var name in new[] { "part-A.dst", "part-B.dst" })
        {
            File.Delete(Path.Combine(folder.Path, name));
            File.CreateSymbolicLink(Path.Combine(folder.Path, name), elsewhere);
        }
        Assert.Equal("SPL5051", Assert.Single(Write(new LocalDisk(), folder, Set("two", "A"))).Code);
        File.Delete(Path.Combine(folder.Path, "part-A.dst"));
        Assert.Empty(Write(new LocalDisk(), folder, Set("two", "A")));
        Assert.Equal(elsewhere, new FileInfo(Path.Combine(folder.Path, "part-B.dst")).LinkTarget);
        Assert.Equal("far", File.ReadAllText(elsewhere));
    }

    [Fact]
    public void TwoRunsDoNotWriteAtOnce()
    {
        var folder = Folder();
        Directory.CreateDirectory(folder.Output);
        using (new LocalDisk().TryLock(folder.Lock))
            Assert.Equal("SPL5054", Assert.Single(Write(new LocalDisk(), folder, Set("one", "A"))).Code);
        Assert.Empty(Write(new LocalDisk(), folder, Set("one", "A")));
    }

    [Fact]
    public void WhenOneSetCannotBeWrittenNoneIs()
    {
        var (good, bad) = (Folder(), new SetFolder(Folder().Output, "large"));
        Assert.Empty(Write(new LocalDisk(), good, Set("one", "A")));
        File.WriteAllText(bad.Path, "a file where the folder should be");
        var problems = new SetWriter(new LocalDisk()).Write(
            [(good, Files(good, Set("two", "A"))), (bad, Files(bad, Set("two", "A")))],
            CancellationToken.None
        );
        Assert.Equal("SPL5052", Assert.Single(problems).Code);
        Assert.Equal(Set("one", "A"), Read(good.Path));
        Assert.Equal(["large", "small"], Names(good.Output));
    }

    [Fact]
    public void AStopLeavesTheOldSet()
    {
        var folder = Folder();
        Assert.Empty(Write(new LocalDisk(), folder, Set("one", "A")));
        using var stop = new CancellationTokenSource();
        stop.Cancel();
        Assert.Throws<OperationCanceledException>(() =>
            new SetWriter(new LocalDisk()).Write([(folder, Files(folder, Set("two", "A", "B")))], stop.Token)
        );
        Assert.Equal(Set("one", "A"), Read(folder.Path));
        Assert.Equal(["small"], Names(folder.Output));
    }

    /// <summary>
    /// Every change of the disk fails in turn, in every way. The folder holds the old set or the new one; only a system
    /// that cannot exchange folders in one step may have none there for as long as the run that was killed is not
    /// followed by another. The next run, whatever it writes, finds everything in order.
    /// </summary>
    [Theory]
    [InlineData(Failure.Once, true)]
    [InlineData(Failure.Once, false)]
    [InlineData(Failure.FromThereOn, true)]
    [InlineData(Failure.FromThereOn, false)]
    [InlineData(Failure.HalfWay, true)]
    [InlineData(Failure.HalfWay, false)]
    public void CutShortAtAnyStepThereIsTheOldSetOrTheNew(Failure how, bool exchanges) =>
        Assert.True(CutShortEverywhere(how, exchanges, ["A", "B", "C"], ["A", "D"], ["notes.txt", "plan.md"]) > 10);

    [Fact]
    public void CutShortAtAnyStepThereIsTheOldSetOrTheNewWhateverTheyHold()
    {
        var letters = Some("A", "B", "C", "D");
        var notes = Some("notes.txt", "part-E.dst", ".hidden");
        Gen.Select(letters, letters, notes, Gen.Enum<Failure>().Where(how => how != Failure.FolderGone), Gen.Bool)
            .Holds(s => CutShortEverywhere(s.Item4, s.Item5, s.Item1, s.Item2, s.Item3) > 0, cases: 20);
    }

    /// <summary>Somebody takes the output folder away while it is written: that is told, or all of it is there again.</summary>
    [Theory]
    [InlineData(true)]
    [InlineData(false)]
    public void AFolderThatVanishesIsToldOrMadeAgain(bool exchanges)
    {
        for (var at = 0; ; at++)
        {
            var folder = new SetFolder(
                Path.Combine(root, FormattableString.Invariant($"vanishing-{at}")),
                "small",
                Recipe
            );
            Assert.Empty(Write(new LocalDisk(), folder, Set("one", "A", "B")));
            var disk = new FragileDisk(at, Failure.FolderGone, exchanges && OperatingSystem.IsLinux(), folder.Output);
            var problems = Write(disk, folder, Set("two", "A"));
            if (disk.Changes <= at)
                break;
            if (problems.IsEmpty)
                Assert.Equal(Set("two", "A"), Read(folder.Path));
            Assert.All(problems, problem => Assert.Contains(problem.Code, new[] { "SPL5050", "SPL5056" }));
            Assert.Empty(Write(new LocalDisk(), folder, Set("three", "A")));
            Assert.Equal(Set("three", "A"), Read(folder.Path));
            Assert.Equal(["small"], Names(folder.Output));
        }
    }

    private static Gen<string[]> Some(params string[] names) =>
        Gen.Bool.Array[names.Length].Select(taken => names.Where((_, i) => taken[i]).ToArray());

    /// <returns>How many places there were to fail at.</returns>
    private int CutShortEverywhere(Failure how, bool exchanges, string[] old, string[] next, string[] theirs)
    {
        // Other systems take the way of two renames.
        exchanges &= OperatingSystem.IsLinux();
        var (oldSet, newSet, third) = (Set("one", old), Set("two", next), Set("three", "A", "X"));
        var notes = theirs.ToImmutableSortedDictionary(name => name, name => $"mine: {name}", StringComparer.Ordinal);
        for (var at = 0; ; at++)
        {
            var folder = new SetFolder(Path.Combine(root, $"{Guid.NewGuid():N}"), "small", Recipe);
            Assert.Empty(Write(new LocalDisk(), folder, oldSet));
            foreach (var (name, text) in notes)
                Add(folder, name, text);

            var disk = new FragileDisk(at, how, exchanges);
            _ = Write(disk, folder, newSet);
            if (disk.Changes <= at)
                return at;

            var there = Read(folder.Path);
            if (there.Count > 0 || exchanges || how == Failure.Once)
                AssertOldOrNew(there, oldSet, newSet);

            // No file of the person's is lost in any state, and each is whole.
            var everything = Directory
                .EnumerateFiles(folder.Output, "*", SearchOption.AllDirectories)
                .ToLookup(path => Path.GetFileName(path), File.ReadAllText);
            foreach (var (name, text) in notes)
                Assert.Contains(text, everything[name]);

            Assert.Empty(Recovery.Run(new LocalDisk(), folder));
            var recovered = Read(folder.Path);
            AssertOldOrNew(recovered, oldSet, newSet);
            Assert.All(notes, note => Assert.Equal(note.Value, recovered[note.Key]));
            Assert.Equal(["small"], Names(folder.Output));

            Assert.Empty(Write(new LocalDisk(), folder, third));
            Assert.Equal(third.AddRange(notes), Read(folder.Path));
            Assert.Equal(["small"], Names(folder.Output));
            Directory.Delete(folder.Output, recursive: true);
        }
    }

    private static void AssertOldOrNew(
        ImmutableSortedDictionary<string, string> there,
        ImmutableSortedDictionary<string, string> oldSet,
        ImmutableSortedDictionary<string, string> newSet
    )
    {
        var own = there.Where(f => !f.Value.StartsWith("mine", StringComparison.Ordinal)).ToArray();
        Assert.True(own.SequenceEqual(oldSet) || own.SequenceEqual(newSet), string.Join(", ", own.Select(f => f.Key)));
    }

    private static readonly ImmutableSortedDictionary<string, string> Empty = ImmutableSortedDictionary.Create<
        string,
        string
    >(StringComparer.Ordinal);

    private string Recipe => Path.Combine(root, "bay.yaml");

    private SetFolder Folder() => new(Path.Combine(root, "parts"), "small", Recipe);

    /// <summary>A set as the manifest's contract has it: tapes, an overview that only the sums list, both lists.</summary>
    private static ImmutableSortedDictionary<string, string> Set(string content, params string[] letters)
    {
        var tapes = letters.Select(letter => $"part-{letter}.dst").ToArray();
        var names = string.Join(", ", tapes.Select(name => $"\"{name}\""));
        var manifest = $$"""
            { "manifest": 1, "tool": { "name": "splitter" }, "recipe": { "file": "bay.yaml" }, "parts": [ { "files": [{{names}}] } ], "made": "{{content}}" }
            """;
        var sums = string.Concat(
            tapes.Append("overview.svg").Append("manifest.json").Select(name => $"{new string('0', 64)}  {name}\n")
        );
        return Empty
            .AddRange(tapes.Select(name => KeyValuePair.Create(name, $"{content} {name}")))
            .Add("overview.svg", $"{content} overview")
            .Add("manifest.json", manifest)
            .Add("SHA256SUMS", sums);
    }

    private static ImmutableArray<OutputFile> Files(SetFolder folder, ImmutableSortedDictionary<string, string> set) =>
        [.. set.Select(f => new OutputFile($"{folder.Hoop}/{f.Key}", Encoding.UTF8.GetBytes(f.Value)))];

    private static ImmutableArray<Diagnostics.Diagnostic> Write(
        IDisk disk,
        SetFolder folder,
        ImmutableSortedDictionary<string, string> set
    ) => new SetWriter(disk).Write([(folder, Files(folder, set))], CancellationToken.None);

    private static void Add(SetFolder folder, string name, string text) =>
        File.WriteAllText(Path.Combine(folder.Path, name), text);

    /// <summary>All that lies in the folder, but for the mark of the recipe.</summary>
    private static ImmutableSortedDictionary<string, string> Read(string folder) =>
        Directory.Exists(folder)
            ? Directory
                .EnumerateFiles(folder, "*", SearchOption.AllDirectories)
                .Where(path => Path.GetFileName(path) != RecipeMark.Name)
                .ToImmutableSortedDictionary(
                    path => Path.GetRelativePath(folder, path).Replace('\\', '/'),
                    File.ReadAllText,
                    StringComparer.Ordinal
                )
            : Empty;

    private static string[] Names(string folder) =>
        [
            .. Directory
                .EnumerateFileSystemEntries(folder)
                .Select(p => Path.GetFileName(p)!)
                .Order(StringComparer.Ordinal),
        ];
}
