using System.Text;
using Splitter.Geometry;
using Splitter.Recipes;

namespace Splitter.Tests.Recipes;

/// <summary>A cloth that leaves its size, or where the artwork lies, to the artwork.</summary>
public sealed class ClothTests
{
    [Theory]
    // 50 mm on all sides, in whole centimetres.
    [InlineData(420.3, 561, 530, 670)]
    // As much as the hoop holds, and a grip of 20 mm at both ends.
    [InlineData(30, 400, 340, 500)]
    public void AClothOfSizeAutoIsCutToTheArtwork(double width, double height, int across, int down)
    {
        var cloth = Cloth("{ size: auto, folds: { upright: centre, level: centre } }")
            .Under(Um(width), Um(height), Long);
        Assert.Equal((Um(across), Um(down)), cloth.Size);
        Assert.Equal((Um(across) / 2, Um(down) / 2), (cloth.UprightFold, cloth.LevelFold));
        var (at, side) = (cloth.ArtworkAt, Um(across));
        // In the middle, in whole millimetres.
        Assert.Equal(0, at.X % Units.Millimetre);
        Assert.InRange(side - Um(width) - (2 * at.X), 0, 2 * Units.Millimetre);
        Assert.True(at is { X: >= 49_000, Y: >= 49_000 }, at.ToString());
    }

    [Fact]
    public void ArtworkLiesInTheMiddleOfAClothOfAnySize()
    {
        var cloth = Cloth("{ size: 400 x 300 mm, artwork-at: centre }").Under(Um(100), Um(250), Long);
        Assert.Equal((Um(400), Um(300)), cloth.Size);
        Assert.Equal(Point.FromMillimetres(150, 25), cloth.ArtworkAt);
    }

    [Fact]
    public void WhatTheRecipeSaysStays()
    {
        var cloth = Cloth("{ size: 400 x 300 mm, artwork-at: [10 mm, 20 mm] }");
        Assert.Equal(cloth, cloth.Under(Um(100), Um(250), Long));
        Assert.Null(Cloth("{}").Under(Um(100), Um(250), Long).Size);
    }

    private static readonly Hoop Long = Samples.Hoop(200, 300);

    private static int Um(double millimetres) => (int)Math.Round(millimetres * Units.Millimetre);

    private static Cloth Cloth(string cloth) =>
        RecipeReader
            .Read(
                "recipe.yaml",
                Encoding.UTF8.GetBytes(
                    $"splitter: 1\nartwork: {{ file: bay.svg }}\ncloth: {cloth}\nhoops: [{{ name: a, field: 130 x 180 mm }}]\n"
                )
            )
            .Value.Cloth;
}
