using System.Collections.Immutable;
using Splitter.Parts;
using Splitter.Planning;

namespace Splitter.Outputs;

/// <summary>Parts to files, the manifest last because it lists the others.</summary>
internal static class OutputRenderer
{
    internal static ImmutableArray<OutputFile> Render(
        Request request,
        Job job,
        Plan plan,
        ImmutableArray<Part> parts
    ) => throw new NotSupportedException();
}
