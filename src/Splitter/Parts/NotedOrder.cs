using Splitter.Geometry;

namespace Splitter.Parts;

/// <summary>
/// Blocks in an order that is tried out, with notes of what a search asks of it again and again: how far the needle
/// jumps up to each place, and where what lies under and over its block is. After a change the notes are those of
/// before, until they are taken anew.
/// </summary>
internal sealed class NotedOrder
{
    private readonly List<int>[] below;
    private readonly List<int>[] above;
    private readonly Point? needle;

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
    internal NotedOrder(Stay[] start, List<int>[] below, Point? needle)
    {
        (stays, this.below, this.needle, count) = (start, below, needle, start.Length);
        (there, back) = (new double[count + 1], new double[count + 1]);
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
        Array.Fill(firstOf, count);
        Array.Fill(lastOf, -1);
        for (var i = 0; i < count; i++)
        {
            var piece = stays[i].Piece;
            (firstOf[piece], lastOf[piece]) = (Math.Min(firstOf[piece], i), i);
            if (i == 0)
                continue;
            there[i] = there[i - 1] + Jump(i - 1, i);
            back[i] = back[i - 1] + Between(ExitTurned(i), EntryTurned(i - 1));
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

    /// <summary>The last place before another of what the block at a place lies over.</summary>
    internal int LastBelow(int at, int before)
    {
        var under = below[stays[at].Piece];
        for (var k = before - 1; k >= 0; k--)
            if (under.Contains(stays[k].Piece))
                return k;
        return -1;
    }

    /// <summary>All jumps.</summary>
    internal double Total()
    {
        var sum = 0.0;
        for (var i = 0; i < count; i++)
            sum += Jump(i - 1, i);
        return sum;
    }

    internal Point? EntryAt(int i) => i < count ? stays[i].Entry : null;

    internal Point? ExitAt(int i) => i < 0 ? needle : stays[i].Exit;

    internal Point? EntryTurned(int i) => stays[i].Turns ? stays[i].Exit : stays[i].Entry;

    internal Point? ExitTurned(int i) => stays[i].Turns ? stays[i].Entry : stays[i].Exit;

    /// <summary>Between two places.</summary>
    internal double Jump(int from, int to) => Between(ExitAt(from), EntryAt(to));

    /// <summary>Jumps from one place to another, as noted.</summary>
    internal double Stretch(int i, int j) => there[j] - there[i];

    /// <summary>The same if all of it were turned round.</summary>
    internal double Turned(int i, int j) => back[j] - back[i];

    internal static double Between(Point? from, Point? to) => from is { } a && to is { } b ? JumpOrder.Cost(a, b) : 0;
}
