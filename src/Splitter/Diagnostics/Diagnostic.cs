namespace Splitter.Diagnostics;

/// <summary>How much a diagnostic weighs: an error stops the pipeline after its stage, a warning does not.</summary>
public enum Severity
{
    /// <summary>The outputs are written; something deserves a look.</summary>
    Warning,

    /// <summary>Nothing is written.</summary>
    Error,
}

/// <summary>One mistake or remark about the input: what is wrong, where, and what to do about it.</summary>
/// <param name="Severity">Error or warning.</param>
/// <param name="Code">SPL and four digits; the first digit is the stage, see the catalogues in this folder.</param>
/// <param name="Place">Where in the input.</param>
/// <param name="Message">One line: what is wrong, and what to do.</param>
public sealed record Diagnostic(Severity Severity, string Code, Place Place, string Message)
{
    internal static Diagnostic Error(int code, Place place, string message) =>
        new(Severity.Error, $"SPL{code:D4}", place, message);

    internal static Diagnostic Warning(int code, Place place, string message) =>
        new(Severity.Warning, $"SPL{code:D4}", place, message);

    /// <summary>The canonical line: <c>file(line,col): error SPLnnnn: text</c>.</summary>
    public override string ToString() =>
        $"{Place}: {(Severity == Severity.Error ? "error" : "warning")} {Code}: {Message}";
}
