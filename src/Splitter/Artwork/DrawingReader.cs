using System.Collections.Immutable;
using Splitter.Artwork.GeoJson;
using Splitter.Artwork.Inline;
using Splitter.Artwork.Sewing;
using Splitter.Artwork.Svg;
using Splitter.Diagnostics;
using Splitter.Recipes;

namespace Splitter.Artwork;

/// <summary>
/// Artwork in any of its forms to a <see cref="Drawing"/>: what is painted is read first, then it is decided how each
/// of it is sewn, then is cut away what later shapes hide, and last fills are held back against the push of their rows.
/// </summary>
internal static class DrawingReader
{
    internal static Result<Drawing> Read(Recipe recipe, ImmutableArray<SourceFile> sources) =>
        from sheet in ReadSheet(recipe, sources)
        from shapes in ShapeMaker.Make(recipe, sheet)
        from visible in Layers.CutAway(sheet, shapes)
        from drawing in Finish(recipe, sheet, PushAllowance.Apply(visible))
        select drawing;

    internal static Result<Sheet> ReadSheet(Recipe recipe, ImmutableArray<SourceFile> sources)
    {
        if (sources.FirstOrDefault(s => s.Path == recipe.Artwork.File) is not { } source)
            return InlineReader.Read(recipe.Artwork);
        return Path.GetExtension(source.Path).Equals(".svg", StringComparison.OrdinalIgnoreCase)
            ? SvgReader.Read(source, recipe.Artwork.Width)
            : GeoJsonReader.Read(source, recipe.Artwork.Width, recipe.PlaceOf("artwork"));
    }

    private static Result<Drawing> Finish(Recipe recipe, Sheet sheet, ImmutableArray<Shape> shapes) =>
        shapes.IsEmpty
            ? Result.Fail<Drawing>(DrawingProblems.NothingToSew(recipe.PlaceOf("artwork")))
            : Result.From(
                new Drawing(sheet.Width, sheet.Height, ThreadNames.Of(recipe, sheet), shapes),
                ThreadNames.Mistyped(recipe, sheet)
            );
}
