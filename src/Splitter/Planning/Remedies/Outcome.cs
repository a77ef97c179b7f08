using Splitter.Geometry;
using static System.FormattableString;

namespace Splitter.Planning.Remedies;

/// <summary>What a trial makes of a join.</summary>
/// <param name="Change">What was changed, as a person would do it.</param>
/// <param name="Misfit">Not exceeded 19 times in 20, µm.</param>
/// <param name="Covered">How far the two sides lie over each other, µm.</param>
internal sealed record Outcome(string Change, double Misfit, double Covered)
{
    internal bool Helps => Misfit <= Covered;

    /// <summary>How many times what is covered the misfit is.</summary>
    internal double Ratio => Misfit / Covered;

    internal string Figures =>
        Invariant($"{Units.ToMillimetres(Misfit):0.00} mm against {Units.ToMillimetres(Covered):0.00} mm");
}
