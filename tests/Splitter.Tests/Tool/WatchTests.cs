using Splitter.Tool;

namespace Splitter.Tests.Tool;

/// <summary>Work that follows its files while they are edited.</summary>
public sealed class WatchTests : IDisposable
{
    /// <summary>Far more than any run takes; only a watch that misses a change is given up.</summary>
    private static readonly TimeSpan Longest = TimeSpan.FromMinutes(2);

    private readonly string root = Directory.CreateTempSubdirectory("splitter-watch-").FullName;

    public void Dispose() => Directory.Delete(root, recursive: true);

    [Fact]
    public async Task PlanFollowsRecipeIncludesAndArtworkAndOutlivesMistakes()
    {
        Written("hoops.yaml", "hoops: [{ name: one, field: 130 x 180 mm }]\n");
        Written("art.svg", Square(40));
        var recipe = Written("work.yaml", "splitter: 1\ninclude: [hoops.yaml]\nartwork: { file: art.svg }\n");
        await Watched(
            ["plan", recipe],
            async seen =>
            {
                await seen.Output("hoop one,");
                Written("hoops.yaml", "hoops: [{ name: two, field: 130 x 180 mm }]\n");
                await seen.Output("hoop two,");
                Written("art.svg", "<svg");
                await seen.Error("error SPL2");
                Written("art.svg", Square(50));
                await seen.Output("hoop two,");
                File.Delete(recipe);
                await seen.Error("SPL9010");
                Written(
                    "work.yaml",
                    "splitter: 1\nartwork: { file: art.svg }\nhoops: [{ name: three, field: 5 x 7 in }]\n"
                );
                await seen.Output("hoop three,");
            }
        );
    }

    [Fact]
    public async Task MakeWritesTheSetAgain()
    {
        Written("art.svg", Square(40));
        var text = "splitter: 1\nartwork: { file: art.svg }\nhoops: [{ name: one, field: 130 x 180 mm }]\n";
        var recipe = Written("work.yaml", text + "output: { folder: parts, files: [tape] }\n");
        var manifest = Path.Combine(root, "parts", "one", "manifest.json");
        await Watched(
            ["make", recipe],
            async seen =>
            {
                await seen.Output("parts/one");
                var first = await File.ReadAllTextAsync(manifest);
                Written("art.svg", Square(60));
                await seen.Output("parts/one");
                Assert.NotEqual(first, await File.ReadAllTextAsync(manifest));
            }
        );
    }

    private static async Task Watched(string[] call, Func<Seen, Task> edit)
    {
        using var stop = new CancellationTokenSource(Longest);
        await using var output = new Heard();
        await using var error = new Heard();
        var running = CommandLine.Run([.. call, "--watch"], output, error, stop.Token);
        try
        {
            await edit(new(output, error, running));
            Assert.False(running.IsCompleted);
        }
        finally
        {
            await stop.CancelAsync();
            await Assert.ThrowsAnyAsync<OperationCanceledException>(() => running);
        }
    }

    /// <summary>What was written since it was last looked for.</summary>
    private sealed class Seen(Heard output, Heard error, Task running)
    {
        private int told;
        private int complained;

        internal async Task Output(string text) => told = await Behind(output, text, told);

        internal async Task Error(string text) => complained = await Behind(error, text, complained);

        private async Task<int> Behind(Heard writer, string text, int from)
        {
            while (!running.IsCompleted)
            {
                if (writer.ToString().IndexOf(text, from, StringComparison.Ordinal) is >= 0 and var at)
                    return at + text.Length;
                await Task.Delay(20);
            }
            await running;
            throw new InvalidOperationException($"The watch ended before '{text}': {error}");
        }
    }

    /// <summary>What is written by one thread and read by another.</summary>
    private sealed class Heard : StringWriter
    {
        private readonly Lock one = new();

        public override void Write(char value)
        {
            lock (one)
                base.Write(value);
        }

        public override void Write(string? value)
        {
            lock (one)
                base.Write(value);
        }

        public override Task WriteAsync(string? value)
        {
            Write(value);
            return Task.CompletedTask;
        }

        public override string ToString()
        {
            lock (one)
                return base.ToString();
        }
    }

    private static string Square(int side) =>
        $"<svg xmlns='http://www.w3.org/2000/svg' width='{side}mm' height='{side}mm'><rect width='{side}mm' height='{side}mm'/></svg>";

    private string Written(string name, string text)
    {
        var path = Path.Combine(root, name);
        File.WriteAllText(path, text);
        return path;
    }
}
