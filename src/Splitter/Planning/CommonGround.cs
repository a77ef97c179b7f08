using Splitter.Geometry;
using Splitter.Recipes;

namespace Splitter.Planning;

/// <summary>What two fields must share so that one can be set by corners that the other sews.</summary>
internal static class CommonGround
{
    /// <summary>How far a corner stays inside both usable fields, µm: cloth is never set perfectly.</summary>
    internal const int CornerMargin = Units.Millimetre;

    /// <summary>
    /// Two corners nearer than this, µm, hardly hold an angle: at an accuracy of 0.3 mm per axis a hooping could turn
    /// by 0.6 degrees, 2 mm at the far side of a 200 mm field.
    /// </summary>
    internal const int ShortestBase = 40 * Units.Millimetre;

    /// <summary>
    /// The longer side of common ground that holds two corners that far apart on any grid of places, µm.
    /// </summary>
    internal const int Longest = ShortestBase + (2 * CornerMargin) + (2 * CornerStep);

    /// <summary>
    /// Distance between the places that are looked at for a corner, µm, where common ground is small.
    /// </summary>
    internal const int CornerStep = Units.Millimetre;

    /// <summary>
    /// How far a corner stays inside the cloth's edge, µm: a tack nearer to it tears the cloth out. Common practice, no
    /// source.
    /// </summary>
    private const int ClothEdge = 5 * Units.Millimetre;

    /// <summary>
    /// Where ground is narrow, the arm of a corner across it is shortened, to no less than this share: its other arm
    /// shows how it lies, and the hole where they meet is what a person aims at. Common practice, no source.
    /// </summary>
    private const int ShortestShare = 2;

    /// <summary>
    /// The narrowest side of common ground, µm, that holds a corner with full arms on the tape's grid.
    /// </summary>
    internal static int Narrowest(RegistrationRules rules) =>
        rules.CornerArm + (2 * CornerMargin) + (2 * Units.TapeStep);

    /// <summary>The same with one arm as short as may be: no fields that meet share less.</summary>
    internal static int Least(RegistrationRules rules) => Narrowest(rules) - rules.CornerArm + ShortestArm(rules);

    /// <summary>No arm of a corner is shorter, µm.</summary>
    internal static int ShortestArm(RegistrationRules rules) => rules.CornerArm / ShortestShare;

    /// <summary>One corner has room, with a short arm if need be.</summary>
    internal static bool HoldsOne(Box common, RegistrationRules rules) =>
        !common.IsEmpty
        && Math.Min(common.Width, common.Height) >= Least(rules)
        && Math.Max(common.Width, common.Height) >= Narrowest(rules);

    /// <summary>Two corners have room at a useful distance, with short arms if need be.</summary>
    internal static bool HoldsTwo(Box common, RegistrationRules rules) =>
        HoldsOne(common, rules) && Math.Max(common.Width, common.Height) >= Longest;

    /// <summary>
    /// The ground, corner margin included, on which one field can sew corners for another: on the cloth.
    /// </summary>
    internal static Box Of(Recipe recipe, Field one, Field other)
    {
        var common = one.Usable.Common(other.Usable);
        return recipe.Cloth.OnDrawing is { } cloth ? common.Common(cloth.Grown(CornerMargin - ClothEdge)) : common;
    }

    /// <summary>Two of the places at least lie at a useful distance.</summary>
    internal static bool IsApart(ReadOnlySpan<Point> places)
    {
        for (var i = 0; i < places.Length; i++)
        for (var j = i + 1; j < places.Length; j++)
            if (places[i].DistanceTo(places[j]) >= ShortestBase)
                return true;
        return false;
    }
}
