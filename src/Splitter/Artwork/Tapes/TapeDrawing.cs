using System.Collections.Immutable;
using Splitter.Diagnostics;
using Splitter.Geometry;
using Splitter.Recipes;
using Splitter.Recipes.Keys;
using Splitter.Tapes;

namespace Splitter.Artwork.Tapes;

/// <summary>
/// Artwork that is stitches already: its objects become the shapes of a drawing, which is planned like any other, and
/// each keeps its stitches.
/// </summary>
internal static class TapeDrawing
{
    /// <summary>More stitches are no design that a machine holds; what grows with them stays bounded.</summary>
    private const int MostRecords = 1_000_000;

    /// <summary>More objects are no design but noise: planning compares them with each other.</summary>
    private const int MostShapes = 20_000;

    /// <summary>
    /// How much wider or narrower stitches bear to be made, as a share: their lengths and distances change as much, and
    /// beyond it cloth shows between rows, or thread piles up. Common practice, no source.
    /// </summary>
    internal const double MostScaling = 0.1;

    internal static Result<Drawing> Read(Recipe recipe, SourceFile source) =>
        from sheet in ReadSheet(source, recipe.Artwork.Width, recipe.PlaceOf("artwork.width"))
        from threads in BlockThreads.Of(recipe, sheet.Blocks.Length)
        from shapes in Shapes(source.Path, sheet, threads)
        from kept in TapeRules.Apply(recipe, threads, shapes)
        select new Drawing(sheet.Width, sheet.Height, [.. threads.Distinct()], kept);

    /// <param name="width">Finished width, µm; null for the tape's own.</param>
    /// <param name="widthPlace">Where that stands.</param>
    internal static Result<TapeSheet> ReadSheet(SourceFile source, int? width, Place widthPlace) =>
        from tape in TapeReader.Read(source.Path, source.Bytes.Span)
        from sheet in Laid(source.Path, tape, width, widthPlace)
        select sheet;

    /// <param name="threads">For each colour block its thread.</param>
    internal static Result<ImmutableArray<Shape>> Shapes(
        string file,
        TapeSheet sheet,
        ImmutableArray<SewThread> threads
    )
    {
        ImmutableArray<SewThread> spools = [.. threads.Distinct()];
        ImmutableArray<Shape> shapes =
        [
            .. new TapeShapes(file, [.. threads.Select(t => spools.IndexOf(t))]).Of(sheet).Take(MostShapes + 1),
        ];
        return shapes.Length > MostShapes
            ? Result.Fail<ImmutableArray<Shape>>(StitchedProblems.TooManyObjects(file, MostShapes))
            : Result.Of(shapes);
    }

    private static Result<TapeSheet> Laid(string file, Tape tape, int? width, Place widthPlace)
    {
        if (tape.Records.Length > MostRecords)
            return Result.Fail<TapeSheet>(StitchedProblems.TooManyRecords(file, tape.Records.Length, MostRecords));
        var own = TapeSheet.OwnWidth(TapeCounts.Of(tape).Bounds);
        if (width is { } asked && Math.Abs(asked - own) > own * MostScaling)
            return Result.Fail<TapeSheet>(
                StitchedProblems.OtherWidth(
                    widthPlace,
                    asked,
                    own,
                    Math.Max(Units.UpOnTape(Units.Round(own * (1 - MostScaling))), ArtworkKeys.LeastWidth),
                    Units.DownOnTape(Units.Round(own * (1 + MostScaling)))
                )
            );
        var sheet = TapeSheet.Of(tape, width);
        if (sheet.Blocks.Length > RecipeKeys.MostThreads)
            return Result.Fail<TapeSheet>(
                StitchedProblems.TooManyBlocks(file, sheet.Blocks.Length, RecipeKeys.MostThreads)
            );
        return Result.From(sheet, [.. Remarks(file, tape, sheet)]);
    }

    private static IEnumerable<Diagnostic> Remarks(string file, Tape tape, TapeSheet sheet)
    {
        if (sheet.EmptyStops > 0)
            yield return StitchedProblems.EmptyStops(file, sheet.EmptyStops);
        if (RegistrationBlocks.First(sheet) is { } corners)
            yield return StitchedProblems.IsPart(
                TapeProblems.At(file, corners.Threads[0].Records[0]),
                corners.Number,
                corners.Threads.Length,
                tape.Label
            );
    }
}
