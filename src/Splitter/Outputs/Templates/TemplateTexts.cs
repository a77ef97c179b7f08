using System.Collections.Immutable;
using System.Globalization;
using Splitter.Planning;
using Splitter.Recipes;
using Splitter.Texts;

namespace Splitter.Outputs.Templates;

/// <summary>Every word on a template, in the recipe's language.</summary>
internal sealed class TemplateTexts(Recipe recipe, Hoop hoop)
{
    /// <summary>
    /// A misfit people notice in line work starts at about half a millimetre (common practice, no source).
    /// </summary>
    internal const int RuleTolerance = 500;

    private readonly Phrasebook say = new(recipe.Output);

    internal string Title => say.Say("template.title", ("title", recipe.Title), ("hoop", hoop.Name));

    /// <summary>What a sheet belongs to.</summary>
    internal string Subject =>
        say.Say(
            "template.subject",
            ("title", recipe.Title),
            ("hoop", hoop.Name),
            ("size", say.Numbers.Size(hoop.Width, hoop.Height))
        );

    internal ImmutableArray<string> Advice =>
        [
            say.Say("template.print"),
            say.Say("template.measure", ("tolerance", say.Numbers.Fine(RuleTolerance))),
            say.Say("template.join"),
            say.Say("template.use"),
            say.Say("template.caution"),
        ];

    internal string Design => say.Say("template.design");

    internal string LeftOut => say.Say("template.left-out");

    internal string Parts => say.Say("template.parts");

    internal string FootPrint => say.Say("template.foot.print");

    internal string FootMeasure => say.Say("template.foot.measure");

    internal string Top => say.Say("template.top");

    internal string HoopTop => say.Say("template.hoop-top");

    internal string DrawingTop => say.Say("template.drawing-top");

    /// <summary>What the first page says of all.</summary>
    internal string Cover(int sheets) => say.Many("template.cover", sheets);

    internal string MapOf(int first, int last) =>
        first == last
            ? say.Say("template.map.one", ("first", Plain(first)))
            : say.Say("template.map.many", ("first", Plain(first)), ("last", Plain(last)));

    internal string PartSheets(string letter, int first, int last) =>
        first == last
            ? say.Say("template.part-sheet", ("part", letter), ("sheet", Plain(first)))
            : say.Say("template.part-sheets", ("part", letter), ("first", Plain(first)), ("last", Plain(last)));

    internal string SheetOf(int number, int sheets) =>
        say.Say("template.sheet", ("number", Plain(number)), ("sheets", Plain(sheets)));

    internal string Part(string letter) => say.Say("template.part", ("part", letter));

    internal string FoldOf(Fold fold) =>
        fold == Fold.Upright ? say.Say("template.upright-fold") : say.Say("template.level-fold");

    internal string ClothEdge => say.Say("template.cloth-edge");

    internal string JoinsTo(string mark, int sheet) =>
        say.Say("template.joins", ("mark", mark), ("sheet", Plain(sheet)));

    internal string KeyArtwork => say.Say("template.key.artwork");

    internal string KeySeam => say.Say("template.key.seam");

    internal string KeyCorner => say.Say("template.key.corner");

    internal string KeyNextCorner => say.Say("template.key.next-corner");

    internal string KeyAlignment => say.Say("template.key.alignment");

    internal string KeyCentre => say.Say("template.key.centre");

    internal string KeyField => say.Say("template.key.field");

    internal string KeyFold => say.Say("template.key.fold");

    internal string KeyClothEdge => say.Say("template.key.cloth-edge");

    internal string KeyJoin => say.Say("template.key.join");

    internal string KeyCut => say.Say("template.key.cut");

    private static string Plain(int number) => number.ToString(CultureInfo.InvariantCulture);
}
