using System.Collections.Immutable;
using Splitter.Cutting;

namespace Splitter.Stitching;

internal static class SatinStitcher
{
    internal static ImmutableArray<Block> Stitch(SatinPiece piece) => throw new NotSupportedException();
}
