using System.Collections.Immutable;
using System.Runtime.InteropServices;
using Splitter.Tapes;

namespace Splitter.Outputs.Sheets.Watching;

/// <summary>
/// A tape as a page carries it: two bytes a move and how many moves of a kind follow each other, a third of what the
/// tape itself would take as text.
/// </summary>
/// <param name="Moves">
/// Base64 (RFC 4648) of u and v of every stitch and jump, one signed byte each, steps of 0.1 mm.
/// </param>
/// <param name="Runs">A kind (0 stitches, 1 jumps, 2 stops) and how many of it come, in turn.</param>
internal sealed record PackedTape(string Moves, ImmutableArray<int> Runs)
{
    internal static PackedTape Of(Tape tape)
    {
        var moves = new List<sbyte>(2 * tape.Records.Length);
        var runs = ImmutableArray.CreateBuilder<int>();
        foreach (var (command, u, v) in tape.Records)
        {
            if (command != TapeCommand.Stop)
                moves.AddRange([checked((sbyte)u), checked((sbyte)v)]);
            if (runs.Count > 0 && runs[^2] == (int)command)
                runs[^1]++;
            else
                runs.AddRange((int)command, 1);
        }
        return new(Convert.ToBase64String(MemoryMarshal.AsBytes(CollectionsMarshal.AsSpan(moves))), runs.ToImmutable());
    }
}
