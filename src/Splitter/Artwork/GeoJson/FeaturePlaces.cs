using System.Collections.Immutable;
using System.Text.Json;
using Splitter.Diagnostics;

namespace Splitter.Artwork.GeoJson;

/// <summary>Where the features of a collection begin; a parsed document has forgotten it.</summary>
internal static class FeaturePlaces
{
    /// <summary>One place for each item of the list <c>features</c> at the top of a well-formed document.</summary>
    internal static ImmutableArray<Place> In(SourceFile source)
    {
        var bytes = source.Bytes.Span;
        var reader = new Utf8JsonReader(bytes);
        var places = ImmutableArray.CreateBuilder<Place>();
        var (inFeatures, line, lineStart, counted) = (false, 1, 0, 0);
        while (reader.Read())
        {
            if (reader.CurrentDepth == 1 && reader.TokenType == JsonTokenType.PropertyName)
                inFeatures = reader.ValueTextEquals("features");
            // The items of the list, whatever they are: values at depth 2, or objects that open there.
            else if (
                inFeatures
                && reader.CurrentDepth == 2
                && reader.TokenType is not (JsonTokenType.EndObject or JsonTokenType.EndArray)
            )
            {
                for (; counted < reader.TokenStartIndex; counted++)
                    if (bytes[counted] == (byte)'\n')
                        (line, lineStart) = (line + 1, counted + 1);
                places.Add(new(source.Path, line, (int)reader.TokenStartIndex - lineStart + 1));
            }
        }
        return places.ToImmutable();
    }
}
