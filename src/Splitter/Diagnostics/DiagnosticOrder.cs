using System.Collections.Immutable;

namespace Splitter.Diagnostics;

/// <summary>
/// The one order in which diagnostics reach a person: by place, then code, then text; doubles dropped.
/// </summary>
internal static class DiagnosticOrder
{
    internal static ImmutableArray<Diagnostic> Sorted(this IEnumerable<Diagnostic> diagnostics) =>
        [
            .. diagnostics
                .Distinct()
                .OrderBy(d => d.Place)
                .ThenBy(d => d.Code, StringComparer.Ordinal)
                .ThenBy(d => d.Message, StringComparer.Ordinal),
        ];
}
