using Splitter.Geometry;

namespace Splitter.Outputs.Pictures;

/// <summary>A table or list beside a map, of a size that is known before it is drawn.</summary>
internal interface IPanel
{
    /// <summary>Micrometres.</summary>
    int Width { get; }

    /// <summary>Micrometres.</summary>
    int Height { get; }

    /// <param name="at">Its top left corner.</param>
    void Draw(Point at);
}
