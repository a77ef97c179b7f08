using CsCheck;
using Splitter.Artwork.Columns;
using Splitter.Geometry;

namespace Splitter.Tests.Artwork.Columns;

/// <summary>Columns against the polygon engine's own stroke outline, which knows nothing of rungs.</summary>
public sealed class StrokeColumnsTests
{
    [Fact]
    public void ColumnsCoverWhatAPenDrawsAlongCorneredLines() =>
        Gen.Select(StrokePaths.AnyCornered, Gen.Int[800, 8000], Gen.Enum<Cap>(), Gen.Enum<Join>())
            // A mitre beyond the limit is cut off flat by the engine's outline, bevelled by SVG and here.
            .Where((path, _, _, join) => join != Join.Mitre || SharpestMitre(path) < 4)
            .Holds((path, width, cap, join) => Check(path, width, cap, join, join), cases: 300);

    /// <summary>A curve's own bends are round, whatever its joins are. It does not end in a hook smaller than the pen.</summary>
    [Fact]
    public void ColumnsCoverWhatAPenDrawsAlongCurves() =>
        Gen.Select(StrokePaths.AnySmooth, Gen.Int[800, 8000], Gen.Enum<Cap>(), Gen.Enum<Join>())
            .Where((path, width, _, _) => StrokePaths.EndsRunOn(path, width / 2))
            .Holds((path, width, cap, join) => Check(path, width, cap, join, Join.Round), cases: 300);

    [Fact]
    public void ColumnsCoverWhatAPenDrawsAlongWaveringLines() =>
        Gen.Select(StrokePaths.Wavering, Gen.Int[800, 8000], Gen.Enum<Cap>())
            .Where((path, width, _) => path.Length > 4 * width && StrokePaths.EndsRunOn(path, width / 2))
            .Holds((path, width, cap) => Check(path, width, cap, Join.Round, Join.Round), cases: 300);

    private static void Check(Polyline path, int width, Cap cap, Join join, Join drawn)
    {
        var pen = Polygons.Stroke(path, width, cap, drawn);
        var columns = ColumnGround.Of(StrokeColumns.From(path, width, cap, join, 4));
        var missing = Polygons.Subtract(pen, columns).Area / pen.Area;
        var outside = Polygons.Subtract(columns, pen).Area / pen.Area;
        Assert.True(missing <= 0.02, $"{missing:P2} missing");
        Assert.True(outside <= 0.01, $"{outside:P2} outside");
    }

    private static double SharpestMitre(Polyline path)
    {
        var p = path.Points;
        var sharpest = 1.0;
        for (var i = path.IsClosed ? 0 : 1; i < p.Length - 1; i++)
        {
            var (a, b) = (Vector.Between(i > 0 ? p[i - 1] : p[^2], p[i]).Unit, Vector.Between(p[i], p[i + 1]).Unit);
            sharpest = Math.Max(sharpest, Math.Sqrt(2 / (1 + Vector.Dot(a, b))));
        }
        return sharpest;
    }
}
