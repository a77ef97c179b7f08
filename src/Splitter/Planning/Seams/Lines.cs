using System.Collections.Immutable;
using Splitter.Artwork;
using Splitter.Geometry;

namespace Splitter.Planning.Seams;

/// <summary>The lines whose crossing breaks a shape: those of a run, and the middle lines of satin columns.</summary>
internal static class Lines
{
    internal static ImmutableArray<Polyline> Of(Shape shape) =>
        shape switch
        {
            RunShape run => run.Lines,
            SatinShape satin => [.. satin.Columns.Select(c => new Polyline([.. c.Rungs.Select(r => r.Middle)]))],
            _ => [],
        };
}
