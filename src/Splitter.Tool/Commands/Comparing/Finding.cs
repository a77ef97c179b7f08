using System.Collections.Immutable;
using Splitter.Artwork;
using Splitter.Checking;
using Splitter.Diagnostics;

namespace Splitter.Tool.Commands.Comparing;

/// <summary>What kind of thing was found. SPL5020 to SPL5029.</summary>
internal sealed record FindingRule(string Id, string Text)
{
    internal static readonly FindingRule Missing = new("SPL5020", "A file is missing, or new.");
    internal static readonly FindingRule Extra = new("SPL5021", "A file is not made any more.");
    internal static readonly FindingRule Paper = new(
        "SPL5022",
        "A picture, sheet, list, manifest or a tape's label differs."
    );
    internal static readonly FindingRule Tape = new("SPL5023", "A tape differs.");
    internal static readonly FindingRule Part = new(
        "SPL5024",
        "What a part sews, or what the person does at it, differs."
    );

    internal static readonly ImmutableArray<FindingRule> All = [Missing, Extra, Paper, Tape, Part];
}

/// <summary>One difference, with the place that a reviewer looks at.</summary>
/// <param name="IsNote">It changes nothing at the machine.</param>
/// <param name="Artwork">Where the shape is drawn that it is about; null for none.</param>
internal sealed record Finding(FindingRule Rule, bool IsNote, string Message, Place Place, Place? Artwork)
{
    /// <param name="place">The set's place in the recipe, or the folder it lies in.</param>
    internal static IEnumerable<Finding> Of(SetDifferences set, bool isCheck, Place place, Drawing? drawing)
    {
        foreach (var file in set.Files)
        {
            var rule = file.State switch
            {
                FileState.Missing => FindingRule.Missing,
                FileState.Extra => FindingRule.Extra,
                _ => file.IsSewnOtherwise ? FindingRule.Tape : FindingRule.Paper,
            };
            yield return new(rule, !file.IsSewnOtherwise, FileText.Of(file, isCheck), place, null);
        }
        foreach (var (shape, text) in DifferenceText.AtTheMachine(set))
            yield return new(
                FindingRule.Part,
                IsNote: false,
                text,
                place,
                drawing?.Shapes.FirstOrDefault(s => s.Id == shape)?.Place
            );
    }
}
