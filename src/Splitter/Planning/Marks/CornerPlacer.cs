using System.Collections.Immutable;
using Splitter.Artwork;
using Splitter.Diagnostics;
using Splitter.Geometry;
using Splitter.Planning.Order;
using Splitter.Planning.Seams;
using Splitter.Recipes;

namespace Splitter.Planning.Marks;

/// <summary>
/// Places registration corners: inside both fields, on cloth that is bare or will be covered later, far apart, and never
/// so near to another corner that a person could take one for the other.
/// </summary>
internal static class CornerPlacer
{
    /// <summary>
    /// Candidates looked at for one hooping: larger common ground is searched more coarsely, for pairs of them are
    /// compared, and time grows with the square.
    /// </summary>
    private const int MostCandidates = 1200;

    /// <summary>
    /// How far a corner stays inside the cloth's edge, µm: a tack nearer to it tears the cloth out. Common practice, no
    /// source.
    /// </summary>
    private const int ClothEdge = 5 * Units.Millimetre;

    /// <summary>Distance between places along an arm at which the ground is looked at, µm.</summary>
    private const int ArmStep = Units.Millimetre;

    /// <summary>
    /// A corner may move this much nearer to the others, µm, to get one more millimetre of its arms off sewn stitching:
    /// it is loose and must come out again without harm.
    /// </summary>
    private const int SewnPenalty = 4 * Units.Millimetre;

    /// <summary>
    /// Corners nearer to each other than two arms can be confused. Where common ground is so tight that there is no other
    /// way they come nearer, but never so near that their tacks could be.
    /// </summary>
    private static readonly ImmutableArray<double> ArmsApart = [2, 1, 0.5];

    internal static Result<ImmutableArray<Corner>> Place(
        Recipe recipe,
        Drawing drawing,
        Layout layout,
        Division division,
        Sequence sequence
    )
    {
        var rules = recipe.Registration;
        var ground = new GroundMap(drawing, division);
        var corners = new List<Corner>();
        var problems = new List<Diagnostic>();
        for (var receiver = 1; receiver < layout.Fields.Length; receiver++)
        {
            var donor = sequence.Donors[receiver]!.Value;
            var common = layout
                .Fields[receiver]
                .Usable.Common(layout.Fields[donor].Usable)
                .Grown(-CommonGround.CornerMargin);
            if (recipe.Cloth.OnDrawing is { } cloth)
                common = common.Common(cloth.Grown(-ClothEdge));
            var anywhere = Candidates(common, rules.CornerArm, p => ground.FirstSewn(p) <= donor);
            // A corner that the donor sews anyway serves a second receiver as well.
            var shared = corners
                .Where(c =>
                    c.Donor == donor && common.Contains(c.At) && common.Contains(c.ArmX) && common.Contains(c.ArmY)
                )
                .Select(c => new Candidate(c.At, c.ArmX, c.ArmY, 0))
                .ToList();
            var chosen = ArmsApart
                .Select(arms => arms * rules.CornerArm)
                .Select(apart =>
                {
                    var free = anywhere.Where(c => corners.TrueForAll(other => other.At.DistanceTo(c.At) >= apart));
                    return Choose([.. shared, .. free], rules.CornerCount, apart);
                })
                .FirstOrDefault(found => found.Count >= 2, []);
            if (chosen.Count < 2)
            {
                problems.Add(
                    PlanProblems.TooFewCorners(
                        recipe.PlaceOf("registration.corners"),
                        Letters.Of(receiver),
                        Letters.Of(donor),
                        layout.Fields[receiver].Hoop
                    )
                );
                continue;
            }
            foreach (var c in chosen.OrderBy(c => (c.At.Y, c.At.X)))
            {
                var same = corners.FindIndex(other => other.At == c.At);
                if (same >= 0)
                    corners[same] = corners[same] with { Receivers = corners[same].Receivers.Add(receiver) };
                else
                {
                    var id = $"{Letters.Of(donor)}{corners.Count(other => other.Donor == donor) + 1}";
                    corners.Add(new(id, c.At, c.ArmX, c.ArmY, donor, [receiver]));
                }
            }
        }
        return Result.From<ImmutableArray<Corner>>([.. corners.OrderBy(c => c.Donor)], problems);
    }

    /// <summary>One way to lay a corner.</summary>
    /// <param name="Sewn">How many places along its arms lie on stitching that is there already.</param>
    private sealed record Candidate(Point At, Point ArmX, Point ArmY, int Sewn);

    private static List<Candidate> Candidates(Box common, int arm, Func<Point, bool> sewn)
    {
        var found = new List<Candidate>();
        if (common.IsEmpty)
            return found;
        var step = Math.Max(
            CommonGround.CornerStep,
            (int)Math.Sqrt((double)common.Width * common.Height / MostCandidates)
        );
        step = Units.OnTape(step);
        var middle = common.Centre;
        for (var y = Units.OnTape(common.Top + (Units.TapeStep / 2)); y <= common.Bottom; y += step)
        for (var x = Units.OnTape(common.Left + (Units.TapeStep / 2)); x <= common.Right; x += step)
        {
            var at = new Point(x, y);
            var best = (
                from sx in new[] { 1, -1 }
                from sy in new[] { 1, -1 }
                let armX = new Point(x + (sx * arm), y)
                let armY = new Point(x, y + (sy * arm))
                where common.Contains(armX) && common.Contains(armY)
                let inwards = (sx * (middle.X - x) >= 0 ? 0 : 1) + (sy * (middle.Y - y) >= 0 ? 0 : 1)
                let candidate = new Candidate(at, armX, armY, Along(at, armX, sewn) + Along(at, armY, sewn))
                orderby candidate.Sewn, inwards
                select candidate
            ).FirstOrDefault();
            if (best is not null)
                found.Add(best);
        }
        return found;
    }

    private static int Along(Point from, Point to, Func<Point, bool> sewn)
    {
        var places = (int)from.DistanceTo(to) / ArmStep;
        return Enumerable.Range(0, places + 1).Count(i => sewn(from.Towards(to, (double)i / places)));
    }

    /// <summary>The best pair first, then one by one whatever lies farthest from those chosen.</summary>
    private static List<Candidate> Choose(List<Candidate> candidates, int count, double apart)
    {
        Candidate? first = null,
            second = null;
        var best = double.NegativeInfinity;
        for (var i = 0; i < candidates.Count; i++)
        for (var j = i + 1; j < candidates.Count; j++)
        {
            var (a, b) = (candidates[i], candidates[j]);
            var distance = a.At.DistanceTo(b.At);
            var worth = distance - (SewnPenalty * (double)(a.Sewn + b.Sewn));
            if (distance >= CommonGround.ShortestBase && worth > best)
                (best, first, second) = (worth, a, b);
        }
        if (first is null || second is null)
            return [];
        var chosen = new List<Candidate> { first, second };
        while (chosen.Count < count)
        {
            var next = candidates
                .Select(c => (Candidate: c, Nearest: chosen.Min(o => o.At.DistanceTo(c.At))))
                .Where(c => c.Nearest >= apart)
                .OrderByDescending(c => c.Nearest - (SewnPenalty * (double)c.Candidate.Sewn))
                .Select(c => c.Candidate)
                .FirstOrDefault();
            if (next is null)
                break;
            chosen.Add(next);
        }
        return chosen;
    }
}
