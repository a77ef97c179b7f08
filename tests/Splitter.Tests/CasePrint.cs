using System.Collections;
using System.Globalization;
using System.Runtime.CompilerServices;
using Splitter.Geometry;

namespace Splitter.Tests;

/// <summary>A case of a property in full, shapes as WKT in micrometres, so that it can be made again by hand.</summary>
internal static class CasePrint
{
    internal static string Of<T>(T drawn) => Text(drawn);

    private static string Text(object? value) =>
        value switch
        {
            null => "null",
            string text => $"\"{text}\"",
            Region region => EngineForm.ToNts(region).AsText(),
            Polyline line => $"LINESTRING ({string.Join(", ", line.Points.Select(p => $"{p.X} {p.Y}"))})",
            Point point => $"{point.X} {point.Y}",
            ITuple parts => $"({string.Join(", ", Enumerable.Range(0, parts.Length).Select(i => Text(parts[i])))})",
            IEnumerable all => $"[{string.Join(", ", all.Cast<object?>().Select(Text))}]",
            _ => Convert.ToString(value, CultureInfo.InvariantCulture)!,
        };
}
