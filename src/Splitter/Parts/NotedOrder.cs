using Splitter.Geometry;

namespace Splitter.Parts;

/// <summary>
/// Blocks in an order that is tried out, with notes of what a search asks of it again and again: where the needle
/// comes to each place and leaves it, how far it jumps up to there, and where what lies under and over its block is.
/// After a change the notes are those of before, until they are taken anew.
/// </summary>
internal sealed class NotedOrder
{
    private readonly int[][] below;
    private readonly List<int>[] above;
    private readonly Point? needle;

    // Where the needle is before each place, where it comes to there, and what the jump between them costs.
    private readonly JumpEnd[] befores;
    private readonly JumpEnd[] entries;
    private readonly double[] jumps;

    // Where it would come to the block at each place and leave it if that were turned round.
    private readonly JumpEnd[] entriesTurned;
    private readonly JumpEnd[] exitsTurned;

    // Sums of jumps up to each place, as they are and as they would be if everything were turned round.
    private readonly double[] there;
    private readonly double[] back;
    private readonly int[] firstOf;
    private readonly int[] lastOf;

    private readonly int[] lastBelow;
    private readonly int[] firstAbove;
    private readonly int count;
    private Stay[] stays;

    /// <param name="start">An order that keeps to what lies over what.</param>
    /// <param name="below">For each piece those that it lies over.</param>
    internal NotedOrder(Stay[] start, int[][] below, Point? needle)
    {
        (stays, this.below, this.needle, count) = (start, below, needle, start.Length);
        (befores, entries, jumps) = (new JumpEnd[count + 1], new JumpEnd[count + 1], new double[count + 1]);
        (entriesTurned, exitsTurned) = (new JumpEnd[count], new JumpEnd[count]);
        (there, back) = (new double[count], new double[count]);
        (firstOf, lastOf) = (new int[below.Length], new int[below.Length]);
        (lastBelow, firstAbove) = (new int[count], new int[count]);
        above = [.. below.Select(_ => new List<int>())];
        for (var i = 0; i < below.Length; i++)
            foreach (var j in below[i])
                above[j].Add(i);
    }

    internal IReadOnlyList<Stay> Stays => stays;

    internal Stay this[int place] => stays[place];

    /// <summary>The last place of what the block at a place lies over; -1 for none.</summary>
    internal int LastBelow(int at) => lastBelow[at];

    /// <summary>The first place of what lies over it; beyond the last one for none.</summary>
    internal int FirstAbove(int at) => firstAbove[at];

    /// <summary>To come back to.</summary>
    internal (Stay[] Stays, (bool Turned, int Hole)[] Ways) Kept() => ([.. stays], [.. stays.Select(s => s.Way)]);

    internal void Restore((Stay[] Stays, (bool Turned, int Hole)[] Ways) kept)
    {
        stays = [.. kept.Stays];
        for (var i = 0; i < count; i++)
            stays[i].Way = kept.Ways[i];
    }

    /// <summary>
    /// What is from one place up to the second changes places with what is from there up to the third.
    /// </summary>
    internal void Swap(int from, int middle, int to)
    {
        Stay[] swapped = [.. stays[middle..to], .. stays[from..middle]];
        swapped.CopyTo(stays, from);
    }

    /// <summary>Turns what lies from one place to another round.</summary>
    internal void Turn(int i, int j)
    {
        Array.Reverse(stays, i, j - i + 1);
        for (var k = i; k <= j; k++)
            stays[k].Turn();
    }

    /// <summary>Takes the notes anew.</summary>
    internal void Note()
    {
        NoteJumps();
        Array.Fill(firstOf, count);
        Array.Fill(lastOf, -1);
        for (var i = 0; i < count; i++)
        {
            var piece = stays[i].Piece;
            (firstOf[piece], lastOf[piece]) = (Math.Min(firstOf[piece], i), i);
        }
        for (var i = 0; i < count; i++)
        {
            (lastBelow[i], firstAbove[i]) = (-1, count);
            foreach (var piece in below[stays[i].Piece])
                lastBelow[i] = Math.Max(lastBelow[i], lastOf[piece]);
            foreach (var piece in above[stays[i].Piece])
                firstAbove[i] = Math.Min(firstAbove[i], firstOf[piece]);
        }
    }

    private void NoteJumps()
    {
        (befores[0], entries[count]) = (JumpEnd.At(needle), JumpEnd.Nowhere);
        for (var i = 0; i < count; i++)
        {
            var (entry, exit) = (JumpEnd.At(stays[i].Entry), JumpEnd.At(stays[i].Exit));
            (entries[i], befores[i + 1]) = (entry, exit);
            (entriesTurned[i], exitsTurned[i]) = stays[i].Turns ? (exit, entry) : (entry, exit);
        }
        for (var i = 0; i <= count; i++)
            jumps[i] = JumpEnd.Cost(befores[i], entries[i]);
        for (var i = 1; i < count; i++)
        {
            there[i] = there[i - 1] + jumps[i];
            back[i] = back[i - 1] + JumpEnd.Cost(exitsTurned[i], entriesTurned[i - 1]);
        }
    }

    /// <summary>The last place before another of what the block at a place lies over.</summary>
    internal int LastBelow(int at, int before)
    {
        var under = below[stays[at].Piece];
        for (var k = before - 1; k >= 0; k--)
            if (under.Contains(stays[k].Piece))
                return k;
        return -1;
    }

    /// <summary>All jumps, as they are now.</summary>
    internal double Total()
    {
        var sum = 0.0;
        for (var i = 0; i < count; i++)
            sum += JumpEnd.Cost(JumpEnd.At(ExitAt(i - 1)), JumpEnd.At(EntryAt(i)));
        return sum;
    }

    /// <summary>Where the needle comes to a place now; null beyond the last one.</summary>
    internal Point? EntryAt(int i) => i < count ? stays[i].Entry : null;

    /// <summary>Where it leaves a place now; before the first one, where it comes from.</summary>
    internal Point? ExitAt(int i) => i < 0 ? needle : stays[i].Exit;

    /// <summary>Where the needle is before a place, as noted; all below is as noted, too.</summary>
    internal JumpEnd Before(int at) => befores[at];

    internal JumpEnd Entry(int at) => entries[at];

    internal JumpEnd EntryTurned(int at) => entriesTurned[at];

    internal JumpEnd ExitTurned(int at) => exitsTurned[at];

    /// <summary>The jump to a place.</summary>
    internal double Jump(int to) => jumps[to];

    /// <summary>Jumps from one place to another.</summary>
    internal double Stretch(int i, int j) => there[j] - there[i];

    /// <summary>The same if all of it were turned round.</summary>
    internal double Turned(int i, int j) => back[j] - back[i];
}
