using System.Collections.Immutable;
using Splitter.Geometry;
using Splitter.Planning.Fields.Covering;

namespace Splitter.Planning.Fields;

/// <summary>
/// Adds fields that let corners be handed on between fields which cover the drawing but share too little ground.
/// </summary>
internal static class Bridges
{
    /// <summary>Bridges for each field, at most.</summary>
    private const int MostBridges = 4;

    /// <summary>
    /// Each bridge lies midway between the nearest two fields that do not reach each other, and shares half of its
    /// ground with a field that touches it.
    /// </summary>
    internal static ImmutableArray<Field> Added(ImmutableArray<Field> fields, CoverTask task)
    {
        // Between two fields that a hoop's length holds apart a few bridges suffice; a hoop that is too small for
        // corners needs no more of them, since SewingOrder says so.
        for (var most = MostBridges * fields.Length; ; most--)
        {
            var reached = Links.Groups(fields, task)[0];
            if (reached.Count == fields.Length || most == 0)
                return fields;
            var (inside, outside) = (
                from a in reached
                from b in Enumerable.Range(0, fields.Length)
                where !reached.Contains(b)
                orderby fields[a].Centre.DistanceTo(fields[b].Centre), a, b
                select (fields[a], fields[b])
            ).First();
            var bridge = task.Template.At(inside.Centre.Towards(outside.Centre, 0.5), TurnOf(inside, task));
            fields = fields.Add(bridge);
        }
    }

    /// <summary>A fixed field may lie in a way in which others may not.</summary>
    private static Turn TurnOf(Field field, CoverTask task) =>
        task.Turns.OrderBy(t => Turning.IsUpright(t) != Turning.IsUpright(field.Turn)).First();
}
