using System.Xml.Linq;
using Splitter.Geometry;

namespace Splitter.Outputs.Sheets;

/// <summary>What is done once, before the first hooping.</summary>
internal static class PreparationSection
{
    internal static XElement Of(SheetContent sheet, WorkMap map)
    {
        var say = sheet.Say;
        var (width, height) = ClothPiece.Rough(sheet);
        var steps = new List<object>
        {
            say.Say("prepare.cut-rough", ("size", sheet.Numbers.RoughSize(width, height))),
            say.Say("prepare.press"),
        };
        if (sheet.IsSplit)
            steps.Add(say.Say("prepare.backing"));
        (width, height) = ClothPiece.Cut(sheet);
        steps.Add(say.Say("prepare.cut", ("size", sheet.Numbers.RoughSize(width, height))));
        if (sheet.IsSplit)
            steps.Add(
                TurnsDiffer(sheet) ? $"{say.Say("prepare.top")} {say.Say("prepare.ways")}" : say.Say("prepare.top")
            );
        steps.AddRange(Folds(sheet));
        if (sheet.Plan.PlacementLines.IsEmpty)
            steps.Add(Middle(sheet));
        steps.Add(say.Say("prepare.spools"));
        if (sheet.IsSplit)
            steps.Add(say.Say("prepare.machine"));
        return Html.Classed(
            "section",
            "preparation",
            Html.Element("h2", say.Say("prepare.title")),
            Html.Classed("ol", "ticks", steps.Select(step => Html.Element("li", Html.Tick(step)))),
            Pictures(sheet, map)
        );
    }

    /// <summary>The folds on the flat cloth, and the folded cloth on the first part's lines.</summary>
    private static XElement? Pictures(SheetContent sheet, WorkMap map)
    {
        if (sheet.Plan.PlacementLines.IsEmpty || sheet.Recipe.Cloth.Size is null)
            return null;
        var say = sheet.Say;
        return Html.Classed(
            "div",
            "pictures",
            Html.Element(
                "figure",
                map.Folds(say.Say("fold.flat")),
                Html.Element("figcaption", say.Say("fold.flat-caption"))
            ),
            Html.Element(
                "figure",
                new FoldPicture(sheet, sheet.Plan.Hoopings[0]).Draw(say.Say("fold.laid")),
                Html.Element("figcaption", say.Say("fold.laid-caption"))
            )
        );
    }

    private static bool TurnsDiffer(SheetContent sheet) =>
        sheet.Plan.Hoopings.Any(h => h.Field.Turn != sheet.Plan.Hoopings[0].Field.Turn);

    private static IEnumerable<object> Folds(SheetContent sheet)
    {
        var (say, cloth, first) = (sheet.Say, sheet.Recipe.Cloth, sheet.Plan.Hoopings[0].Field);
        if (sheet.Plan.PlacementLines.IsEmpty || cloth.Size is not var (width, height))
            yield break;
        if (cloth.UprightFold is { } upright)
            yield return say.Say(
                FoldPicture.KeepsLeft(cloth, first) ? "prepare.fold-upright.left" : "prepare.fold-upright.right",
                ("left", sheet.Numbers.Length(upright)),
                ("right", sheet.Numbers.Length(width - upright))
            );
        if (cloth.LevelFold is { } level)
            yield return say.Say(
                FoldPicture.KeepsTop(cloth, first) ? "prepare.fold-level.up" : "prepare.fold-level.down",
                ("bottom", sheet.Numbers.Length(height - level)),
                ("top", sheet.Numbers.Length(level))
            );
    }

    /// <summary>Without lines to fold by, the middle of the first field is marked on the cloth.</summary>
    private static string Middle(SheetContent sheet)
    {
        var (cloth, centre) = (sheet.Recipe.Cloth, sheet.Plan.Hoopings[0].Field.Centre);
        if (cloth.Size is not null)
        {
            var at = centre + cloth.ArtworkAt;
            return sheet.Say.Say(
                "prepare.middle",
                ("left", sheet.Numbers.Length(at.X)),
                ("top", sheet.Numbers.Length(at.Y))
            );
        }
        // Nothing is known of the cloth: what must lie on each side of that mark.
        var all = Box.Around(sheet.Plan.Hoopings.Select(h => h.Field.Bounds)).Joined(sheet.Drawing.Bounds);
        return sheet.Say.Say(
            "prepare.middle-free",
            ("left", sheet.Numbers.Rough(centre.X - all.Left)),
            ("top", sheet.Numbers.Rough(centre.Y - all.Top)),
            ("right", sheet.Numbers.Rough(all.Right - centre.X)),
            ("bottom", sheet.Numbers.Rough(all.Bottom - centre.Y))
        );
    }
}
