using System.Collections.Immutable;
using Splitter.Artwork.GeoJson;
using Splitter.Artwork.Inline;
using Splitter.Artwork.Sewing;
using Splitter.Artwork.Svg;
using Splitter.Artwork.Tapes;
using Splitter.Diagnostics;
using Splitter.Recipes;

namespace Splitter.Artwork;

/// <summary>
/// Artwork in any of its forms to a <see cref="Drawing"/>: what is painted is read first, then it is decided how each
/// of it is sewn, then is cut away what later shapes hide, and last fills are held back against the push of their rows.
/// A tape says all that itself.
/// </summary>
internal static class DrawingReader
{
    /// <summary>
    /// More stitches nobody sews: ten days and nights at 700 a minute. A bedspread of 2.5 x 3 m that is filled all over
    /// has some seven million.
    /// </summary>
    private const int MostStitches = 10_000_000;

    /// <param name="jobs">How many threads may work.</param>
    internal static Result<Drawing> Read(Recipe recipe, ImmutableArray<SourceFile> sources, int jobs = 1) =>
        recipe.Artwork.IsTape && FileOf(recipe, sources) is { } file
            ? TapeDrawing.Read(recipe, file)
            : Draw(recipe, sources, jobs);

    private static Result<Drawing> Draw(Recipe recipe, ImmutableArray<SourceFile> sources, int jobs) =>
        from sheet in ReadSheet(recipe, sources)
        from shapes in ShapeMaker.Make(recipe, sheet)
        from visible in Layers.CutAway(sheet, shapes, jobs)
        from drawing in Finish(recipe, sheet, PushAllowance.Apply(visible))
        select drawing;

    internal static Result<Sheet> ReadSheet(Recipe recipe, ImmutableArray<SourceFile> sources)
    {
        if (FileOf(recipe, sources) is not { } source)
            return InlineReader.Read(recipe.Artwork);
        return source.Path.EndsWith(".svg", StringComparison.OrdinalIgnoreCase)
            ? SvgReader.Read(source, recipe.Artwork.Width)
            : GeoJsonReader.Read(source, recipe.Artwork.Width, recipe.PlaceOf("artwork"));
    }

    private static SourceFile? FileOf(Recipe recipe, ImmutableArray<SourceFile> sources) =>
        sources.FirstOrDefault(s => s.Path == recipe.Artwork.File);

    private static Result<Drawing> Finish(Recipe recipe, Sheet sheet, ImmutableArray<Shape> shapes) =>
        shapes.IsEmpty ? Result.Fail<Drawing>(DrawingProblems.NothingToSew(recipe.PlaceOf("artwork")))
        : shapes.OfType<FillShape>().Sum(Stitches) is > MostStitches and var stitches
            ? Result.Fail<Drawing>(DrawingProblems.TooManyStitches(recipe.PlaceOf("artwork"), stitches, MostStitches))
        : Result.From(
            new Drawing(sheet.Width, sheet.Height, ThreadNames.Of(recipe, sheet), shapes),
            [
                .. ThreadNames.Mistyped(recipe, sheet),
                .. ThreadNames.Forgotten(recipe, sheet),
                .. UnseenShapes.On(recipe, ThreadNames.Of(recipe, sheet), shapes),
            ]
        );

    /// <summary>Those within its rows, without their ends, underlay and ways between them.</summary>
    private static double Stitches(FillShape fill) =>
        fill.Footprint.Area / fill.Style.RowSpacing / fill.Style.StitchLength;
}
