using CsCheck;

namespace Splitter.Tests;

public sealed class PropertyTests
{
    private static readonly Gen<int[]> Numbers = Gen.Int[0, 1000].Array[0, 9];

    [Fact]
    public void EveryRunDrawsTheSameCasesAndMoreOfThemBeginAlike() =>
        Assert.Equal(Numbers.Drawn(20).Select(d => d.Case), Numbers.Drawn(50).Take(20).Select(d => d.Case));

    [Fact]
    public void CasesDiffer() => Assert.InRange(Gen.Int.Drawn(100).Distinct().Count(), 95, 100);

    [Fact]
    public void ASeedDrawsItsCaseAgain() =>
        Assert.All(Numbers.Drawn(20), d => Assert.Equal(d.Case, Numbers.Generate(PCG.Parse(d.Seed), null, out _)));

    [Fact]
    public void WhatDoesNotHoldIsPrinted()
    {
        var failure = Assert.ThrowsAny<Exception>(() => Gen.Int[40, 45].Holds(n => n != 42));
        Assert.Contains("42", failure.Message);
    }

    /// <summary>A draw from the clock would make a run red that nobody broke.</summary>
    [Fact]
    public void NoTestDrawsCasesByItself()
    {
        var sampling = Directory
            .EnumerateFiles(Golden.Project, "*.cs", SearchOption.AllDirectories)
            .Where(file => Path.GetFileName(file) is not ("Property.cs" or "PropertyTests.cs"))
            .Where(file => File.ReadAllText(file).Contains(".Sample(", StringComparison.Ordinal));
        Assert.Empty(sampling);
    }
}
