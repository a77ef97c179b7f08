using Splitter.Artwork;
using Splitter.Diagnostics;
using Splitter.Recipes;

namespace Splitter.Planning;

/// <summary>Drawing and hoop to <see cref="Plan"/>: fields, seams, order, marks.</summary>
internal static class Planner
{
    internal static Result<Plan> Plan(Recipe recipe, Drawing drawing, Hoop hoop) => throw new NotSupportedException();
}
