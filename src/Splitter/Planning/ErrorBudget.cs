namespace Splitter.Planning;

/// <summary>
/// What makes two parts miss each other at one place: root mean square parts, micrometres. They are independent, so
/// that their squares add up to the square of the whole.
/// </summary>
/// <param name="Setting">Corners are not set over their tacks exactly.</param>
/// <param name="Rounding">Stitches lie on the tape's grid.</param>
/// <param name="Warp">Cloth gives along its warp.</param>
/// <param name="Weft">Cloth gives along its weft.</param>
/// <param name="Bias">Cloth gives on the slant.</param>
internal sealed record ErrorBudget(double Setting, double Rounding, double Warp, double Weft, double Bias)
{
    /// <summary>Root mean square misfit, micrometres.</summary>
    public double Total =>
        Math.Sqrt((Setting * Setting) + (Rounding * Rounding) + (Warp * Warp) + (Weft * Weft) + (Bias * Bias));
}
