using Splitter.Diagnostics;
using Splitter.Geometry;
using Splitter.Outputs.Pictures;
using Splitter.Recipes;
using Splitter.Stitching.Density;
using Splitter.Tapes;

namespace Splitter.Checking.Inspecting;

/// <summary>What a tape holds, whoever made it.</summary>
internal sealed record TapeReport
{
    /// <summary>As the person gave it.</summary>
    internal required string File { get; init; }

    internal required string Label { get; init; }

    internal required TapeCounts Counts { get; init; }

    internal required TapeTrace Trace { get; init; }

    /// <summary>Thread by mass, and needle holes, on every square millimetre.</summary>
    internal required ThreadGrid Grid { get; init; }

    internal required StepThreads Threads { get; init; }

    /// <summary>The square with most layers: of equals, the first row's first.</summary>
    internal required Square Fullest { get; init; }

    /// <summary>Without its folder.</summary>
    internal string Name => NameOf(File);

    /// <summary>Of thread on the fullest square.</summary>
    internal double LayersMost => Grid.LayersOn(Fullest);

    /// <summary>What 99 of 100 squares that have thread do not exceed (the nearest-rank percentile).</summary>
    internal double Layers99
    {
        get
        {
            var sorted = Grid.Squares.Select(Grid.LayersOn).Where(l => l > 0).Order().ToList();
            return sorted.Count == 0 ? 0 : sorted[(((sorted.Count * 99) + 99) / 100) - 1];
        }
    }

    /// <summary>Most needle holes in one square millimetre.</summary>
    internal int HolesMost => Grid.Squares.Max(Grid.HolesIn);

    /// <summary>Pixels of a millimetre: a thread of 0.4 mm is five wide.</summary>
    private const int PixelsPerMillimetre = 12;

    private const int MostPixels = 4000;

    internal byte[] Draw(TapeView view, OutputKind kind)
    {
        var picture = TapePicture.Of(this, view);
        if (kind == OutputKind.Svg)
            return SvgWriter.Write(picture);
        using var raster = Raster.Of(picture, Pixels(picture));
        return view == TapeView.Thread ? PngWriter.WriteIndexed(raster) : PngWriter.Write(raster);
    }

    private static int Pixels(Picture picture)
    {
        var height = (long)picture.Height * PixelsPerMillimetre / Units.Millimetre;
        var most = MostPixels * (long)picture.Height / Math.Max(picture.Width, picture.Height);
        return (int)Math.Clamp(height, 1, Math.Max(1, most));
    }

    /// <summary>A tape's bytes to what it holds; a damaged tape gives diagnostics.</summary>
    /// <param name="file">Its name, for messages and for the picture's heading.</param>
    /// <param name="manifest">What stands in the manifest beside it, if there is one.</param>
    internal static Result<TapeReport> Read(string file, ReadOnlySpan<byte> bytes, byte[]? manifest = null) =>
        TapeReader.Read(file, bytes).Select(tape => Of(file, tape, manifest));

    private static TapeReport Of(string file, Tape tape, byte[]? manifest)
    {
        var counts = TapeCounts.Of(tape);
        var trace = TapeTrace.Of(tape);
        var grid = trace.ToGrid();
        return new()
        {
            File = file,
            Label = tape.Label,
            Counts = counts,
            Trace = trace,
            Grid = grid,
            Threads = StepThreads.Of(NameOf(file), counts, manifest),
            Fullest = grid.Squares.MaxBy(grid.LayersOn),
        };
    }

    private static string NameOf(string file) => file[(file.LastIndexOfAny(['/', '\\']) + 1)..];
}
