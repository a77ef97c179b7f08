using Splitter.Cutting;
using Splitter.Parts;
using Splitter.Planning;
using Splitter.Stitching;

namespace Splitter.Tests.Parts;

/// <summary>Corners come out before a part that sews over them, unless a later part is set by them.</summary>
public sealed class SewnOverTests
{
    /// <summary>
    /// Three fields in a row over ground that is filled all over: every corner is sewn over by the part that is set by
    /// it. Distances are measured here by sampling both lines, not with the engine's own measure.
    /// </summary>
    [Fact]
    public void StepsNameTheCornersThatComeOut()
    {
        var hoop = Samples.Hoop(130, 180);
        var recipe = Samples.Recipe(hoop);
        var drawing = Samples.Drawing(Samples.Rectangle("sea", 0, 0, 300, 120));
        var plan = Planner.Plan(new(recipe, drawing), hoop).Value;
        var sewn = Stitcher.Stitch(Cutter.Cut(drawing, plan, recipe.Overlap), 1);
        var parts = PartBuilder.Build(recipe, drawing, plan, BodySteps.Of(plan, sewn, recipe.Cloth.MostLayers));
        var gone = new HashSet<string>(StringComparer.Ordinal);
        foreach (var (i, part) in parts.Index())
        {
            var body = part.Steps.Where(s => s.Kind == StepKind.Body).SelectMany(s => s.Moves).Select(m => m.Block);
            var expected = plan
                .Corners.Where(c => c.Donor < i && c.Receivers.Max() <= i && body.Any(b => Near(b, c)))
                .Select(c => c.Id)
                .Where(gone.Add)
                .ToList();
            var stops = part.Steps.Select(s => s.Stop ?? "");
            var named = stops.Where(s => s.Contains("Machine off. Take out ", StringComparison.Ordinal)).ToList();
            if (expected.Count == 0)
            {
                Assert.Empty(named);
                continue;
            }
            var list =
                expected.Count == 1 ? expected[0] : $"{string.Join(", ", expected.SkipLast(1))} and {expected[^1]}";
            Assert.Contains(
                $"Take out {list} on the cloth: this part sews over",
                Assert.Single(named),
                StringComparison.Ordinal
            );
        }
        Assert.NotEmpty(gone);
    }

    private static bool Near(Block block, Corner corner)
    {
        var arms = new[] { corner.ArmX, corner.ArmY }
            .SelectMany(end => Enumerable.Range(0, 41).Select(k => corner.At.Towards(end, k / 40.0)))
            .ToList();
        return block
            .Stitches.Zip(block.Stitches.Skip(1))
            .Where(s => Math.Min(s.First.At.DistanceTo(corner.At), s.Second.At.DistanceTo(corner.At)) < 20_000)
            .Any(s =>
                Enumerable
                    .Range(0, 11)
                    .Select(k => s.First.At.Towards(s.Second.At, k / 10.0))
                    .Any(p => arms.Exists(a => a.DistanceTo(p) <= 2000))
            );
    }
}
