using System.Collections.Immutable;
using System.Text.Json.Nodes;
using Splitter.Diagnostics;
using static System.FormattableString;

namespace Splitter.Recipes.Language;

/// <summary>A unit of the language.</summary>
/// <param name="Factor">How much of the library's own unit it is.</param>
internal sealed record Unit(string Name, decimal Factor);

/// <summary>A number with a unit, in a range.</summary>
internal abstract class QuantityKind<T> : ScalarKind<T>
    where T : notnull
{
    private readonly string name;
    private readonly ImmutableArray<Unit> units;
    private readonly string least;
    private readonly string most;
    private readonly (decimal Least, decimal Most) range;

    /// <param name="name">With its article: <c>a length</c>.</param>
    /// <param name="least">The bounds as one would write them.</param>
    protected QuantityKind(string name, ImmutableArray<Unit> units, string least, string most)
    {
        (this.name, this.units, this.least, this.most) = (name, units, least, most);
        range = (Bound(least), Bound(most));
    }

    /// <summary>
    /// What to write for numbers without a unit, or with an unknown one: those units in which all are in range.
    /// </summary>
    internal string Instead(string text, params IReadOnlyList<decimal> numbers) =>
        RecipeValueProblems.Proposed(
            [.. units.Where(u => numbers.All(n => IsInRange(n * u.Factor))).Select(u => $"{text} {u.Name}")],
            least,
            most
        );

    internal override string Expects => $"{name} from {least} to {most}";

    /// <summary>The units as a pattern.</summary>
    internal string Units => string.Join('|', units.Select(u => u.Name));

    /// <summary>The whole as a pattern; its range is for the reader alone.</summary>
    internal string Written => $"{Quantity.Written} *({Units})";

    internal sealed override JsonObject ToSchema() => Schema.Text(Written);

    internal sealed override Maybe<T> ReadText(string text, Given given)
    {
        var plain = Quantity.WithPoint(text);
        if (!Quantity.TryParse(plain, out var quantity))
            return given.RefuseForm(Expects);
        var read = Read(quantity, plain, given);
        // Where more is wrong than the comma, that is told, with the comma mended.
        return read.Has && plain != text
            ? given.Refuse(RecipeValueProblems.DecimalComma(given.Place, given.Key.Name, plain))
            : read;
    }

    /// <param name="text">As the file writes it, for messages.</param>
    internal Maybe<T> Read(Quantity quantity, string text, Given given)
    {
        if (quantity.Unit.Length == 0)
            return given.Refuse(
                RecipeValueProblems.NoUnit(given.Place, given.Key.Name, name, text, Instead(text, quantity.Number))
            );
        if (units.FirstOrDefault(u => u.Name == quantity.Unit) is not { } unit)
            return given.Refuse(
                RecipeValueProblems.UnknownUnit(
                    given.Place,
                    given.Key.Name,
                    name,
                    text,
                    quantity.Unit,
                    Instead(Invariant($"{quantity.Number}"), quantity.Number)
                )
            );
        var amount = quantity.Number * unit.Factor;
        if (!IsInRange(amount))
            return given.Refuse(RecipeValueProblems.OutOfRange(given.Place, given.Key.Name, text, least, most));
        return From(amount, text, given);
    }

    private bool IsInRange(decimal amount) => amount >= range.Least && amount <= range.Most;

    protected abstract Maybe<T> From(decimal amount, string text, Given given);

    private decimal Bound(string text) =>
        Quantity.TryParse(text, out var bound)
            ? bound.Number * units.Single(u => u.Name == bound.Unit).Factor
            : throw new ArgumentException($"'{text}' is no bound.", nameof(text));
}

/// <summary>A length; whole micrometres.</summary>
internal sealed class LengthKind(string least, string most) : QuantityKind<int>("a length", Lengths, least, most)
{
    private static readonly ImmutableArray<Unit> Lengths =
    [
        new("mm", Geometry.Units.Millimetre),
        new("cm", 10 * Geometry.Units.Millimetre),
        new("in", Geometry.Units.Inch),
    ];

    /// <summary>Only whole tape steps.</summary>
    internal bool OnTape { get; init; }

    protected override Maybe<int> From(decimal amount, string text, Given given) =>
        OnTape && amount % Geometry.Units.TapeStep != 0
            ? given.Refuse(
                RecipeValueProblems.OffTape(given.Place, given.Key.Name, text, Geometry.Units.OnTape((int)amount))
            )
            : (int)decimal.Round(amount, MidpointRounding.AwayFromZero);
}

/// <summary>An angle, degrees clockwise as seen on the drawing.</summary>
internal sealed class AngleKind() : QuantityKind<double>("an angle", [new("deg", 1)], "-360 deg", "360 deg")
{
    protected override Maybe<double> From(decimal amount, string text, Given given) => (double)amount;
}

/// <summary>A time; whole seconds.</summary>
internal sealed class TimeKind(string least, string most)
    : QuantityKind<int>("a time", [new("s", 1), new("min", 60)], least, most)
{
    protected override Maybe<int> From(decimal amount, string text, Given given) =>
        (int)decimal.Round(amount, MidpointRounding.AwayFromZero);
}

/// <summary>A percentage; a share of one.</summary>
internal sealed class PercentKind(string most) : QuantityKind<double>("a percentage", [new("%", 0.01m)], "0 %", most)
{
    protected override Maybe<double> From(decimal amount, string text, Given given) => (double)amount;
}
