using System.Collections.Immutable;
using Splitter.Geometry;

namespace Splitter.Artwork.Svg;

/// <summary>What fills a shape or its stroke.</summary>
internal abstract record Paint
{
    internal sealed record None : Paint;

    internal sealed record Flat(Colour Colour) : Paint;

    /// <summary><c>currentColor</c>: the colour of whoever is painted with it.</summary>
    internal sealed record Current : Paint;

    /// <summary>A gradient or a pattern, and what is painted when there is none such.</summary>
    internal sealed record Server(string Reference, Paint? Fallback) : Paint;
}

/// <summary>An element's properties after inheritance; lengths in its user units.</summary>
internal sealed record Look
{
    internal static readonly Look Initial = new();

    internal Colour Color { get; init; } = new("#000000", 1);

    internal Paint Fill { get; init; } = new Paint.Flat(new("#000000", 1));

    internal Paint Stroke { get; init; } = new Paint.None();

    internal FillRule FillRule { get; init; }

    internal FillRule ClipRule { get; init; }

    internal double StrokeWidth { get; init; } = 1;

    internal Cap Cap { get; init; } = Cap.Butt;

    internal Join Join { get; init; } = Join.Mitre;

    internal double MitreLimit { get; init; } = 4;

    /// <summary>Dash, gap, dash …; empty for a whole line.</summary>
    internal ImmutableArray<double> Dashes { get; init; } = [];

    internal double DashOffset { get; init; }

    internal double FillOpacity { get; init; } = 1;

    internal double StrokeOpacity { get; init; } = 1;

    internal bool Visible { get; init; } = true;

    /// <summary>Some marker is set.</summary>
    internal bool Marked { get; init; }

    // What follows is not inherited.

    internal double Opacity { get; init; } = 1;

    internal bool Displayed { get; init; } = true;

    internal bool Overflows { get; init; }

    /// <summary>The value of <c>clip-path</c>, null for none.</summary>
    internal string? ClipPath { get; init; }
}
