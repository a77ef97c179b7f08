namespace Splitter.Tests.Outputs;

/// <summary>Lighthouse Bay planned for its large hoop, once for all tests that look at it.</summary>
internal static class DemoPlan
{
    private static readonly Lazy<Outlook> Made = new(() =>
        Pipeline.Plan(Repository.Request(Repository.Path("recipes", "lighthouse-bay.yaml"), "large")).Value
    );

    internal static Outlook Large => Made.Value;
}
