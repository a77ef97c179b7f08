using Splitter.Geometry;

namespace Splitter.Artwork.Columns;

/// <summary>Takes a skeleton apart at its forks and sharp bends into branches that each sew as one column.</summary>
internal sealed class Junctions
{
    /// <summary>
    /// Forks nearer to each other than this many radii of the larger disc are one joint: the four arms of an X meet in
    /// two forks, 1.2 radii apart where they cross at 60 degrees.
    /// </summary>
    private const double SameJoint = 1.5;

    /// <summary>
    /// Steps nearer to a fork than this many radii of its disc lie askew. Where a stem meets a bar of its own width the
    /// last straight rung is 0.82 radii away; rungs are laid straight from there on anyway.
    /// </summary>
    private const double AskewReach = 1;

    /// <summary>A side that advances by less than this share of the column's width stands still.</summary>
    private const double StandStill = 0.06;

    private readonly InnerTriangles ground;
    private readonly Skeleton skeleton;
    private readonly List<Skeleton.Stretch> stretches;
    private readonly Dictionary<int, int> jointOf = [];
    private readonly Dictionary<int, List<(Point Centre, double Radius)>> discs = [];

    internal Junctions(InnerTriangles ground, Skeleton skeleton)
    {
        (this.ground, this.skeleton) = (ground, skeleton);
        stretches = skeleton.Stretches();
        foreach (var fork in stretches.SelectMany(s => new[] { s.From, s.To }).Where(skeleton.IsFork))
            jointOf[fork] = fork;
        foreach (var link in stretches.Where(IsInsideJoint))
            Merge(jointOf[link.From], jointOf[link.To]);
        foreach (var fork in jointOf.Keys.Order())
            (discs.TryGetValue(jointOf[fork], out var known) ? known : discs[jointOf[fork]] = []).Add(
                skeleton.Disc(fork)
            );
    }

    /// <summary>How many joints there are; a bend adds its own.</summary>
    internal int NextJoint => ground.Count;

    /// <summary>The middle of a joint of forks.</summary>
    internal Point Centre(int joint)
    {
        var centres = discs[joint].ConvertAll(d => d.Centre);
        return new Vector(
            centres.Average(c => c.X - (double)centres[0].X),
            centres.Average(c => c.Y - (double)centres[0].Y)
        ).From(centres[0]);
    }

    internal List<Branch> Branches()
    {
        var branches = new List<Branch>();
        foreach (var stretch in stretches.Where(s => !IsInsideJoint(s)))
        {
            var closed = !skeleton.IsFork(stretch.From) && stretch.From == stretch.To;
            var branch = new Branch(ground, skeleton.Steps(stretch))
            {
                StartJoint = JointAt(stretch.From),
                EndJoint = JointAt(stretch.To),
                Closed = closed,
            };
            var trimmed = closed ? branch : TrimEnd(TrimEnd(branch).Reversed()).Reversed();
            if (trimmed.Steps.Count > 0)
                branches.Add(trimmed);
        }
        return branches;
    }

    private int JointAt(int triangle) => skeleton.IsFork(triangle) ? jointOf[triangle] : Branch.Free;

    private bool IsInsideJoint(Skeleton.Stretch s) =>
        skeleton.IsFork(s.From)
        && skeleton.IsFork(s.To)
        && s.From != s.To
        && skeleton.Length(s) < SameJoint * Math.Max(skeleton.Disc(s.From).Radius, skeleton.Disc(s.To).Radius);

    private void Merge(int a, int b)
    {
        var (into, from) = (Math.Min(a, b), Math.Max(a, b));
        foreach (var fork in jointOf.Keys.ToList())
            if (jointOf[fork] == from)
                jointOf[fork] = into;
    }

    private Branch TrimEnd(Branch branch)
    {
        var (steps, keep) = (branch.Steps, branch.Steps.Count);
        if (branch.EndJoint == Branch.Free)
        {
            keep = RoundEnd(branch);
        }
        else
        {
            var near = discs[branch.EndJoint];
            while (
                keep > 0 && near.Exists(d => d.Centre.DistanceTo(branch.At(keep - 1).Middle) < AskewReach * d.Radius)
            )
                keep--;
            keep = Math.Min(keep, FanStart(branch, keep));
            // A short arm keeps the rung at its own end.
            if (keep == 0 && branch.StartJoint == Branch.Free)
                keep = 1;
        }
        return new(ground, [.. steps.Take(keep)]) { StartJoint = branch.StartJoint, EndJoint = branch.EndJoint };
    }

    /// <summary>
    /// Steps into a round end lie at random: its points are all as far from its centre. What is kept ends where the
    /// rest is no longer than half the width.
    /// </summary>
    private static int RoundEnd(Branch branch)
    {
        var last = branch.Last.Middle;
        var keep = branch.Steps.Count;
        for (var i = branch.Steps.Count - 1; i > 0; i--)
        {
            var rung = branch.At(i);
            if (rung.Middle.DistanceTo(last) > 0.5 * rung.Width)
                break;
            keep = i;
        }
        return keep;
    }

    /// <summary>How many steps remain when those that fan about one outline point at the end are taken off.</summary>
    private static int FanStart(Branch branch, int count)
    {
        if (count == 0)
            return 0;
        var last = branch.At(count - 1);
        var bound = StandStill * last.Width;
        int left = count,
            right = count;
        while (left > 1 && branch.At(left - 2).Left.DistanceTo(last.Left) <= bound)
            left--;
        while (right > 1 && branch.At(right - 2).Right.DistanceTo(last.Right) <= bound)
            right--;
        return Math.Min(left, right);
    }
}
