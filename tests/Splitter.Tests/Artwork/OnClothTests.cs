using System.Globalization;
using System.Text.RegularExpressions;
using CsCheck;
using Splitter.Artwork;
using Splitter.Diagnostics;
using Splitter.Geometry;
using Splitter.Recipes;

namespace Splitter.Tests.Artwork;

/// <summary>Artwork that does not lie on its cloth: what is advised is accepted, or it would be advised for ever.</summary>
public sealed partial class OnClothTests
{
    /// <summary>How far broad strokes reach past the drawing's four edges, and what the recipe says, µm.</summary>
    private static readonly Gen<(int[] Past, int[] Cloth, bool IsCentred)> Drawn = Gen.Select(
        Gen.Int[-400, 3000].Array[4],
        Gen.Int[0, 3000].Array[4],
        Gen.Bool
    );

    [Fact]
    public void HalfAMillimetrePastTheEdgesOfACentredOne() => AssertMended(Past(500, 500, 500, 500), Centred(0, 0));

    [Fact]
    public void WhatIsAdvisedIsAccepted() =>
        Drawn.Holds(
            (past, given, isCentred) =>
                AssertMended(
                    Past(past[0], past[1], past[2], past[3]),
                    isCentred
                        ? Centred(given[0], given[1])
                        : Centred(given[0], given[1]) with
                        {
                            IsArtworkCentred = false,
                            ArtworkAt = new(given[2], given[3]),
                        }
                )
        );

    private static void AssertMended(Drawing drawing, Cloth cloth)
    {
        var laid = Lay(drawing, cloth);
        if (laid.Succeeded)
            return;
        var told = Assert.Single(laid.Diagnostics).Message;
        var (size, at) = (Size().Match(told), At().Match(told));
        Assert.True(size.Success, told);
        // Or more, as it says: what centres the artwork rounds.
        foreach (var more in new[] { 0, 700, 1000, 1900 })
        {
            var mended = cloth with { Size = (Um(size, "x") + more, Um(size, "y") + more) };
            if (at.Success)
                mended = mended with { ArtworkAt = new(Um(at, "x"), Um(at, "y")) };
            var again = Lay(drawing, mended);
            Assert.True(again.Succeeded, $"{told}\nthen {more} more: {string.Join('\n', again.Diagnostics)}");
        }
    }

    private static Result<Recipe> Lay(Drawing drawing, Cloth cloth) =>
        OnCloth.Lay(Samples.Recipe(Samples.Hoop(130, 180)) with { Cloth = cloth }, drawing);

    /// <summary>On a cloth that is larger than the drawing by this, µm.</summary>
    private static Cloth Centred(int wider, int higher) =>
        new() { Size = (100_000 + wider, 80_000 + higher), IsArtworkCentred = true };

    private static Drawing Past(int left, int top, int right, int bottom)
    {
        var (x, y) = (-left / 1000.0, -top / 1000.0);
        var ground = Samples.Rectangle("sea", x, y, 100 + (right / 1000.0) - x, 80 + (bottom / 1000.0) - y);
        return Samples.Drawing(ground) with { Width = 100_000, Height = 80_000 };
    }

    private static int Um(Match match, string group) =>
        Units.FromMillimetres(double.Parse(match.Groups[group].ValueSpan, CultureInfo.InvariantCulture));

    [GeneratedRegex(
        @"'size: (?<x>[\d.]+) x (?<y>[\d.]+) mm'",
        RegexOptions.ExplicitCapture,
        matchTimeoutMilliseconds: 1000
    )]
    private static partial Regex Size();

    [GeneratedRegex(
        @"'artwork-at: \[(?<x>[\d.]+) mm, (?<y>[\d.]+) mm\]'",
        RegexOptions.ExplicitCapture,
        matchTimeoutMilliseconds: 1000
    )]
    private static partial Regex At();
}
