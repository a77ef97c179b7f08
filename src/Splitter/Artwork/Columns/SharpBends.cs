using Splitter.Geometry;

namespace Splitter.Artwork.Columns;

/// <summary>
/// Cuts branches where the ground turns a sharp corner, as an L does. One column round it would fan its rungs about the
/// inner corner and pile up thread there; two columns of which one runs on into the outer corner lie flat.
/// </summary>
internal sealed class SharpBends(InnerTriangles ground)
{
    /// <summary>
    /// From this turn on a corner is cut, radians (60 degrees). Below it a column mitres: the rung from corner to
    /// corner is then at most 1.16 times the width.
    /// </summary>
    private const double Sharp = 60 * Math.PI / 180;

    /// <summary>
    /// The turn of the outline's outer side below which it is round, radians (35 degrees): a column follows it.
    /// </summary>
    private const double OuterCorner = 35 * Math.PI / 180;

    /// <summary>How far the inner side advances, in widths of the column, while the corner is passed.</summary>
    private const double InnerAdvance = 0.2;

    /// <summary>
    /// The outer side of a bend is no longer than this, in widths; a longer way leads round the other end of the ring.
    /// </summary>
    private const double OuterReach = 5;

    /// <summary>How far from its vertex an outline's turn is looked at, in widths.</summary>
    internal const double CornerReach = 0.15;

    internal List<Branch> Cut(List<Branch> branches, int firstJoint)
    {
        var cut = new List<Branch>();
        foreach (var branch in branches)
        {
            var bends = Find(branch);
            if (bends.Count == 0)
            {
                cut.Add(branch);
                continue;
            }
            var (steps, start, joint) = (branch.Steps, 0, branch.StartJoint);
            var first = firstJoint;
            foreach (var (from, to) in bends)
            {
                cut.Add(Part(steps[start..(from + 1)], joint, firstJoint));
                (start, joint) = (to, firstJoint++);
            }
            if (!branch.Closed)
            {
                cut.Add(Part(steps[start..], joint, branch.EndJoint));
                continue;
            }
            // A loop's last stretch runs on into its first.
            var opening = cut[^bends.Count];
            cut[^bends.Count] = Part([.. steps[start..], .. opening.Steps], joint, first);
        }
        return cut;
    }

    private Branch Part(List<Facing> steps, int from, int to) =>
        new(ground, steps) { StartJoint = from, EndJoint = to };

    /// <summary>The last step before each bend and the first one after it.</summary>
    private List<(int From, int To)> Find(Branch branch)
    {
        var found = new List<(int From, int To)>();
        var from = 0;
        while (from < branch.Steps.Count - 1)
        {
            var bend =
                BendAt(branch, from, s => s.Left, s => s.Right) ?? BendAt(branch, from, s => s.Right, s => s.Left);
            if (bend is { } to)
                found.Add((from, to));
            from = bend ?? from + 1;
        }
        return found;
    }

    private int? BendAt(Branch branch, int from, Func<Facing, int> inner, Func<Facing, int> outer)
    {
        var width = branch.At(from).Width;
        Point Inner(int i) => ground.Points[inner(branch.Steps[i])];
        double turn = 0,
            best = 0;
        var to = from;
        for (var i = from + 1; i < branch.Steps.Count && Inner(i).DistanceTo(Inner(from)) <= InnerAdvance * width; i++)
        {
            var (before, after) = (Across(branch.At(i - 1)), Across(branch.At(i)));
            turn += Math.Atan2(Vector.Cross(before, after), Vector.Dot(before, after));
            if (Math.Abs(turn) > best + 0.01)
                (best, to) = (Math.Abs(turn), i);
        }
        if (best < Sharp || !HasCorner(outer(branch.Steps[from]), outer(branch.Steps[to]), width))
            return null;
        return to;
    }

    private static Vector Across(Rung rung) => Vector.Between(rung.Left, rung.Right);

    private bool HasCorner(int a, int b, double width)
    {
        var outline = new OutlineCorners(ground);
        var chain = outline.Chain(a, b, OuterReach * width) ?? outline.Chain(b, a, OuterReach * width);
        return chain is not null && chain.Exists(p => outline.Turn(p, CornerReach * width) >= OuterCorner);
    }
}
