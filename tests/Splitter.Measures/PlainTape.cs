namespace Splitter.Measures;

/// <summary>
/// A second reader of the trade's tape, written from the table of its bits (common practice, no source) and knowing
/// nothing of the library: what a machine would sew.
/// </summary>
public static class PlainTape
{
    /// <summary>Runs of stitches by step, in tenths of a millimetre, v up; a run begins after every jump or stop.</summary>
    public static List<List<List<(int U, int V)>>> Steps(byte[] tape)
    {
        var steps = new List<List<List<(int, int)>>> { new() };
        var (u, v) = (0, 0);
        List<(int, int)>? run = null;
        for (var i = 512; i + 2 < tape.Length; i += 3)
        {
            var (a, b, c) = (tape[i], tape[i + 1], tape[i + 2]);
            if (c == 0xF3)
                return steps;
            u += Bit(a, 0) - Bit(a, 1) + (9 * (Bit(a, 2) - Bit(a, 3)));
            u += (3 * (Bit(b, 0) - Bit(b, 1))) + (27 * (Bit(b, 2) - Bit(b, 3))) + (81 * (Bit(c, 2) - Bit(c, 3)));
            v += Bit(a, 7) - Bit(a, 6) + (9 * (Bit(a, 5) - Bit(a, 4)));
            v += (3 * (Bit(b, 7) - Bit(b, 6))) + (27 * (Bit(b, 5) - Bit(b, 4))) + (81 * (Bit(c, 5) - Bit(c, 4)));
            if (Bit(c, 6) == 1)
            {
                steps.Add([]);
                run = null;
            }
            else if (Bit(c, 7) == 1)
                run = null;
            else
            {
                if (run is null)
                    steps[^1].Add(run = []);
                run.Add((u, v));
            }
        }
        throw new InvalidDataException("The tape has no end.");
    }

    private static int Bit(byte value, int bit) => (value >> bit) & 1;
}
