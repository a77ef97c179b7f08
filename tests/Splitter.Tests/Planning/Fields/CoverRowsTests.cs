using System.Collections.Immutable;
using CsCheck;
using Splitter.Geometry;
using Splitter.Planning.Fields;
using Splitter.Planning.Fields.Covering;

namespace Splitter.Tests.Planning.Fields;

/// <summary>
/// Rows leave out what is covered wherever something else is. Whether grounds cover a drawing must come out the same by
/// the rows and by geometry. Grounds and drawing lie on lines 10 mm apart, so that many begin and end on the same one.
/// </summary>
public sealed class CoverRowsTests
{
    private static readonly Gen<Box> Boxes = Gen.Select(
        Gen.Int[0, 6],
        Gen.Int[0, 6],
        Gen.Int[1, 5],
        Gen.Int[1, 5],
        (x, y, width, height) => new Box(x * 10_000, y * 10_000, (x + width) * 10_000, (y + height) * 10_000)
    );

    [Fact]
    public void GroundsCoverARowOfEachThingIfAndOnlyIfTheyCoverTheDrawing() =>
        (from grounds in Boxes.Array[5] from drawn in Boxes.Array[1, 3] select (grounds, drawn)).Holds(
            t =>
            {
                var drawn = Polygons.Union(t.drawn.Select(Region.Of));
                var table = CoverRows.Table(Task(drawn), [.. t.grounds]);
                for (var bits = 0; bits < 1 << t.grounds.Length; bits++)
                {
                    int[] some = [.. Enumerable.Range(0, t.grounds.Length).Where(i => (bits >> i & 1) == 1)];
                    var left = Polygons.Subtract(drawn, Polygons.Union(some.Select(i => Region.Of(t.grounds[i]))));
                    Assert.Equal(
                        left.IsEmpty,
                        Enumerable.Range(0, table.Rows).All(row => table.SetsOf(row).Any(some.Contains))
                    );
                }
            },
            cases: 40
        );

    private static CoverTask Task(Region drawn) =>
        new([drawn], [], new FieldTemplate(Samples.Hoop(50, 50), 0, 0), [Turn.None], null, [], []);
}
