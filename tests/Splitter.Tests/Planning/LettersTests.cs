using Splitter.Planning;

namespace Splitter.Tests.Planning;

public sealed class LettersTests
{
    [Theory]
    [InlineData(0, "A")]
    [InlineData(25, "Z")]
    [InlineData(26, "AA")]
    [InlineData(51, "AZ")]
    [InlineData(52, "BA")]
    [InlineData(701, "ZZ")]
    [InlineData(702, "AAA")]
    public void PartsAreLetteredLikeColumnsOfASheet(int index, string letter) =>
        Assert.Equal(letter, Letters.Of(index));
}
