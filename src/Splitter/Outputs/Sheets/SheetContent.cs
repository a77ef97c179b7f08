using System.Collections.Immutable;
using Splitter.Artwork;
using Splitter.Planning;
using Splitter.Recipes;
using Splitter.Texts;

namespace Splitter.Outputs.Sheets;

/// <summary>All that the sections of a work sheet draw from.</summary>
internal sealed record SheetContent(
    Recipe Recipe,
    Drawing Drawing,
    Plan Plan,
    ImmutableArray<ListedPart> Parts,
    WorkFigures Work
)
{
    /// <summary>The recipe's file, which a command names.</summary>
    internal required string RecipeFile { get; init; }

    /// <summary>Of the same drawing and plan.</summary>
    internal ShownGround Ground { get; init; } = new(Drawing, Plan);

    /// <summary>A small picture of the finished piece, PNG; only the cover shows it.</summary>
    internal ReadOnlyMemory<byte> Finished { get; init; }

    internal Phrasebook Say { get; } = new(Recipe.Output);

    internal Numbers Numbers => Say.Numbers;

    /// <summary>Several parts have to be set by each other.</summary>
    internal bool IsSplit => Parts.Length > 1;

    /// <summary>What each part takes at the machine, as every page tells it.</summary>
    internal Summed PartTimes { get; } = Texts.Numbers.Times(Parts.Select(p => p.Figures.Minutes));

    /// <summary>A name as the sheet says it: marks are sewn with whatever thread shows.</summary>
    internal string NameOf(SewThread? thread) => thread?.Name ?? Say.Say("thread.marking");

    /// <summary>
    /// Threads are numbered, so that spools can be told apart without their colours; 0 for that of marks.
    /// </summary>
    internal int NumberOf(SewThread? thread)
    {
        for (var i = 0; i < Work.Threads.Length; i++)
            if (thread is not null && Work.Threads[i].Thread == thread)
                return i + 1;
        return 0;
    }
}
