using Splitter.Artwork;
using Splitter.Diagnostics;
using Splitter.Planning.Drafting;
using Splitter.Recipes;

namespace Splitter.Tests.Planning.Drafting;

/// <summary>Two fields of 100 mm over a strip and a motif from 90 to 120 mm. Which draft is taken, whichever comes first.</summary>
public sealed class DraftChoiceTests
{
    private static readonly Hoop Hoop = Samples.Hoop(100, 100);

    private static readonly Drawing Drawing = Samples.Drawing(
        Samples.Rectangle("strip", 0, 0, 180, 50),
        Samples.Rectangle("motif", 90, 60, 30, 30) with
        {
            WantsWhole = true,
        }
    );

    private static readonly PlanDraft Holds = Draft(0, 80);
    private static readonly PlanDraft Cuts = Draft(10, 95);

    [Fact]
    public void WhatWantsToStayWholeIsNotCutForSeamsThatShowLess()
    {
        Taken(Holds.Shows(500), Cuts.Shows(1));
        Taken(Cuts.Shows(1), Cuts.Shows(500));
    }

    /// <summary>By two hundredths more or less no one tells them apart.</summary>
    [Theory]
    [InlineData(100, 101.9, true)]
    [InlineData(100, 102.1, false)]
    public void SeamsThatShowAsMuchLeaveTheChoiceToTheFit(double poor, double good, bool isFitTaken)
    {
        var (loose, close) = (Holds.Shows(poor).Misses(900, 300), Holds.Shows(good).Misses(800, 800));
        if (isFitTaken)
            Taken(close, loose);
        else
            Taken(loose, close);
    }

    /// <summary>A field that has next to nothing of the strip is a hooping that is hardly worth it.</summary>
    [Fact]
    public void HoopingsThatSewLittleCountBeforeTheFit() =>
        Taken(Draft(0, 80).Misses(900), Draft(0, 80, 175).Misses(100));

    [Fact]
    public void TwoWhoseSeamsShowLeastAreWorthACloserLook()
    {
        var failed = Result.Fail<PlanDraft>(new Diagnostic(Severity.Error, "SPL3000", Place.Whole("test"), "none"));
        PlanDraft[] drafts = [Holds.Shows(3), Holds.Shows(1), Holds.Shows(2)];
        Assert.Equal(
            [drafts[1], drafts[2]],
            DraftChoice.Least([failed, .. drafts.Select(d => Result.Of(d))]).Select(d => d.Value)
        );
        Assert.Same(drafts[1], DraftChoice.Best(Drawing, [failed, .. drafts.Select(d => Result.Of(d))]).Value);
        Assert.False(DraftChoice.Best(Drawing, [failed]).Succeeded);
    }

    private static void Taken(PlanDraft one, PlanDraft other)
    {
        Assert.Same(one, DraftChoice.Best(Drawing, [Result.Of(one), Result.Of(other)]).Value);
        Assert.Same(one, DraftChoice.Best(Drawing, [Result.Of(other), Result.Of(one)]).Value);
    }

    private static PlanDraft Draft(params int[] lefts) => HandDraft.Of(Hoop, lefts, [null, null]);
}
