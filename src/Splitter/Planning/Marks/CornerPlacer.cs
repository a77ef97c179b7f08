using System.Collections.Immutable;
using Splitter.Artwork;
using Splitter.Diagnostics;
using Splitter.Geometry;
using Splitter.Planning.Fit;
using Splitter.Planning.Order;
using Splitter.Planning.Seams;
using Splitter.Recipes;

namespace Splitter.Planning.Marks;

/// <summary>
/// Places registration corners: inside both fields, on cloth that is bare or will be covered later, where they set the
/// hooping best for the seams that it has, and never so near to another corner that a person could take one for the
/// other.
/// </summary>
internal sealed class CornerPlacer
{
    /// <summary>
    /// Corners nearer to each other than two arms can be confused. Where common ground is so tight that there is no
    /// other way they come nearer, but never so near that the arms of one reach to the other's tack.
    /// </summary>
    private static readonly ImmutableArray<double> ArmsApart = [2, 1.25];

    /// <summary>
    /// How far from where the arms meet nothing may be sewn until the corner is used, µm: the hole there is what the
    /// tack goes through, and it has to be seen. Common practice, no source.
    /// </summary>
    private const int Seen = 2 * Units.Millimetre;

    /// <summary>
    /// How far stitches reach past a seam whose overlap is not known yet, µm: wider ones are rare, and then shorten
    /// what is seen of a corner.
    /// </summary>
    private const int UsualOverlap = 2500;

    private readonly Recipe recipe;
    private readonly Layout layout;
    private readonly Division division;
    private readonly GroundMap ground;
    private readonly Poses poses;
    private readonly List<Corner> corners = [];

    private CornerPlacer(Recipe recipe, Drawing drawing, Layout layout, Division division)
    {
        this.recipe = recipe;
        this.layout = layout;
        this.division = division;
        ground = new(drawing, division);
        poses = new(layout.Fields.Length, recipe.Registration.Accuracy, recipe.Cloth.Stretch, layout.Fields[0].Centre);
        poses.AddFirst();
    }

    internal static Result<PlacedCorners> Place(
        Recipe recipe,
        Drawing drawing,
        Layout layout,
        Division division,
        Sequence sequence,
        int jobs = 1
    )
    {
        var placer = new CornerPlacer(recipe, drawing, layout, division);
        var settings = new CornerSetting?[layout.Fields.Length];
        for (var receiver = 1; receiver < layout.Fields.Length; receiver++)
        {
            var planned = sequence.Donors[receiver];
            // The order was chosen before it was known where cloth is free: others may have room.
            var anyone = Enumerable.Range(0, receiver).ToImmutableArray();
            var chosen = ArmsApart
                .SelectMany(arms => (ImmutableArray<int>[])[planned, anyone], (arms, donors) => (arms, donors))
                .Select(o => placer.Choose(receiver, o.donors, o.arms * recipe.Registration.CornerArm, jobs))
                .FirstOrDefault(found => found is not null);
            if (chosen is null)
                return Result.Fail<PlacedCorners>(
                    PlanProblems.TooFewCorners(
                        recipe.PlaceOf("registration.corners"),
                        Letters.Of(receiver),
                        string.Join(
                            ", ",
                            anyone.Where(d => planned.Contains(d) || placer.Shares(receiver, d)).Select(Letters.Of)
                        ),
                        recipe.Fields.Place is not FewestFields,
                        layout.Fields[receiver].Hoop
                    )
                );
            placer.Take(receiver, chosen.Corners);
            settings[receiver] = chosen.Setting;
        }
        return Result.Of(new PlacedCorners([.. placer.corners.OrderBy(c => c.Donor)], [.. settings]));
    }

