namespace Splitter.Recipes.Language;

/// <summary>A value that was read, or nothing because a mistake was reported instead.</summary>
internal readonly struct Maybe<T>
    where T : notnull
{
    private Maybe(T value) => (Has, Value) = (true, value);

    /// <summary>There is a value.</summary>
    internal bool Has { get; }

    /// <summary>Meaningful only when there is one.</summary>
    internal T Value { get; }

    public static implicit operator Maybe<T>(T value) => new(value);

    public static implicit operator Maybe<T>(Refused _) => default;
}

/// <summary>What remains of a value after its mistake was reported.</summary>
internal readonly struct Refused;
