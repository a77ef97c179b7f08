using Splitter.Artwork;
using Splitter.Artwork.GeoJson;
using Splitter.Diagnostics;
using Splitter.Geometry;

namespace Splitter.Tests.Artwork;

/// <summary>Degrees laid on cloth, against what an atlas says of the islands.</summary>
public sealed class ProjectionTests
{
    private const int Width = 260 * Units.Millimetre;

    /// <summary>A degree of latitude at 62 degrees north in km: the WGS 84 ellipsoid's meridian, from memory.</summary>
    private const double KilometresADegree = 111.43;

    /// <summary>Land of the Faroe Islands in square km, from memory of atlases (1,393 to 1,399).</summary>
    private const double Land = 1396;

    /// <summary>The data is drawn for 1:10,000,000: small inlets and islets are left out of it.</summary>
    private const double Generalised = 0.05;

    [Fact]
    public void TheIslandsHaveTheAreaThatAnAtlasGivesThem()
    {
        var file = Repository.Path("examples", "artwork", "faroe-islands.geojson");
        var sheet = GeoJsonReader.Read(new("faroe.geojson", File.ReadAllBytes(file)), Width, Place.Whole("test")).Value;
        // 61.3938 to 62.3986 degrees north in the file, the strokes' half width of 0.7 mm left and right off the height.
        var kilometresAMillimetre = (62.3986 - 61.3938) * KilometresADegree / ((sheet.Height / 1000.0) - 1.4);
        var area = sheet.Elements.OfType<DrawnArea>().Sum(a => a.Ground.Area) / 1e6;

        Assert.InRange(area * kilometresAMillimetre * kilometresAMillimetre / Land, 1 - Generalised, 1 + Generalised);
    }

    [Fact]
    public void WidthIsTheFinishedWidthStrokesIncluded()
    {
        var file = Repository.Path("examples", "artwork", "faroe-islands.geojson");
        var sheet = GeoJsonReader.Read(new("faroe.geojson", File.ReadAllBytes(file)), Width, Place.Whole("test")).Value;
        var ground = Box.Around(sheet.Elements.OfType<DrawnArea>().Select(a => a.Ground.Bounds));

        Assert.Equal(Width, sheet.Width);
        Assert.Equal(700, ground.Left);
        Assert.Equal(Width - 700, ground.Right);
    }
}
