namespace Splitter.Stitching.Fills;

/// <summary>
/// In which order the sections of one polygon are sewn: always one whose removal leaves the unsewn ground in one piece,
/// so that the needle travels under stitches that come later, to the very last. The sections' tree of shortest ways
/// from a root says which these are: its leaves. The nearest leaf is next.
/// </summary>
internal sealed class SectionOrder
{
    private const int None = -1;

    private readonly FillGround ground;
    private readonly Router router;
    private readonly int[] parent;
    private readonly int[] children;
    private readonly bool[] done;
    private readonly bool[] covered;

    internal SectionOrder(FillGround ground, Router router)
    {
        (this.ground, this.router) = (ground, router);
        (parent, children) = (new int[ground.Sections], new int[ground.Sections]);
        (done, covered) = (new bool[ground.Sections], new bool[ground.Sections]);
    }

    /// <summary>A link leads to ground that is still to be sewn.</summary>
    internal bool IsOpen(Link link) => !done[ground.SectionOf[link.ToSpan]];

    /// <summary>Plans the sections of one polygon and says with which to begin.</summary>
    /// <param name="at">Where the needle is; null when it may begin anywhere.</param>
    internal int Begin(ReadOnlySpan<int> sections, Stand? at)
    {
        var root = Farthest(sections, at ?? Bottom(sections[0]));
        Farthest(sections, Bottom(root));
        foreach (var section in sections)
            if (router.Via(section) is { } via)
            {
                parent[section] = ground.SectionOf[via.FromSpan];
                children[parent[section]]++;
            }
            else
                parent[section] = None;
        if (at is { } stand)
            return Next(stand);
        var first = root;
        foreach (var section in sections)
            if (children[section] == 0 && router.DistanceTo(section) > router.DistanceTo(first))
                first = section;
        return first;
    }

    /// <summary>The nearest section that may be sewn next, reached under unsewn ground.</summary>
    internal int Next(Stand at) => Nearest(at) ?? throw new InvalidOperationException("Unsewn ground has come apart.");

    /// <summary>
    /// Where along its row the needle will leave a section that is sewn; null when nothing is left to sew.
    /// </summary>
    /// <param name="at">Where the section ends.</param>
    internal double? WayOut(Stand at)
    {
        if (Nearest(at) is not { } section)
            return null;
        var leaves = at.U;
        for (; router.Via(section) is { } via; section = ground.SectionOf[via.FromSpan])
        {
            var (from, to) = (ground.Scan.Spans[via.FromSpan], ground.Scan.Spans[via.ToSpan]);
            leaves = Math.Clamp(Math.Clamp(at.U, to.From, to.To), from.From, from.To);
        }
        return leaves;
    }

    private int? Nearest(Stand at) =>
        router.Nearest(at, section => !covered[section], section => !done[section] && children[section] == 0);

    /// <param name="isCovered">Rows lie on it: travel may not cross it any more.</param>
    internal void Done(int section, bool isCovered)
    {
        (done[section], covered[section]) = (true, isCovered);
        if (parent[section] != None)
            children[parent[section]]--;
    }

    /// <summary>A place in a section.</summary>
    internal Stand Bottom(int section) =>
        new(ground.SpansOf(section)[0], ground.Scan.Spans[ground.SpansOf(section)[0]].Middle);

    /// <summary>The section farthest from a stand; every one of the polygon is reached.</summary>
    private int Farthest(ReadOnlySpan<int> sections, Stand from)
    {
        router.Nearest(from, _ => true, _ => false);
        var farthest = sections[0];
        foreach (var section in sections)
            if (router.DistanceTo(section) > router.DistanceTo(farthest))
                farthest = section;
        return farthest;
    }
}
