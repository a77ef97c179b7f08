using System.Collections.Immutable;
using System.Diagnostics.CodeAnalysis;

namespace Splitter.Diagnostics;

/// <summary>
/// What a stage returns: its value and what it has to say about the input. There is a value exactly when no
/// diagnostic is an error. <see cref="SelectMany"/> lets stages follow one another in a query expression; the rule
/// that a pipeline stops after a stage that reported an error stands there and nowhere else.
/// </summary>
public sealed class Result<T>
    where T : notnull
{
    private readonly T? value;

    private Result(T? value, ImmutableArray<Diagnostic> diagnostics)
    {
        this.value = value;
        Diagnostics = diagnostics;
        Succeeded = value is not null && !diagnostics.Any(d => d.Severity == Severity.Error);
    }

    /// <summary>In the order in which they were found; <see cref="DiagnosticOrder"/> sorts them for a person.</summary>
    public ImmutableArray<Diagnostic> Diagnostics { get; }

    /// <summary>No diagnostic is an error, so that there is a value.</summary>
    public bool Succeeded { get; }

    /// <summary>The value; asking for it after an error is a bug of ours.</summary>
    public T Value => Succeeded ? value! : throw new InvalidOperationException("A result with errors has no value.");

    internal static Result<T> Of(T value, ImmutableArray<Diagnostic> diagnostics = default) =>
        new(value, diagnostics.IsDefault ? [] : diagnostics);

    internal static Result<T> Failed(ImmutableArray<Diagnostic> diagnostics) =>
        diagnostics.Any(d => d.Severity == Severity.Error)
            ? new(default, diagnostics)
            : throw new InvalidOperationException("A failure needs an error that says why.");

    /// <summary>The value, unless there were errors.</summary>
    public bool TryGet([MaybeNullWhen(false)] out T result)
    {
        result = Succeeded ? value : default;
        return Succeeded;
    }

    /// <summary>Turns the value into another one; query syntax uses it.</summary>
    internal Result<TNext> Select<TNext>(Func<T, TNext> next)
        where TNext : notnull =>
        Succeeded ? Result<TNext>.Of(next(value!), Diagnostics) : Result<TNext>.Failed(Diagnostics);

    /// <summary>Runs the next stage on the value, unless this one reported an error; diagnostics add up.</summary>
    internal Result<TOut> SelectMany<TNext, TOut>(Func<T, Result<TNext>> next, Func<T, TNext, TOut> combine)
        where TNext : notnull
        where TOut : notnull
    {
        if (!Succeeded)
            return Result<TOut>.Failed(Diagnostics);
        var following = next(value!);
        var all = Diagnostics.AddRange(following.Diagnostics);
        return following.Succeeded ? Result<TOut>.Of(combine(value!, following.Value), all) : Result<TOut>.Failed(all);
    }
}

/// <summary>Ways to make a <see cref="Result{T}"/>.</summary>
internal static class Result
{
    internal static Result<T> Of<T>(T value, ImmutableArray<Diagnostic> diagnostics = default)
        where T : notnull => Result<T>.Of(value, diagnostics);

    /// <summary>A value with remarks, or a failure if any of them is an error.</summary>
    internal static Result<T> From<T>(T value, IEnumerable<Diagnostic> diagnostics)
        where T : notnull
    {
        var all = diagnostics.ToImmutableArray();
        return all.Any(d => d.Severity == Severity.Error) ? Result<T>.Failed(all) : Result<T>.Of(value, all);
    }

    internal static Result<T> Fail<T>(params ReadOnlySpan<Diagnostic> diagnostics)
        where T : notnull => Result<T>.Failed([.. diagnostics]);

    /// <summary>All values in order, or all errors of all of them together.</summary>
    internal static Result<ImmutableArray<T>> All<T>(IEnumerable<Result<T>> results)
        where T : notnull
    {
        var list = results.ToImmutableArray();
        ImmutableArray<Diagnostic> diagnostics = [.. list.SelectMany(r => r.Diagnostics)];
        return list.All(r => r.Succeeded)
            ? Result<ImmutableArray<T>>.Of([.. list.Select(r => r.Value)], diagnostics)
            : Result<ImmutableArray<T>>.Failed(diagnostics);
    }
}
