using Google.OrTools.Sat;
using Splitter.Planning.Fields.Covering;

namespace Splitter.Tests.Planning.Fields;

/// <summary>Set cover by a solver that is not ours: CP-SAT of OR-Tools.</summary>
internal static class CpSat
{
    /// <summary>The proven size of the smallest cover; null when the solver does not prove one within its work limit.</summary>
    internal static int? Fewest(CoverTable table, IReadOnlyCollection<int> locked)
    {
        var model = new CpModel();
        var used = Enumerable.Range(0, table.Sets).Select(i => model.NewBoolVar($"s{i}")).ToArray();
        for (var row = 0; row < table.Rows; row++)
            model.AddBoolOr(table.SetsOf(row).Select(s => used[s]));
        foreach (var set in locked)
            model.Add(used[set] == 1);
        model.Minimize(LinearExpr.Sum(used));
        var solver = new CpSolver
        {
            StringParameters = "num_workers:1,linearization_level:2,max_deterministic_time:20",
        };
        return solver.Solve(model) == CpSolverStatus.Optimal ? (int)Math.Round(solver.ObjectiveValue) : null;
    }
}
