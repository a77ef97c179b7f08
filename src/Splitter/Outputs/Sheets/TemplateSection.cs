using System.Xml.Linq;
using Splitter.Outputs.Templates;
using Splitter.Recipes;

namespace Splitter.Outputs.Sheets;

/// <summary>
/// What the paper template is for, and how it is checked and laid; nothing where the recipe asks for none.
/// </summary>
internal static class TemplateSection
{
    internal static XElement? Of(SheetContent sheet)
    {
        var output = sheet.Recipe.Output;
        if (!output.Files.Contains(OutputKind.Template))
            return null;
        var say = sheet.Say;
        return Html.Element(
            "section",
            Html.Element("h2", say.Say("paper.title")),
            Html.List([
                say.Say(
                    "paper.print",
                    ("file", Template.FileName(output.Paper)),
                    ("tolerance", sheet.Numbers.Fine(TemplateTexts.RuleTolerance))
                ),
                say.Say("paper.design"),
                .. sheet.IsSplit ? new[] { say.Say("paper.part") } : [],
                say.Say("paper.limits"),
            ])
        );
    }
}
