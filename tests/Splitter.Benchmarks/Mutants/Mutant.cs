namespace Splitter.Benchmarks.Mutants;

/// <summary>One change of the code in one place, as a report of the mutation tool lists it.</summary>
/// <param name="File">From the library's folder, with slashes.</param>
/// <param name="Line">Where it begins, from 1.</param>
/// <param name="From">Its first character in the file.</param>
/// <param name="To">After its last character.</param>
/// <param name="Kind">What kind of change.</param>
/// <param name="Now">What stands there instead.</param>
/// <param name="Status">What became of it.</param>
internal sealed record Mutant(
    string File,
    int Line,
    int From,
    int To,
    string Kind,
    string Now,
    string Was,
    MutantStatus Status
)
{
    /// <summary>The same in every report of the same code.</summary>
    internal string Key => FormattableString.Invariant($"{File} {From} {To} {Kind} {Now}");

    internal bool LiesWithin(Mutant other) => File == other.File && other.From <= From && To <= other.To;
}

/// <summary>The words of the tool's reports (mutation-testing-report-schema).</summary>
internal enum MutantStatus
{
    Killed,
    Timeout,
    Survived,
    NoCoverage,
    CompileError,
    Ignored,
    Pending,
    RuntimeError,
}
