namespace Splitter.Geometry;

/// <summary>
/// The library's unit of length is the whole micrometre: fine enough that no rounding of ours shows beside the tape's
/// 0.1 mm, and small enough that an int spans two kilometres of cloth.
/// </summary>
internal static class Units
{
    /// <summary>Micrometres in a millimetre.</summary>
    internal const int Millimetre = 1000;

    /// <summary>Square micrometres in a square millimetre.</summary>
    internal const int SquareMillimetre = Millimetre * Millimetre;

    /// <summary>Micrometres in an inch; one inch is 25.4 mm exactly.</summary>
    internal const int Inch = 25_400;

    /// <summary>Micrometres in one step of the tape, 0.1 mm.</summary>
    internal const int TapeStep = 100;

    /// <summary>Millimetres to whole micrometres, halves away from zero.</summary>
    internal static int FromMillimetres(double millimetres) => Round(millimetres * Millimetre);

    /// <summary>To whole micrometres, halves away from zero.</summary>
    internal static int Round(double micrometres) => (int)Math.Round(micrometres, MidpointRounding.AwayFromZero);

    /// <summary>Micrometres to millimetres.</summary>
    internal static double ToMillimetres(double micrometres) => micrometres / Millimetre;

    /// <summary>The nearest multiple of the tape's step, halves towards positive, the same for every part.</summary>
    internal static int OnTape(int micrometres) =>
        (int)(Math.Floor((micrometres + (TapeStep / 2.0)) / TapeStep) * TapeStep);

    /// <summary>The last multiple of the tape's step that is not greater.</summary>
    internal static int DownOnTape(int micrometres) => (int)Math.Floor(micrometres / (double)TapeStep) * TapeStep;

    /// <summary>The first multiple of the tape's step that is not less.</summary>
    internal static int UpOnTape(int micrometres) => -DownOnTape(-micrometres);
}
