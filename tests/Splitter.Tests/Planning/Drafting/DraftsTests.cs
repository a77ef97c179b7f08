using Splitter.Planning.Drafting;

namespace Splitter.Tests.Planning.Drafting;

/// <summary>A hoop is planned for itself and looked at as a remedy for smaller ones, and drafted once for both.</summary>
public sealed class DraftsTests
{
    [Fact]
    public void AHoopIsDraftedOnce()
    {
        var hoop = Samples.Hoop(100, 100);
        var drafts = new Drafts(Samples.Recipe(hoop), Samples.Drawing(Samples.Rectangle("a", 5, 5, 80, 80)));
        Assert.Same(drafts.Of(hoop), drafts.Of(hoop with { }));
    }
}
