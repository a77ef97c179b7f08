using System.Collections.Immutable;
using Splitter.Diagnostics;
using Splitter.Geometry;
using Splitter.Outputs.Pictures;
using Splitter.Outputs.Tapes;

namespace Splitter.Checking;

/// <summary>What a tape holds, whoever made it. Millimetres from the place where it starts, u right and v up.</summary>
internal sealed record TapeReport
{
    internal required string File { get; init; }

    internal required string Label { get; init; }

    internal required int Stitches { get; init; }

    internal required int Jumps { get; init; }

    /// <summary>Runs of at least three jumps after a stitch.</summary>
    internal required int Trims { get; init; }

    internal required int Stops { get; init; }

    internal required double LongestStitchMm { get; init; }

    internal required double LeftMm { get; init; }

    internal required double BottomMm { get; init; }

    internal required double RightMm { get; init; }

    internal required double TopMm { get; init; }

    /// <summary>Stitches of each step.</summary>
    internal required ImmutableArray<int> Steps { get; init; }

    /// <summary>Every stitch, in true scale.</summary>
    internal required Picture Picture { get; init; }

    /// <summary>Pixels of a millimetre: a thread of 0.4 mm is four wide.</summary>
    private const int PixelsPerMillimetre = 10;

    private const int MostPixels = 4000;

    internal byte[] ToSvg() => SvgWriter.Write(Picture);

    internal byte[] ToPng()
    {
        long height = Picture.Height / (Units.Millimetre / PixelsPerMillimetre);
        var most = MostPixels * (long)Picture.Height / Math.Max(Picture.Width, Picture.Height);
        return PngWriter.Write(Raster.Of(Picture, (int)Math.Clamp(height, 1, Math.Max(1, most))));
    }

    /// <summary>A tape's bytes to what it holds; a damaged tape gives diagnostics.</summary>
    /// <param name="file">Its name, for messages and for the picture's heading.</param>
    internal static Result<TapeReport> Read(string file, ReadOnlySpan<byte> bytes) =>
        TapeReader.Read(file, bytes).Select(tape => Of(file, tape));

    private static TapeReport Of(string file, Tape tape)
    {
        var counts = TapeCounts.Of(tape);
        return new()
        {
            File = file,
            Label = tape.Label,
            Stitches = counts.Stitches,
            Jumps = counts.Jumps,
            Trims = counts.Trims,
            Stops = counts.Stops,
            LongestStitchMm = Math.Round(counts.Longest / 10, 2, MidpointRounding.AwayFromZero),
            LeftMm = counts.Bounds.Left / 10.0,
            BottomMm = counts.Bounds.Bottom / 10.0,
            RightMm = counts.Bounds.Right / 10.0,
            TopMm = counts.Bounds.Top / 10.0,
            Steps = counts.Steps,
            Picture = TapePicture.Of(file, tape, counts),
        };
    }
}
