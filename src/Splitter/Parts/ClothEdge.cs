using System.Collections.Immutable;
using Splitter.Planning;
using Splitter.Recipes;
using Splitter.Texts;

namespace Splitter.Parts;

/// <summary>Where the cloth ends inside a hoop, as the machine holds it: beyond its edge is only stabilizer.</summary>
internal static class ClothEdge
{
    /// <summary>Sides of the hoop that the cloth does not reach, and how far from them it ends, µm.</summary>
    internal static ImmutableArray<(HoopSide Side, int Bare)> Of(Cloth cloth, Field field)
    {
        if (cloth.OnDrawing is not { } box)
            return [];
        var (one, other) = (field.ToField(new(box.Left, box.Top)), field.ToField(new(box.Right, box.Bottom)));
        var (wide, high) = (field.Hoop.Width / 2, field.Hoop.Height / 2);
        return
        [
            .. new[]
            {
                (HoopSide.Left, Math.Min(one.U, other.U) + wide),
                (HoopSide.Top, high - Math.Max(one.V, other.V)),
                (HoopSide.Right, wide - Math.Max(one.U, other.U)),
                (HoopSide.Bottom, Math.Min(one.V, other.V) + high),
            }.Where(side => side.Item2 > 0),
        ];
    }

    /// <summary>The same in words; empty where the cloth fills the hoop.</summary>
    internal static string Says(Phrasebook say, ImmutableArray<(HoopSide Side, int Bare)> sides) =>
        say.Listed([
            .. sides.Select(side =>
            {
                var length = ("length", say.Numbers.Rough(side.Bare));
                return side.Side switch
                {
                    HoopSide.Right => say.Say("edge.right", length),
                    HoopSide.Top => say.Say("edge.top", length),
                    HoopSide.Left => say.Say("edge.left", length),
                    _ => say.Say("edge.bottom", length),
                };
            }),
        ]);
}
