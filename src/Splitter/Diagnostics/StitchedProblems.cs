using System.Collections.Immutable;
using Splitter.Geometry;
using Splitter.Recipes;
using static System.FormattableString;

namespace Splitter.Diagnostics;

/// <summary>What there is to say of artwork that is stitches already: SPL2200 to SPL2249. Lengths in millimetres.</summary>
internal static class StitchedProblems
{
    /// <param name="proposed">A thread for each colour block.</param>
    internal static Diagnostic OtherThreads(Place place, int threads, ImmutableArray<NamedThread> proposed) =>
        Diagnostic.Error(
            2200,
            place,
            Invariant(
                $"the tape has {Counted(proposed.Length, "colour block")} and the recipe {Counted(threads, "thread")}; a tape has no colours, so list a thread for each block, in sewing order: threads: [{string.Join(", ", proposed.Select(t => Invariant($"{{ name: {Quoted(t.Name)}, color: \"{t.Color}\" }}")))}]"
            )
        );

    internal static Diagnostic EmptyStops(string file, int count) =>
        Diagnostic.Warning(
            2201,
            Place.Whole(file),
            Invariant(
                $"{count} {(count == 1 ? "stop has" : "stops have")} nothing to sew before {(count == 1 ? "it" : "them")}, or behind the last one; they are left out, and need no thread"
            )
        );

    internal static Diagnostic TooManyRecords(string file, int records, int most) =>
        Diagnostic.Error(
            2202,
            Place.Whole(file),
            Invariant($"the tape has {records} records, and Splitter takes up to {most}; divide the design")
        );

    internal static Diagnostic TooManyObjects(string file, int objects, int most) =>
        Diagnostic.Error(
            2203,
            Place.Whole(file),
            Invariant(
                $"the tape falls into {objects} pieces that do not hang together, and Splitter takes up to {most}; this is no design, or it is damaged: copy it again"
            )
        );

    internal static Diagnostic OtherWidth(Place place, int asked, int own) =>
        Diagnostic.Error(
            2204,
            place,
            Invariant(
                $"the tape is {Units.ToMillimetres(own)} mm wide, and stitches cannot become {Units.ToMillimetres(asked)} mm; leave 'artwork.width' out, or have the design digitized at that size"
            )
        );

    /// <summary>As a recipe writes it.</summary>
    private static string Quoted(string name) =>
        $"\"{name.Replace("\\", "\\\\", StringComparison.Ordinal).Replace("\"", "\\\"", StringComparison.Ordinal)}\"";

    private static string Counted(int count, string what) => Invariant($"{count} {what}{(count == 1 ? "" : "s")}");
}
