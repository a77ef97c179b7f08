namespace Splitter.Planning;

/// <summary>What the corners that a hooping is set by give it.</summary>
/// <param name="Apart">How far the two that lie farthest from each other are apart, micrometres.</param>
/// <param name="OffLine">How far another lies from the line through those two at most, micrometres; 0 for two.</param>
/// <param name="LastGives">
/// By what share the misfit at the hooping's worst seam is less than with the best choice of one corner fewer; null for
/// two.
/// </param>
/// <param name="OneMoreGives">
/// The same for one more, which is so little that it is not sewn; null where one more was not asked for or has no room.
/// </param>
/// <param name="IsOnStrip">
/// The ground that holds them is too narrow for one to stand an arm's length off that line.
/// </param>
internal sealed record CornerSetting(int Apart, int OffLine, double? LastGives, double? OneMoreGives, bool IsOnStrip);