    private ChosenCorners? Choose(int receiver, ImmutableArray<int> donors, double apart, int jobs)
    {
        var rules = recipe.Registration;
        var grids = donors
            .Zip(
                InOrder.Select(
                    donors,
                    jobs,
                    d =>
                    {
                        var common = Common(receiver, d);
                        // A bedspread has hundreds elsewhere.
                        var around = common.Grown((int)Math.Ceiling(apart));
                        var near = corners.FindAll(c => around.Contains(c.At));
                        return new CornerGrid(
                            common,
                            d,
                            rules,
                            p => ground.IsSewnBefore(receiver, p),
                            p => near.TrueForAll(c => c.At.DistanceTo(p) >= apart) && StaysSeen(p, d, receiver)
                        );
                    }
                )
            )
            .ToDictionary(grid => grid.First, grid => grid.Second);
        return new CornerChoice(poses, Seams(receiver), rules.CornerArm, apart).Best(
            [.. donors.SelectMany(d => There(receiver, d)), .. donors.SelectMany(d => grids[d].Spread())],
            (corner, steps) => grids[corner.Donor].Around(corner.At, steps),
            rules.CornerCount,
            rules.IsCountAsked
        );
    }

    /// <summary>Nothing is sewn over a corner between the hooping that sews it and the one that is set by it.</summary>
    private bool StaysSeen(Point at, int donor, int receiver)
    {
        // The map goes by territories, past whose edges overlaps reach.
        var radius = Seen + (recipe.Overlap.Width ?? UsualOverlap);
        for (var dy = -2; dy <= 2; dy++)
        for (var dx = -2; dx <= 2; dx++)
            if (ground.IsSewnBetween(donor, receiver, new(at.X + (dx * radius / 2), at.Y + (dy * radius / 2))))
                return false;
        return true;
    }

    /// <summary>Corners that a donor sews anyway.</summary>
    private IEnumerable<CornerCandidate> There(int receiver, int donor)
    {
        var common = Common(receiver, donor);
        return corners
            .Where(c => c.Donor == donor && common.Contains(c.At) && common.Contains(c.ArmX) && common.Contains(c.ArmY))
            .Where(c => StaysSeen(c.At, donor, receiver))
            .Select(c => new CornerCandidate(
                c.At,
                c.ArmX,
                c.ArmY,
                donor,
                CornerGrid.Sewn(c.At, c.ArmX, c.ArmY, p => ground.IsSewnBefore(receiver, p)),
                IsThere: true
            ));
    }

    /// <summary>There is ground between them on which one corner has room.</summary>
    private bool Shares(int receiver, int donor) =>
        CommonGround.HoldsOne(
            CommonGround.Of(recipe, layout.Fields[receiver], layout.Fields[donor]),
            recipe.Registration
        );

    private Box Common(int receiver, int donor) =>
        CommonGround.Of(recipe, layout.Fields[receiver], layout.Fields[donor]).Grown(-CommonGround.CornerMargin);

    /// <summary>
    /// Where a hooping meets others; where nothing is cut, the corners of its ground, against the first.
    /// </summary>
    private ImmutableArray<CornerChoice.SeamPlace> Seams(int hooping)
    {
        ImmutableArray<CornerChoice.SeamPlace> found =
        [
            .. from crossing in division.Crossings
            where crossing.Earlier == hooping || crossing.Later == hooping
            group crossing by (crossing.Earlier, crossing.Later) into meeting
            orderby meeting.Key
            let other = meeting.Key.Later == hooping ? meeting.Key.Earlier : (int?)null
            from at in Extremes.Of(meeting.SelectMany(c => c.Line.Points))
            select new CornerChoice.SeamPlace(at, other),
        ];
        return found.IsEmpty
            ? [.. Extremes.Of(layout.Grounds[hooping]).Select(at => new CornerChoice.SeamPlace(at, 0))]
            : found;
    }

    private void Take(int receiver, ImmutableArray<CornerCandidate> chosen)
    {
        poses.Add([.. chosen.Select(c => new TakenCorner(c.At, c.Donor))]);
        foreach (var c in chosen.OrderBy(c => (c.Donor, c.At.Y, c.At.X)))
        {
            var same = corners.FindIndex(other => other.At == c.At);
            if (same >= 0)
                corners[same] = corners[same] with { Receivers = corners[same].Receivers.Add(receiver) };
            else
            {
                var id = $"{Letters.Of(c.Donor)}{corners.Count(other => other.Donor == c.Donor) + 1}";
                corners.Add(new(id, c.At, c.ArmX, c.ArmY, c.Donor, [receiver]));
            }
        }
    }
}
