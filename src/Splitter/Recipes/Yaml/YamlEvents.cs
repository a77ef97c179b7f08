using System.Collections.Immutable;
using Splitter.Diagnostics;
using YamlDotNet.Core;
using YamlDotNet.Core.Events;

namespace Splitter.Recipes.Yaml;

/// <summary>
/// Text to the parser's events, with a bound on everything that could grow. The parser's object model and its node
/// tree are not used: both recurse without a limit and follow aliases.
/// </summary>
internal static class YamlEvents
{
    /// <summary>The language nests six deep; what follows the events may recurse this deep safely.</summary>
    internal const int MostNested = 64;

    /// <summary>A bound on time: a tenth of a second. Two thousand shapes of three keys have 16,000 events.</summary>
    internal const int MostEvents = 20_000;

    internal static Result<ImmutableArray<ParsingEvent>> Read(string file, string text)
    {
        var events = ImmutableArray.CreateBuilder<ParsingEvent>();
        var parser = new Parser(new Scanner(new StringReader(text), skipComments: true));
        var nesting = new Nesting();
        while (true)
        {
            var (more, problem) = Advance(parser, file, text, events.Count > 0 ? events[^1].End : Mark.Empty);
            if (problem is not null)
                return Result.Fail<ImmutableArray<ParsingEvent>>(problem);
            if (!more || parser.Current is not { } found)
                // The parser ends some broken files early without a word.
                return events is [.., StreamEnd] && nesting.IsClosed
                    ? Result.Of(events.ToImmutable())
                    : Result.Fail<ImmutableArray<ParsingEvent>>(
                        YamlSyntax.NotClosed(At(file, events.Count > 0 ? events[^1].End : Mark.Empty), text)
                    );

            events.Add(found);
            var place = At(file, found.Start);
            if (!nesting.Accepts(found))
                return Result.Fail<ImmutableArray<ParsingEvent>>(RecipeFileProblems.NoPair(place));
            if (nesting.Depth > MostNested)
                return Result.Fail<ImmutableArray<ParsingEvent>>(RecipeFileProblems.TooDeep(place, MostNested));
            if (events.Count > MostEvents)
                return Result.Fail<ImmutableArray<ParsingEvent>>(RecipeFileProblems.TooManyValues(place, MostEvents));
        }
    }

    internal static Place At(string file, Mark mark) => new(file, (int)mark.Line, (int)mark.Column);

    private static (bool More, Diagnostic? Problem) Advance(Parser parser, string file, string text, Mark last)
    {
        try
        {
            return (parser.MoveNext(), null);
        }
        catch (YamlException e)
        {
            return (false, YamlSyntax.Explain(At(file, e.Start), e.Message, text));
        }
        // The parser answers some unclosed brackets with exceptions of other types, without a place.
#pragma warning disable CA1031
        catch (Exception)
#pragma warning restore CA1031
        {
            return (false, YamlSyntax.NotClosed(At(file, last), text));
        }
    }
}
