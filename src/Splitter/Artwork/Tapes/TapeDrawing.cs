using System.Collections.Immutable;
using Splitter.Diagnostics;
using Splitter.Recipes;
using Splitter.Tapes;

namespace Splitter.Artwork.Tapes;

/// <summary>
/// Artwork that is stitches already: its objects become the shapes of a drawing, which is planned like any other, and each
/// keeps its stitches.
/// </summary>
internal static class TapeDrawing
{
    /// <summary>More stitches are no design that a machine holds; what grows with them stays bounded.</summary>
    private const int MostRecords = 1_000_000;

    /// <summary>More objects are no design but noise: planning compares them with each other.</summary>
    private const int MostShapes = 20_000;

    internal static Result<Drawing> Read(Recipe recipe, SourceFile source) =>
        from tape in TapeReader.Read(source.Path, source.Bytes.Span)
        from sheet in Laid(source.Path, tape)
        from threads in BlockThreads.Of(recipe, sheet.Blocks.Length)
        from drawing in Drawn(recipe, source.Path, sheet, threads)
        select drawing;

    private static Result<TapeSheet> Laid(string file, Tape tape)
    {
        if (tape.Records.Length > MostRecords)
            return Result.Fail<TapeSheet>(StitchedProblems.TooManyRecords(file, tape.Records.Length, MostRecords));
        var sheet = TapeSheet.Of(tape);
        return Result.From(
            sheet,
            sheet.EmptyStops > 0 ? [StitchedProblems.EmptyStops(file, sheet.EmptyStops)] : Array.Empty<Diagnostic>()
        );
    }

    private static Result<Drawing> Drawn(Recipe recipe, string file, TapeSheet sheet, ImmutableArray<SewThread> threads)
    {
        if (recipe.Artwork.Width is { } width && width != sheet.Width)
            return Result.Fail<Drawing>(
                StitchedProblems.OtherWidth(recipe.PlaceOf("artwork.width"), width, sheet.Width)
            );
        ImmutableArray<SewThread> spools = [.. threads.Distinct()];
        var shapes = new TapeShapes(file, [.. threads.Select(t => spools.IndexOf(t))]).Of(sheet);
        return shapes.Length > MostShapes
            ? Result.Fail<Drawing>(StitchedProblems.TooManyObjects(file, shapes.Length, MostShapes))
            : Result.Of(new Drawing(sheet.Width, sheet.Height, spools, shapes));
    }
}
