using System.Collections.Immutable;
using Splitter.Geometry;

namespace Splitter.Outputs.Pictures.Strands;

/// <summary>
/// Thread in SVG: each stretch that the light falls on alike is one path, written once as its shadow and used again for
/// edge, body and ridge of the thread.
/// </summary>
internal sealed class StrandSvg(TextBytes svg)
{
    private int paths;

    internal void Write(PaintedThread thread)
    {
        ImmutableArray<(ThreadLight Light, ImmutableArray<Point> Line)> stretches =
        [
            .. thread
                .Lines.Zip(thread.Lit)
                .SelectMany(line =>
                    line.Second.Select(s => (s.Light, line.First.Slice(s.First, s.Last - s.First + 1)))
                ),
        ];
        for (var (first, next) = (0, 0); first < stretches.Length; first = next)
        {
            for (next = first; next < stretches.Length && stretches[next].Light == stretches[first].Light; next++) { }
            Write(thread.Colour, stretches[first].Light, [.. stretches[first..next].Select(s => s.Line)]);
        }
    }

    private void Write(Colour thread, ThreadLight light, ImmutableArray<ImmutableArray<Point>> lines)
    {
        paths++;
        var (x, y) = (-ThreadLight.FromX * Strand.ShadowReach, -ThreadLight.FromY * Strand.ShadowReach);
        svg.Add($"<g stroke=\"#000\"{SvgWriter.Opacity("stroke", Strand.Shadow)} ")
            .Add($"stroke-width=\"{SvgWriter.Tenths(Strand.Width)}\" ")
            .Add($"transform=\"translate({SvgWriter.Tenths((int)x)} {SvgWriter.Tenths((int)y)})\">")
            .Add($"<path id=\"t{paths}\" d=\"");
        SvgWriter.Path(svg, lines, "");
        svg.Add("\"/></g>\n");
        Use(light.Shade(thread), Strand.Width, "");
        Use(light.Body(thread), Strand.BodyWidth, "");
        var (up, left) = (ThreadLight.FromY * Strand.RidgeShift, ThreadLight.FromX * Strand.RidgeShift);
        Use(
            light.Ridge(thread),
            Strand.RidgeWidth,
            $" x=\"{SvgWriter.Tenths((int)left)}\" y=\"{SvgWriter.Tenths((int)up)}\""
        );
    }

    private void Use(Colour colour, int width, string more) =>
        svg.Add($"<use href=\"#t{paths}\" stroke=\"{colour}\" stroke-width=\"{SvgWriter.Tenths(width)}\"{more}/>\n");
}
