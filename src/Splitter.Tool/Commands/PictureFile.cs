using Splitter.Diagnostics;
using Splitter.Outputs;
using Splitter.Recipes;

namespace Splitter.Tool.Commands;

/// <summary>A picture of a plan, where the person asked for it.</summary>
internal static class PictureFile
{
    internal static OutputKind? KindOf(string file) =>
        file.EndsWith(".svg", StringComparison.OrdinalIgnoreCase) ? OutputKind.Svg
        : file.EndsWith(".png", StringComparison.OrdinalIgnoreCase) ? OutputKind.Png
        : null;

    internal static Diagnostic? Write(string file, Outlook seen)
    {
        if (seen.Plans is not [var plan])
            return CallProblems.PictureNeedsOneHoop(file, seen.Plans.Select(p => p.Hoop.Name));
        try
        {
            File.WriteAllBytes(file, OutputRenderer.RenderPlan(seen.Job, plan, KindOf(file)!.Value));
            return null;
        }
        catch (Exception e) when (e is IOException or UnauthorizedAccessException or NotSupportedException)
        {
            return CallProblems.CannotWritePicture(file, e.Message);
        }
    }
}
