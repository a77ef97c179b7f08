using System.Collections.Immutable;
using System.Xml.Linq;
using Splitter.Artwork.Svg.Paths;
using Splitter.Geometry;

namespace Splitter.Artwork.Svg;

/// <summary>What an element finds around it.</summary>
internal sealed record Setting
{
    /// <summary>From user space to µm on the sheet.</summary>
    internal required Matrix Space { get; init; }

    /// <summary>Width and height of the nearest viewport in user units: what percentages are of.</summary>
    internal required Spot Viewport { get; init; }

    /// <summary>On the sheet; null for everything.</summary>
    internal Region? Clip { get; init; }

    internal Look Look { get; init; } = Look.Initial;

    /// <summary>From the element outwards.</summary>
    internal ImmutableArray<string> Ids { get; init; } = [];

    /// <summary>From the element outwards.</summary>
    internal ImmutableArray<string> Classes { get; init; } = [];

    /// <summary>Levels of elements above, each copy's counted anew.</summary>
    internal int Depth { get; init; }

    /// <summary>What is being copied by <c>use</c>, innermost first.</summary>
    internal ImmutableStack<XElement> Copying { get; init; } = [];

    /// <summary>The <c>use</c> that draws this very element; null inside a copied group.</summary>
    internal XElement? User { get; init; }

    /// <summary>100 % of a length that is neither across nor down (SVG 1.1, 7.10).</summary>
    internal double Diagonal => Viewport.Length / Math.Sqrt(2);
}

/// <summary>What the walk over a drawing's shapes is for.</summary>
internal interface IReceiver
{
    /// <summary>Shapes are painted, so that what cannot be painted deserves a remark.</summary>
    bool Paints { get; }

    /// <summary>Clip paths count.</summary>
    bool Clips { get; }

    /// <summary>Groups are drawn; a clip path has shapes only.</summary>
    bool Groups { get; }

    void Draw(XElement element, Outline outline, Setting setting);
}
