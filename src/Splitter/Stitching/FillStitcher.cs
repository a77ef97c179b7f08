using System.Collections.Immutable;
using Splitter.Cutting;

namespace Splitter.Stitching;

internal static class FillStitcher
{
    internal static ImmutableArray<Block> Stitch(FillPiece piece) => throw new NotSupportedException();
}
