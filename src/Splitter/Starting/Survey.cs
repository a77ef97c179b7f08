using System.Collections.Immutable;
using System.Text;
using Splitter.Artwork;
using Splitter.Artwork.Sewing;
using Splitter.Artwork.Tapes;
using Splitter.Diagnostics;
using Splitter.Geometry;
using Splitter.Recipes;
using Splitter.Recipes.Yaml;

namespace Splitter.Starting;

/// <summary>One painted element of a drawing, and how it would be sewn without a rule.</summary>
internal sealed record Seen(DrawnElement Element, Box Bounds, SewAs Sewn)
{
    /// <summary>Its longer side.</summary>
    internal int Longest => Math.Max(Bounds.Width, Bounds.Height);
}

/// <summary>Who says how wide the finished work is.</summary>
internal enum WidthSource
{
    /// <summary>The person.</summary>
    Asked,

    /// <summary>The drawing.</summary>
    Drawing,

    /// <summary>The drawing, in bare numbers.</summary>
    Pixels,

    /// <summary>Nobody.</summary>
    Nothing,
}

/// <summary>What a drawing holds, as far as a recipe can be started from it.</summary>
/// <param name="Colours">
/// In the order in which they first appear, those of things too small to be sewn among them: they are not, once the
/// work is wider.
/// </param>
internal sealed record Survey(
    int Width,
    int Height,
    WidthSource WidthFrom,
    ImmutableArray<Seen> Elements,
    ImmutableArray<string> Colours
)
{
    /// <summary>Needle holes of artwork that is stitches already; 0 for a drawing.</summary>
    internal int Stitches { get; private init; }

    internal bool IsStitched => Stitches > 0;

    /// <summary>For a drawing that states no size that can be sewn, µm: it fits a large hoop or two.</summary>
    private const int UsualWidth = 200 * Units.Millimetre;

    /// <summary>A drawing that states less is drawn without a thought for its size.</summary>
    private const int LeastWidth = 40 * Units.Millimetre;

    /// <summary>So is one that states more.</summary>
    private const int MostWidth = 1500 * Units.Millimetre;

    /// <param name="asked">The finished width; null for the drawing's own.</param>
    internal static Result<Survey> Of(SourceFile artwork, int? asked) =>
        ArtworkSource.IsTapeName(artwork.Path) ? OfTape(artwork, asked) : OfDrawing(artwork, asked);

    /// <summary>A colour for each colour block.</summary>
    private static Result<Survey> OfTape(SourceFile tape, int? asked) =>
        from sheet in TapeDrawing.ReadSheet(tape, asked, Place.Whole(tape.Path))
        let threads = BlockThreads
            .Proposed([], sheet.Blocks.Length)
            .Select(t => new SewThread(t.Name, t.Color))
            .ToImmutableArray()
        from shapes in TapeDrawing.Shapes(tape.Path, sheet, threads)
        select new Survey(
            sheet.Width,
            sheet.Height,
            asked is null ? WidthSource.Drawing : WidthSource.Asked,
            [.. shapes.Select(s => new Seen(TapeRules.Element(s, threads), s.Footprint.Bounds, SewnAs([s])))],
            [.. threads.Select(t => t.Color)]
        )
        {
            Stitches = shapes.SelectMany(s => s.Original).Sum(t => t.OwnStitches),
        };

    private static Result<Survey> OfDrawing(SourceFile artwork, int? asked)
    {
        var stated = Read(artwork, asked);
        var isStated = stated.TryGet(out var own) && own.Sheet.Width is >= LeastWidth and <= MostWidth;
        var says =
            asked is not null ? WidthSource.Asked
            : isStated && own.Sheet.StatesUnit ? WidthSource.Drawing
            : isStated ? WidthSource.Pixels
            : WidthSource.Nothing;
        return from read in says == WidthSource.Nothing ? Read(artwork, UsualWidth) : stated
            from survey in Of(read, says) is { Elements.IsEmpty: false } seen
                ? Result.Of(seen)
                : Result.Fail<Survey>(DrawingProblems.NothingToSew(Place.Whole(artwork.Path)))
            select survey;
    }

    private static Survey Of((Recipe Recipe, Sheet Sheet) read, WidthSource says) =>
        new(
            read.Sheet.Width,
            read.Sheet.Height,
            says,
            [.. read.Sheet.Elements.Select(e => See(read.Recipe, read.Sheet, e)).OfType<Seen>()],
            ThreadNames.Colours(read.Sheet)
        );

    /// <summary>Null for what is too small to be sewn.</summary>
    private static Seen? See(Recipe recipe, Sheet sheet, DrawnElement element)
    {
        if (!ShapeMaker.Make(recipe, sheet with { Elements = [element] }).TryGet(out var shapes) || shapes.IsEmpty)
            return null;
        return new(element, Box.Around(shapes.Select(s => s.Footprint.Bounds)), SewnAs(shapes));
    }

    private static SewAs SewnAs(ImmutableArray<Shape> shapes) =>
        shapes.Any(s => s is FillShape) ? SewAs.Fill
        : shapes.Any(s => s is SatinShape) ? SewAs.Satin
        : SewAs.Run;

    /// <summary>As a recipe that says nothing of how things are sewn reads it.</summary>
    private static Result<(Recipe Recipe, Sheet Sheet)> Read(SourceFile artwork, int? width) =>
        from recipe in RecipeReader.Read(artwork.Path, Encoding.UTF8.GetBytes(Bare(artwork.Path, width)))
        from sheet in DrawingReader.ReadSheet(recipe, [artwork])
        select (recipe, sheet);

    private static string Bare(string artwork, int? width) =>
        string.Join(
            '\n',
            "splitter: 1",
            "artwork:",
            $"  file: {YamlText.Quoted(artwork)}",
            width is { } w ? FormattableString.Invariant($"  width: {Units.ToMillimetres(w)} mm") : "",
            "hoops: [{ name: any, field: 130 x 180 mm }]",
            "output: { folder: any }"
        );
}
