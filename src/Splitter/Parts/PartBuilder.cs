using System.Collections.Immutable;
using Splitter.Artwork;
using Splitter.Planning;
using Splitter.Stitching;

namespace Splitter.Parts;

/// <summary>Stitches and marks to parts: ordered steps with stops.</summary>
internal static class PartBuilder
{
    internal static ImmutableArray<Part> Build(Drawing drawing, Plan plan, ImmutableArray<SewnPiece> sewn) =>
        throw new NotSupportedException();
}
