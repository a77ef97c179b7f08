using System.Collections.Immutable;

namespace Splitter.Planning.Marks;

/// <summary>The corners that one hooping is set by, and what they give it.</summary>
internal sealed record ChosenCorners(ImmutableArray<CornerCandidate> Corners, CornerSetting Setting);
