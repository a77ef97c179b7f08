namespace Splitter.Benchmarks.Speed;

/// <summary>What the same work takes in other ways, and in the tool as it is packed, each a process of its own.</summary>
internal sealed class Baselines : IDisposable
{
    /// <summary>Of the renderer's picture, as fine as the pictures of thread.</summary>
    private const int PixelsPerMillimetre = 10;

    /// <summary>A program that does nothing is measured this often.</summary>
    private const int Starts = 11;

    private readonly string folder = Directory.CreateTempSubdirectory("splitter-speed-").FullName;
    private readonly PublishedPrograms programs;

    internal Baselines()
    {
        programs = new(folder);
        Empty = Measured.Least(Starts, programs.Empty);
        Version = Measured.Least(Starts, programs.Tool, "--version");
    }

    /// <summary>A program that does nothing, and the tool that tells its version.</summary>
    internal Measured? Empty { get; }
    internal Measured? Version { get; }

    /// <summary>The tool makes a workload and checks what it made; the renderer draws its artwork once.</summary>
    internal BaselineRow Of(Workload work)
    {
        var place = Directory.CreateDirectory(Path.Combine(folder, work.Name)).FullName;
        var (recipe, artwork) = (Path.Combine(place, "recipe.yaml"), Path.Combine(place, Workload.ArtworkFile));
        File.WriteAllText(recipe, work.Recipe);
        File.WriteAllText(artwork, work.Drawing());
        var pixels = $"{work.Width * PixelsPerMillimetre}";
        var row = new BaselineRow(
            Measured.Run(programs.Tool, "make", recipe),
            Measured.Run(programs.Tool, "check", recipe),
            Measured.Run("rsvg-convert", "--unlimited", "-w", pixels, "-o", Path.Combine(place, "a.png"), artwork)
        );
        Directory.Delete(place, recursive: true);
        return row;
    }

    public void Dispose() => Directory.Delete(folder, recursive: true);
}

/// <summary>Each is null where it failed: a renderer has a largest picture.</summary>
internal sealed record BaselineRow(Measured? Make, Measured? Check, Measured? Renderer);
