namespace Splitter.Recipes;

/// <summary>
/// By which share of a stitch the penetrations of a fill row are moved against those of the row before:
/// <paramref name="Step"/> of <paramref name="Cycle"/> parts. After as many rows as there are parts they repeat at the
/// latest.
/// </summary>
internal readonly record struct Stagger(int Step, int Cycle)
{
    /// <summary>
    /// At 0.4 mm rows and 4 mm stitches the nearest penetrations are then 1.28 mm apart, 94 % of what any arrangement
    /// allows (a hexagonal one, 1.36 mm), so that the eye finds no furrow in any direction.
    /// </summary>
    public static Stagger Usual { get; } = new(3, 8);

    /// <summary>The share of a stitch by which the penetrations of a row are moved.</summary>
    internal double Of(int row) => (double)((((row % Cycle) + Cycle) * Step) % Cycle) / Cycle;
}
