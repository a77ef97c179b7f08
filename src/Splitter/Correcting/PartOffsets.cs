using System.Collections.Immutable;
using Splitter.Diagnostics;

namespace Splitter.Correcting;

/// <summary>What was measured of a part in the hoop.</summary>
/// <param name="Part">Its letter.</param>
/// <param name="Place">Where this was said: the call or a file.</param>
internal sealed record PartOffsets(string Part, ImmutableArray<MeasuredOffset> Offsets, Place Place);
