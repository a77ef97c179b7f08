using Splitter.Recipes.Language;

namespace Splitter.Recipes.Keys;

/// <summary>The keys of <c>cloth.stretch</c>.</summary>
internal static class StretchKeys
{
    internal static readonly Key<double> Warp = new("warp", new PercentKind("20 %"))
    {
        Says = "Along the warp.",
        Example = "0.2 %",
        Default = "0 %",
    };

    internal static readonly Key<double> Weft = new("weft", new PercentKind("20 %"))
    {
        Says = "Along the weft.",
        Example = "0.4 %",
        Default = "0 %",
    };

    internal static readonly Key<double> Bias = new("bias", new PercentKind("20 %"))
    {
        Says = "At 45 degrees to both.",
        Example = "1.5 %",
        Default = "0 %",
    };

    internal static readonly Key<double> WarpDirection = new("warp-direction", new AngleKind())
    {
        Says = "Direction of the warp on the drawing, clockwise from x.",
        Example = "90 deg",
        Default = "90 deg",
    };

    internal static readonly GroupKind<Stretch> Group = new(
        [Warp, Weft, Bias, WarpDirection],
        group =>
            new()
            {
                Warp = group.Get(Warp),
                Weft = group.Get(Weft),
                Bias = group.Get(Bias),
                WarpDirection = group.Get(WarpDirection),
            }
    );
}
