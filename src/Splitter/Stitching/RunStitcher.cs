using System.Collections.Immutable;
using Splitter.Cutting;

namespace Splitter.Stitching;

internal static class RunStitcher
{
    internal static ImmutableArray<Block> Stitch(RunPiece piece) => throw new NotSupportedException();
}
