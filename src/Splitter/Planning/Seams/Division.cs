using System.Collections.Immutable;
using Splitter.Geometry;

namespace Splitter.Planning.Seams;

/// <summary>How the drawing is divided among the fields of a layout.</summary>
/// <param name="Territories">For each field the ground whose cut shapes it sews; together they are all grounds.</param>
/// <param name="Owners">For each shape the field that sews it whole, or null when seams cut it.</param>
/// <param name="Seams">Where territories meet; indexes of fields.</param>
/// <param name="Crossings">Where seams run through cut shapes.</param>
internal sealed record Division(
    ImmutableArray<Region> Territories,
    ImmutableArray<int?> Owners,
    ImmutableArray<Seam> Seams,
    ImmutableArray<Crossing> Crossings,
    SeamCost Cost
)
{
    /// <summary>The same division for reordered fields.</summary>
    /// <param name="order">For each new place the old index.</param>
    internal Division Reordered(ImmutableArray<int> order)
    {
        int At(int field) => order.IndexOf(field);
        return this with
        {
            Territories = [.. order.Select(i => Territories[i])],
            Owners = [.. Owners.Select(o => o is { } field ? At(field) : (int?)null)],
            Seams =
            [
                .. Seams
                    .Select(s =>
                        s with
                        {
                            Earlier = Math.Min(At(s.Earlier), At(s.Later)),
                            Later = Math.Max(At(s.Earlier), At(s.Later)),
                        }
                    )
                    .OrderBy(s => (s.Earlier, s.Later)),
            ],
            Crossings =
            [
                .. Crossings
                    .Select(c =>
                        c with
                        {
                            Earlier = Math.Min(At(c.Earlier), At(c.Later)),
                            Later = Math.Max(At(c.Earlier), At(c.Later)),
                        }
                    )
                    .OrderBy(c => (c.Earlier, c.Later, c.Shape)),
            ],
        };
    }
}

/// <summary>A stretch of seam inside a shape that it cuts.</summary>
/// <param name="Shape">Index in the drawing.</param>
internal sealed record Crossing(int Earlier, int Later, int Shape, Polyline Line);
