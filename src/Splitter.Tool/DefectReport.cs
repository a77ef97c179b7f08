namespace Splitter.Tool;

/// <summary>What a person reads when the tool itself is broken.</summary>
internal static class DefectReport
{
    internal static string Text(Exception defect) =>
        string.Join(
            '\n',
            "splitter: error SPL9999: this is a defect of Splitter, not of your recipe; a set of files is "
                + "replaced whole or not at all, so nothing of yours is lost",
            "Please report it with the recipe, its artwork and the lines below, to whoever gave you this tool.",
            $"Splitter {ToolVersion.Text} on {Environment.OSVersion.VersionString}",
            defect
        );
}
