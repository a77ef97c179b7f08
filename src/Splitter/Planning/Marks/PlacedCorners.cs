using System.Collections.Immutable;

namespace Splitter.Planning.Marks;

/// <summary>All corners of a plan.</summary>
/// <param name="Corners">By the hooping that sews them.</param>
/// <param name="Settings">What they give to each hooping; null for the first, which is set by none.</param>
internal sealed record PlacedCorners(ImmutableArray<Corner> Corners, ImmutableArray<CornerSetting?> Settings);
