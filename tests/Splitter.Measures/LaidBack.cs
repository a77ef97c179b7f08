using System.Text.Json;

namespace Splitter.Measures;

/// <summary>Lays what a tape holds back on the drawing, by nothing but the manifest's centre and turn of the field.</summary>
public static class LaidBack
{
    /// <summary>From the field to the drawing, tenths of a millimetre.</summary>
    public static (int X, int Y) OnDrawing(JsonElement part, (int U, int V) p)
    {
        var centre = part.GetProperty("field")
            .GetProperty("center_mm")
            .EnumerateArray()
            .Select(c => (int)Math.Round(c.GetDouble() * 10))
            .ToArray();
        var (x, y) = part.GetProperty("field").GetProperty("turn_deg").GetInt32() switch
        {
            0 => (p.U, -p.V),
            90 => (p.V, p.U),
            180 => (-p.U, p.V),
            _ => (-p.V, -p.U),
        };
        return (centre[0] + x, centre[1] + y);
    }
}
