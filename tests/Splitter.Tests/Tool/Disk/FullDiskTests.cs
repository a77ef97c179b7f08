namespace Splitter.Tests.Tool.Disk;

/// <summary>A disk with hardly any room, which only a machine's owner can make: elsewhere the test says that it is skipped.</summary>
public sealed class FullDiskTests : IDisposable
{
    /// <summary>Enough for the first set, whose files take a page of 4 kB each, and not for the second beside it.</summary>
    private const string Room = "size=64k";

    private readonly string root = Directory.CreateTempSubdirectory("splitter-full-").FullName;
    private bool mounted;

    private string Disk => Path.Combine(root, "parts");

    public void Dispose()
    {
        if (mounted)
            Mount("umount", Disk).GetAwaiter().GetResult();
        Directory.Delete(root, recursive: true);
    }

    [SkippableFact]
    public async Task ASetThatDoesNotFitLeavesTheOldOneAndSaysSo()
    {
        Directory.CreateDirectory(Disk);
        mounted = OperatingSystem.IsLinux() && await Mount("mount", "-t", "tmpfs", "-o", Room, "none", Disk);
        Skip.IfNot(mounted, "no disk of a few kilobytes can be made here");

        var first = await Make("[tape]");
        Assert.True(first.ExitCode == 0, first.ToString());
        var old = Files();

        var second = await Make("[tape, csv, svg, png, worksheet]");
        Assert.Equal(2, second.ExitCode);
        Assert.Contains("error SPL5050: cannot write here", second.Error, StringComparison.Ordinal);
        Assert.Equal(old, Files());
        Assert.Equal(["small"], Directory.EnumerateFileSystemEntries(Disk).Select(Path.GetFileName));
    }

    [SkippableFact]
    public async Task ADiskThatMayOnlyBeReadKeepsTheOldSetAndItIsTold()
    {
        Directory.CreateDirectory(Disk);
        mounted = OperatingSystem.IsLinux() && await Mount("mount", "-t", "tmpfs", "-o", Room, "none", Disk);
        Skip.IfNot(mounted, "no disk of its own can be made here");
        Assert.Equal(0, (await Make("[tape]")).ExitCode);
        var old = Files();
        Assert.True(await Mount("mount", "-o", "remount,ro", Disk));

        var second = await Make("[tape, csv]");
        Assert.Equal((2, ""), (second.ExitCode, second.Output));
        Assert.StartsWith($"{Path.Combine(Disk, "small")}: error SPL5050: cannot write here", second.Error);
        Assert.Equal(old, Files());
    }

    /// <summary>Linux has a device that is always full: null(4), "full" of its manual pages (from memory).</summary>
    [SkippableTheory]
    [InlineData("--version")]
    [InlineData("--help")]
    [InlineData("schema")]
    public async Task AnAnswerThatFindsNoRoomIsNoDefect(string call)
    {
        Skip.IfNot(File.Exists("/dev/full"), "there is no device that is always full");
        var tool = Path.Combine(AppContext.BaseDirectory, "Splitter.Tool.dll");
        var ran = await Processes.Run(root, null, "sh", "-c", $"dotnet '{tool}' {call} > /dev/full");
        Assert.Equal((2, ""), (ran.ExitCode, ran.Output));
        Assert.StartsWith("splitter: error SPL9024: cannot write the answer: ", ran.Error, StringComparison.Ordinal);
    }

    /// <summary>Nor is one that nobody hears at all, or that has nowhere to go.</summary>
    [SkippableTheory]
    [InlineData("--version > /dev/full 2> /dev/full", 2)]
    [InlineData("plan nowhere.yaml 2> /dev/full", 2)]
    [InlineData("--version >&-", 2)]
    public async Task WhereNothingCanBeToldTheCodeTells(string call, int code)
    {
        Skip.IfNot(File.Exists("/dev/full"), "there is no device that is always full");
        var tool = Path.Combine(AppContext.BaseDirectory, "Splitter.Tool.dll");
        Assert.Equal(code, (await Processes.Run(root, null, "sh", "-c", $"dotnet '{tool}' {call}")).ExitCode);
    }

    /// <summary>A file of the tool's own that is missing is no answer without room.</summary>
    [Fact]
    public async Task ATorsoOfTheToolIsADefect()
    {
        foreach (var file in Directory.EnumerateFiles(AppContext.BaseDirectory, "S*.*"))
            if (Path.GetExtension(file) is ".dll" or ".json")
                File.Copy(file, Path.Combine(root, Path.GetFileName(file)));
        await File.WriteAllTextAsync(Path.Combine(root, "panel.yaml"), "splitter: 1\n");
        var ran = await Processes.Run(root, null, "dotnet", "Splitter.Tool.dll", "plan", "panel.yaml");
        Assert.Equal(70, ran.ExitCode);
        Assert.Contains("SPL9999", ran.Error, StringComparison.Ordinal);
    }

    private async Task<Ran> Make(string files)
    {
        var recipe = Path.Combine(root, "panel.yaml");
        await File.WriteAllTextAsync(
            recipe,
            $$"""
            splitter: 1
            artwork: { shapes: [{ wkt: "POLYGON ((10 10, 240 10, 240 60, 10 60, 10 10))", fill: "#14304f" }] }
            hoops: [{ name: small, field: 130 x 180 mm }]
            output: { folder: parts, files: {{files}} }
            """
        );
        return await ToolRun.Run("make", recipe);
    }

    private string[] Files() =>
        [
            .. Directory
                .EnumerateFiles(Path.Combine(Disk, "small"))
                .Order(StringComparer.Ordinal)
                .Select(file => $"{Path.GetFileName(file)} {Convert.ToHexString(File.ReadAllBytes(file))}"),
        ];

    private async Task<bool> Mount(string program, params string[] arguments)
    {
        try
        {
            return (await Processes.Run(root, null, program, arguments)).ExitCode == 0;
        }
        catch (System.ComponentModel.Win32Exception)
        {
            return false;
        }
    }
}
