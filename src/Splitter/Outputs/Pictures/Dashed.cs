using System.Collections.Immutable;
using Splitter.Geometry;

namespace Splitter.Outputs.Pictures;

/// <summary>Lines cut into dashes, so that every drawing of a picture has the same ones.</summary>
internal static class Dashed
{
    internal static ImmutableArray<ImmutableArray<Point>> Cut(ImmutableArray<Point> line, int dash, int gap)
    {
        var dashes = ImmutableArray.CreateBuilder<ImmutableArray<Point>>();
        var current = ImmutableArray.CreateBuilder<Point>();
        current.Add(line[0]);
        var (drawing, left) = (true, (double)dash);
        for (var i = 1; i < line.Length; i++)
        {
            var (from, to) = (line[i - 1], line[i]);
            var (length, done) = (from.DistanceTo(to), 0.0);
            while (length - done > left)
            {
                done += left;
                var at = from.Towards(to, done / length);
                if (drawing)
                {
                    current.Add(at);
                    dashes.Add(current.ToImmutable());
                }
                current.Clear();
                current.Add(at);
                drawing = !drawing;
                left = drawing ? dash : gap;
            }
            left -= length - done;
            if (drawing)
                current.Add(to);
        }
        if (drawing && current.Count > 1)
            dashes.Add(current.ToImmutable());
        return dashes.ToImmutable();
    }
}
