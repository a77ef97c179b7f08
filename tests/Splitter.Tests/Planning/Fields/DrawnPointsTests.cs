using CsCheck;
using Splitter.Planning.Fields;

namespace Splitter.Tests.Planning.Fields;

public sealed class DrawnPointsTests
{
    /// <summary>A rectangle is covered by rows and columns of fields: there are never more than the bound says.</summary>
    [Fact]
    public void NoCoverOfARectangleHasFewer() =>
        Gen.Select(Gen.Int[20, 3000], Gen.Int[20, 3000], Gen.Int[40, 300], Gen.Int[40, 300])
            .Holds(
                (width, height, fieldWidth, fieldHeight) =>
                {
                    var template = new FieldTemplate(Samples.Hoop(fieldWidth, fieldHeight), 0, 0);
                    var drawing = Samples.Drawing(Samples.Rectangle("a", 0, 0, width, height));
                    var grid = Math.Ceiling((double)width / fieldWidth) * Math.Ceiling((double)height / fieldHeight);
                    var least = DrawnPoints.LeastFields(drawing, template);
                    Assert.InRange(least, 1, grid);
                    // Not far below what the area asks for: a field holds some points more than it has steps.
                    Assert.InRange(least, 0.6 * width * height / (fieldWidth * fieldHeight) - 1, grid);
                }
            );
}
