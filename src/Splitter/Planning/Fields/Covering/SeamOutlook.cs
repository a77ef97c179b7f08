using System.Collections.Concurrent;
using System.Collections.Immutable;
using Splitter.Geometry;

namespace Splitter.Planning.Fields.Covering;

/// <summary>
/// What seams between the fields of a cover will show at least, before any is drawn: for each two that meet, the least
/// visible way through their common ground. What one cover is compared with another by.
/// </summary>
internal sealed class SeamOutlook(CoverTask task)
{
    /// <summary>Stretches of common ground that are looked at for further fields.</summary>
    private const int Parts = 16;

    private readonly ConcurrentDictionary<(Box, Box), double> known = [];

    /// <summary>Millimetres of plain fill; 0 where nothing is known of the drawing.</summary>
    internal double Sum(ImmutableArray<Field> fields)
    {
        if (task.Raster is not { } raster)
            return 0;
        var grounds = new Box[fields.Length];
        for (var i = 0; i < grounds.Length; i++)
            grounds[i] = task.Template.Ground(fields[i]);
        var sum = 0.0;
        for (var a = 0; a < grounds.Length; a++)
        for (var b = a + 1; b < grounds.Length; b++)
        {
            var common = grounds[a].Common(grounds[b]).Common(task.Bounds);
            if (common.IsEmpty || common.Width == 0 || common.Height == 0)
                continue;
            var upright = Upright(grounds[a], grounds[b], common);
            var share = Share(grounds, a, b, common, upright);
            if (share == 0)
                continue;
            // Unordered pairs: what fields show to each other does not depend on which is named first.
            var key = First(grounds[a], grounds[b]) ? (grounds[a], grounds[b]) : (grounds[b], grounds[a]);
            if (!known.TryGetValue(key, out var cost))
                known[key] = cost = raster.Least(key.Item1, key.Item2, upright);
            sum += cost * share;
        }
        return sum;
    }

    /// <summary>Each field lies further out on its side along x than along y.</summary>
    private static bool Upright(Box a, Box b, Box common) =>
        Math.Min(a.Width, b.Width) - common.Width >= Math.Min(a.Height, b.Height) - common.Height;

    /// <summary>
    /// How much of their way two fields need: none where a third field has all of it, and only their part of it where
    /// further fields lie all across it, whose seams with each other are counted there as well.
    /// </summary>
    private static double Share(Box[] grounds, int a, int b, Box common, bool upright)
    {
        Span<Box> across = stackalloc Box[4];
        var count = 0;
        for (var c = 0; c < grounds.Length; c++)
        {
            if (c == a || c == b || !grounds[c].Meets(common))
                continue;
            var ground = grounds[c];
            if (ground.Contains(common))
                return 0;
            var all = upright
                ? ground.Left <= common.Left && ground.Right >= common.Right
                : ground.Top <= common.Top && ground.Bottom >= common.Bottom;
            if (all && count < across.Length)
                across[count++] = ground.Common(common);
        }
        var (from, to) = upright ? (common.Top, common.Bottom) : (common.Left, common.Right);
        var share = 0.0;
        for (var k = 0; k < Parts; k++)
        {
            var at = from + ((to - (double)from) * (k + 0.5) / Parts);
            var fields = 2;
            foreach (var other in across[..count])
                if (upright ? at >= other.Top && at <= other.Bottom : at >= other.Left && at <= other.Right)
                    fields++;
            share += 2.0 / fields;
        }
        return share / Parts;
    }

    private static bool First(Box a, Box b) =>
        (a.Left, a.Top, a.Right, a.Bottom).CompareTo((b.Left, b.Top, b.Right, b.Bottom)) <= 0;
}
