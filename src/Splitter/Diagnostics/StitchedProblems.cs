using System.Collections.Immutable;
using Splitter.Geometry;
using Splitter.Recipes;
using Splitter.Recipes.Language;
using Splitter.Recipes.Yaml;
using static System.FormattableString;

namespace Splitter.Diagnostics;

/// <summary>
/// What there is to say of artwork that is stitches already: SPL2200 to SPL2249. Lengths in millimetres.
/// </summary>
internal static class StitchedProblems
{
    /// <param name="proposed">A thread for each colour block.</param>
    internal static Diagnostic OtherThreads(
        Place place,
        ImmutableArray<NamedThread> threads,
        ImmutableArray<NamedThread> proposed
    ) =>
        Diagnostic.Error(
            2200,
            place,
            Invariant($"the tape has {Counted(proposed.Length, "colour block")} and the recipe ")
                + Invariant($"{Counted(threads.Length, "thread")}; ")
                + "a tape has no colours, so there has to be a thread for each block, in sewing order: "
                + (
                    threads.Length > proposed.Length
                        ? "leave some out, or name one for each block in 'artwork': "
                            + Blocks([], threads, proposed.Length)
                        : $"keep yours, and add {string.Join(", ", proposed.Skip(threads.Length).Select(Listed))}; or, "
                            + "where a thread comes again, name one for each block in 'artwork': blocks: [...]"
                )
        );

    internal static Diagnostic OtherBlocks(
        Place place,
        ImmutableArray<string> names,
        ImmutableArray<NamedThread> threads,
        int blocks
    ) =>
        Diagnostic.Error(
            2205,
            place,
            Invariant($"the tape has {Counted(blocks, "colour block")}, and 'blocks' names ")
                + Invariant($"{Counted(names.Length, "thread")}; ")
                + $"name one for each block, in sewing order: {Blocks(names, threads, blocks)}"
        );

    /// <summary>Names as they are, then threads that are not named yet.</summary>
    private static string Blocks(ImmutableArray<string> names, ImmutableArray<NamedThread> threads, int blocks) =>
        "blocks: ["
        + string.Join(
            ", ",
            names
                .Concat(threads.Select(t => t.Name).Except(names, StringComparer.OrdinalIgnoreCase))
                .Concat(Enumerable.Repeat("?", blocks))
                .Take(blocks)
                .Select(YamlText.Quoted)
        )
        + "]";

    internal static Diagnostic UnknownThread(Place place, string name, ImmutableArray<NamedThread> threads) =>
        Diagnostic.Error(
            2206,
            place,
            $"no thread is called {Quote.Quoted(name)}; "
                + (
                    Words.Nearest(name, threads.Select(t => t.Name)) is { } near
                        ? $"did you mean {Quote.Quoted(near)}?"
                        : "add it to 'threads', with its colour"
                )
        );

    /// <param name="key">That would change stitches.</param>
    internal static Diagnostic RuleForStitches(Place place, string key) =>
        Diagnostic.Error(
            2207,
            place,
            "stitches of a tape stay as they are: a rule may keep things whole ('keep-whole: true') or leave them out "
                + $"('as: leave'); take '{key}' out"
        );

    internal static Diagnostic EmptyStops(string file, int count) =>
        Diagnostic.Warning(
            2201,
            Place.Whole(file),
            Invariant($"{Counted(count, "stop")} of the tape {(count == 1 ? "has" : "have")} nothing to ")
                + "sew before the next one; "
                + (count == 1 ? "it is left out, and needs no thread" : "they are left out, and need no thread")
        );

    /// <param name="label">What the tape calls itself; may be empty.</param>
    internal static Diagnostic IsPart(Place place, int block, int corners, string label) =>
        Diagnostic.Warning(
            2209,
            place,
            Invariant($"colour block {block} sews {corners} corners and nothing else: this tape ")
                + (label.Length > 0 ? $"({Quote.Quoted(label)}) " : "")
                + "looks like one part of a work that was split before, and its corners would be sewn as if they were "
                + "artwork; split the whole design instead: 'manifest.json' in the part's folder names its recipe and "
                + "what that was made of"
        );

    internal static Diagnostic TooManyRecords(string file, int records, int most) =>
        Diagnostic.Error(
            2202,
            Place.Whole(file),
            Invariant($"the tape has {records} records, and Splitter takes up to {most}; divide the design")
        );

    internal static Diagnostic TooManyObjects(string file, int most) =>
        Diagnostic.Error(
            2203,
            Place.Whole(file),
            Invariant($"the tape falls into more than {most} pieces that do not hang together; ")
                + "this is no design, or it is damaged: copy it again"
        );

    internal static Diagnostic TooManyBlocks(string file, int blocks, int most) =>
        Diagnostic.Error(
            2208,
            Place.Whole(file),
            Invariant($"the tape has {blocks} colour blocks, and Splitter takes up to {most}; divide the design, ")
                + "or take stops out"
        );

    /// <param name="least">What may be asked for; more than the most where nothing may.</param>
    internal static Diagnostic OtherWidth(Place place, int asked, int own, int least, int most) =>
        Diagnostic.Error(
            2204,
            place,
            Invariant(
                $"the tape is {Units.ToMillimetres(own)} mm wide and cannot be made {Units.ToMillimetres(asked)} mm: "
            )
                + "its stitches would lie too close or too far apart; "
                + (
                    least > most
                        ? "leave the width out"
                        : Invariant($"write a width from {Units.ToMillimetres(least)} to ")
                            + Invariant($"{Units.ToMillimetres(most)} mm")
                )
                + ", or have the design digitized anew at that size"
        );

    private static string Listed(NamedThread thread) =>
        $"{{ name: {YamlText.Quoted(thread.Name)}, color: \"{thread.Color}\" }}";

    private static string Counted(int count, string what) => Invariant($"{count} {what}{(count == 1 ? "" : "s")}");
}
