using System.Collections.Immutable;
using Splitter.Geometry;
using Splitter.Planning;
using Splitter.Planning.Fields;
using Splitter.Planning.Fields.Covering;

namespace Splitter.Tests.Planning.Fields;

/// <summary>
/// What seams between fields of 120 x 120 mm promise to show on a fill of 200 x 200 mm: their length, give or take a cell of 2 mm. Millimetres.
/// </summary>
public sealed class SeamOutlookTests
{
    private static readonly FieldTemplate Template = new(Samples.Hoop(120, 120), 0, 0);

    [Fact]
    public void SideBySideTheyShowTheHeightThatTheyShare()
    {
        Shows(120, At(60, 60), At(140, 60));
        Shows(120, At(60, 60), At(60, 140));
        Shows(80, At(60, 60), At(140, 100));
    }

    [Fact]
    public void ApartTheyShowNothing()
    {
        Shows(0, At(60, 60));
        Shows(0, At(60, 60), At(180, 60)); // Edge to edge.
        Shows(0, At(60, 60), At(60, 300)); // Off the drawing.
    }

    /// <summary>The middle one has all that the outer ones share: two seams, not three.</summary>
    [Fact]
    public void WhatAThirdFieldHoldsIsItsOwn()
    {
        Shows(240, At(60, 60), At(100, 60), At(140, 60));
        Shows(240, At(60, 60), At(60, 140), At(60, 100));
    }

    /// <summary>
    /// Four fields in a square: each two have a way of 120 mm, of which the last third lies in all four, where it counts
    /// half; so looked at in sixteen parts 4 · 120 · (11 + 5 / 2) / 16.
    /// </summary>
    [Fact]
    public void WhereFourMeetEachSeamCountsHalf() => Shows(405, At(60, 60), At(140, 60), At(60, 140), At(140, 140));

    /// <summary>However many lie across the ground that two share: what more than four have of it counts no less.</summary>
    [Fact]
    public void ManyMayMeetInOnePlace()
    {
        ImmutableArray<Field> two = [At(60, 60), At(140, 60)];
        ImmutableArray<Field> across = [.. Enumerable.Range(0, 7).Select(i => At(100, 100 + i))];
        Assert.InRange(Outlook().Sum([.. two, .. across]), Outlook().Sum([.. two, .. across[..4]]), double.MaxValue);
    }

    /// <summary>Whichever is named first.</summary>
    [Fact]
    public void OrderChangesNothing()
    {
        ImmutableArray<Field> fields = [At(60, 60), At(140, 70), At(75, 140), At(140, 140)];
        Assert.Equal(Outlook().Sum(fields), Outlook().Sum([.. fields.Reverse()]), 9);
    }

    [Fact]
    public void OfAnUnknownDrawingNothingIsSaid() =>
        Assert.Equal(0, new SeamOutlook(Task() with { Raster = null }).Sum([At(60, 60), At(140, 60)]));

    private static void Shows(double length, params ImmutableArray<Field> fields) =>
        Assert.InRange(Outlook().Sum(fields), length * 0.97, length * 1.03);

    private static SeamOutlook Outlook() => new(Task());

    private static CoverTask Task()
    {
        var drawing = Samples.Drawing(Samples.Rectangle("fill", 0, 0, 200, 200));
        return new([drawing.Shapes[0].Footprint], [], Template, [Turn.None], null, [], []) { Raster = new(drawing) };
    }

    private static Field At(int x, int y) => Template.At(Point.FromMillimetres(x, y), Turn.None);
}
