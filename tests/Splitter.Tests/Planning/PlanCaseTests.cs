using System.Text;
using Splitter.Planning;

namespace Splitter.Tests.Planning;

/// <summary>Recipes with shapes of their own, and what planning says of them: messages, then where the fields lie.</summary>
public sealed class PlanCaseTests
{
    public static TheoryData<string> Names => [.. Golden.Cases("Planning", "Cases")];

    [Theory]
    [MemberData(nameof(Names))]
    public void ARecipeIsPlannedSo(string name)
    {
        var folder = Golden.Source("Planning", "Cases", name);
        var bytes = File.ReadAllBytes(Path.Combine(folder, "recipe.yaml"));
        var planned = Pipeline.Plan(new("recipe.yaml", bytes, _ => default));
        var text = new StringBuilder();
        foreach (var problem in planned.Diagnostics)
            text.Append(problem).Append('\n');
        if (planned.TryGet(out var outlook))
            foreach (var plan in outlook.Plans)
                Write(text, plan);
        Golden.Check(Path.Combine(folder, "expected.txt"), text.ToString());
    }

    private static void Write(StringBuilder text, Plan plan)
    {
        text.Append($"hoop {plan.Hoop.Name}, at least {plan.LowerBound}\n");
        foreach (var hooping in plan.Hoopings)
        {
            var field = hooping.Field;
            text.Append(
                FormattableString.Invariant(
                    $"{hooping.Letter} at {field.Centre.X / 1000.0:0.0}, {field.Centre.Y / 1000.0:0.0}, turn {(int)field.Turn}"
                )
            );
            if (hooping.InThroat is { } cloth)
                text.Append(FormattableString.Invariant($", {cloth / 1000.0:0.0} in the throat"));
            text.Append('\n');
        }
    }
}
