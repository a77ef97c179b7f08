using System.Collections.Immutable;
using CsCheck;
using Splitter.Geometry;
using Splitter.Planning;
using Splitter.Planning.Fields;
using Splitter.Planning.Fields.Covering;
using Splitter.Recipes;

namespace Splitter.Tests.Planning.Fields;

/// <summary>Fields of 100 x 100 mm that lie anyhow over a sheet, settled. Nothing is known of what seams show.</summary>
public sealed class SettlingTests
{
    private static readonly FieldTemplate Template = new(Samples.Hoop(100, 100), 0, 0);

    private static readonly CoverTask Task = new(
        [Samples.Ground(0, 0, 150, 0, 150, 160, 0, 160)],
        [],
        Template,
        [Turn.None],
        new RegistrationRules(),
        [],
        []
    )
    {
        Middle = Point.FromMillimetres(75, 80),
    };

    /// <summary>Two by two that reach each other and cover the sheet; each sticks out of it by up to 18 mm.</summary>
    private static readonly Gen<ImmutableArray<Field>> Covers = Gen.Int[0, 18]
        .Array[8]
        .Select(out8 =>
            (ImmutableArray<Field>)
                [
                    At(50 - out8[0], 50 - out8[1]),
                    At(100 + out8[2], 50 - out8[3]),
                    At(50 - out8[4], 110 + out8[5]),
                    At(100 + out8[6], 110 + out8[7]),
                ]
        );

    /// <summary>No more than were asked for, and each covers the sheet.</summary>
    [Theory]
    [InlineData(1)]
    [InlineData(2)]
    public void AsManyAsWereAskedForAtMost(int most)
    {
        ImmutableArray<ImmutableArray<Field>> covers = [.. Covers.Drawn(3).Select(c => c.Case)];
        var settled = Settling.Settled(Task, covers, most);
        Assert.InRange(settled.Length, 1, most);
        Assert.All(settled, fields => Assert.Equal(0, Open(fields)));
    }

    /// <summary>Neither one field nor two that meet can be moved by a step so that all meet better and cover as much.</summary>
    [Fact]
    public void NoStepOfOneFieldOrOfTwoTogetherMakesItBetter() =>
        Covers.Holds(
            cover =>
            {
                var fields = Settling.Settled(Task, [cover], 1).Single();
                var misfits = new Misfits(Task, new CoverGrid(Task, fields));
                var sum = misfits.Sum(fields);
                Assert.InRange(sum, 0, misfits.Sum(cover));
                foreach (var step in Moves.Steps)
                foreach (var by in new[] { new Point(step, 0), new Point(0, step) })
                    for (var i = 0; i < fields.Length; i++)
                    for (var j = 0; j <= i; j++)
                    {
                        var moved = fields.SetItem(i, Template.At(fields[i].Centre + by, Turn.None));
                        moved = moved.SetItem(j, Template.At(fields[j].Centre + by, Turn.None));
                        // Gains of less than a thousandth are not looked for.
                        if (fields[i].Usable.Meets(fields[j].Usable) && misfits.Sum(moved) < sum * 0.999)
                            Assert.NotEqual(0, Open(moved));
                    }
            },
            cases: 2
        );

    private static int Open(ImmutableArray<Field> fields)
    {
        var grid = new CoverGrid(Task, fields);
        grid.Reset(fields);
        return grid.Open;
    }

    private static Field At(int x, int y) => Template.At(Point.FromMillimetres(x, y), Turn.None);
}
