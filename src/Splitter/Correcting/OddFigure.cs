using System.Collections.Immutable;
using Splitter.Geometry;
using Splitter.Planning;
using Splitter.Planning.Fit;
using Splitter.Recipes;

namespace Splitter.Correcting;

/// <summary>A figure without which all others agree, so that it is the first to be read again.</summary>
/// <param name="Name">Where it was read.</param>
/// <param name="Right">What would agree with the others, as the hoop lies before the person, µm.</param>
/// <param name="Up">The same upwards.</param>
internal sealed record OddFigure(string Name, int Right, int Up)
{
    /// <summary>Null where no one of them, or more than one, would make the others agree.</summary>
    internal static OddFigure? Of(
        Recipe recipe,
        PredictedFit fit,
        Plan plan,
        int hooping,
        ImmutableArray<Sighting> seen
    )
    {
        var found = new List<(Sighting Odd, Judgement Others)>();
        foreach (var odd in seen.Where(s => s.ShowsBothWays))
        {
            var others = seen.Remove(odd);
            if (!Sighting.ShowTurn([.. others.Where(s => s.ShowsBothWays)]))
                continue;
            var judged = Judgement.Of(recipe, fit, hooping, others);
            if (judged.Verdict is Verdict.Fits or Verdict.Moved or Verdict.Turned)
                found.Add((odd, judged));
        }
        if (found is not [var (only, without)])
            return null;
        var (field, at) = (plan.Hoopings[hooping].Field, new Vector(only.At.X, only.At.Y));
        var tip = field.ToField((at - without.Lays(only.At)).From(field.Centre));
        return new(only.Name, tip.U, tip.V);
    }
}
