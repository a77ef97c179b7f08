using Splitter.Correcting;
using Splitter.Cutting.Tapes;
using Splitter.Parts;
using Splitter.Stitching;

namespace Splitter.Outputs;

/// <summary>Names as files write them: lower case, words joined by a hyphen.</summary>
internal static class Words
{
    internal static string Of(StepKind kind) =>
        kind switch
        {
            StepKind.Placement => "placement",
            StepKind.Corners => "corners",
            StepKind.Alignment => "alignment",
            StepKind.Body => "body",
            StepKind.NextCorners => "next-corners",
            _ => throw new InvalidOperationException($"No word is known for {kind}."),
        };

    internal static string Of(Verdict verdict) =>
        verdict switch
        {
            Verdict.Fits => "fits",
            Verdict.Moved => "moved",
            Verdict.Turned => "turned",
            Verdict.Stretched => "stretched",
            _ => throw new InvalidOperationException($"No word is known for {verdict}."),
        };

    internal static string Of(Stitch stitch) => stitch.Source == StitchSource.Repeated ? "overlap" : Of(stitch.Use);

    private static string Of(StitchUse use) =>
        use switch
        {
            StitchUse.Tie => "tie",
            StitchUse.Underlay => "underlay",
            StitchUse.Travel => "travel",
            StitchUse.Fill => "fill",
            StitchUse.Satin => "satin",
            StitchUse.Run => "run",
            StitchUse.Mark => "mark",
            _ => throw new InvalidOperationException($"No word is known for {use}."),
        };
}
