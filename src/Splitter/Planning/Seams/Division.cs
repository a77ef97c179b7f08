using System.Collections.Immutable;
using Splitter.Geometry;

namespace Splitter.Planning.Seams;

/// <summary>How the drawing is divided among the fields of a layout, which stand in sewing order.</summary>
/// <param name="Territories">For each field the ground whose cut shapes it sews; together they are all grounds.</param>
/// <param name="Owners">For each shape the field that sews it whole, or null when seams cut it.</param>
/// <param name="Seams">Where territories meet; indexes of fields.</param>
/// <param name="Crossings">Where seams run through cut shapes.</param>
/// <param name="Turned">Where the sewing order turns layers round.</param>
internal sealed record Division(
    ImmutableArray<Region> Territories,
    ImmutableArray<int?> Owners,
    ImmutableArray<Seam> Seams,
    ImmutableArray<Crossing> Crossings,
    ImmutableArray<TurnedLayer> Turned,
    SeamCost Cost
);

/// <summary>A stretch of seam inside a shape that it cuts.</summary>
/// <param name="Shape">Index in the drawing.</param>
internal sealed record Crossing(int Earlier, int Later, int Shape, Polyline Line)
{
    /// <summary>How far the two fields sew on past it at its ends and bends.</summary>
    internal ImmutableArray<SideRoom> Rooms { get; init; } = [new(int.MaxValue, int.MaxValue)];

    /// <summary>How far both fields sew on past it, µm, where that is least.</summary>
    internal int Room => Rooms.Min(room => room.Narrower);
}

/// <summary>How far past a place of a seam two fields sew on, µm.</summary>
/// <param name="Narrower">The one that ends sooner.</param>
/// <param name="Wider">The other one.</param>
internal readonly record struct SideRoom(int Narrower, int Wider);
