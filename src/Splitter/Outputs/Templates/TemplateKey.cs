using System.Collections.Immutable;
using Splitter.Geometry;
using Splitter.Outputs.Pictures;
using Splitter.Planning;

namespace Splitter.Outputs.Templates;

/// <summary>What the signs of a template mean: those that it has.</summary>
internal sealed class TemplateKey(
    Canvas canvas,
    Plan plan,
    bool hasCloth,
    ImmutableArray<Tiling> tilings,
    TemplateTexts texts
)
{
    private const int Row = 8 * Units.Millimetre;
    private const int Sample = 10 * Units.Millimetre;
    private const int Half = Sample / 2;

    private Point at;

    internal void Draw(Point corner)
    {
        at = new(corner.X + Half, corner.Y + Half);
        canvas.Line(TemplateInk.Fine, TemplateInk.Artwork, 100, Left, Right);
        Says(texts.KeyArtwork);
        if (!plan.Joins.IsEmpty)
        {
            canvas.Line(TemplateInk.Strong, TemplateInk.Seam, 100, Left, at);
            canvas.Dashes(TemplateInk.Fine, TemplateInk.Dash / 2, TemplateInk.Seam, at, Right);
            Says(texts.KeySeam);
        }
        if (hasCloth)
        {
            ClothEdge.Line(canvas, Left, Right);
            Says(texts.KeyClothEdge);
        }
        if (!plan.Corners.IsEmpty)
        {
            Corner(dashed: false, texts.KeyCorner);
            Corner(dashed: true, texts.KeyNextCorner);
        }
        if (plan.Hoopings.Any(h => !h.Alignments.IsEmpty))
        {
            Cross(at, AlignmentStitch.Arm, TemplateInk.Strong, MarkInk.Alignment);
            Says(texts.KeyAlignment);
        }
        Cross(Left, Half / 2, TemplateInk.Strong, Colour.Ink);
        canvas.Ring(Left, TemplateInk.Ring, TemplateInk.Fine, Colour.Ink);
        Arrow.Draw(canvas, at with { X = at.X + (Half / 2) }, new(0, -1), Half, TemplateInk.Strong, Colour.Ink);
        Says(texts.KeyCentre);
        Field();
        if (!plan.PlacementLines.IsEmpty)
        {
            canvas.Dashes(TemplateInk.Fine, TemplateInk.Dash, MarkInk.Placement, Left, Right);
            canvas.Line(2 * TemplateInk.Strong, MarkInk.Placement, 100, at, Right);
            Says(texts.KeyFold);
        }
        if (tilings.All(t => t.Marks.IsEmpty))
            return;
        Cross(at, Half / 2, TemplateInk.Fine, Colour.Ink);
        canvas.Ring(at, TemplateInk.Ring, TemplateInk.Fine, Colour.Ink);
        Says(texts.KeyJoin);
        canvas.Dashes(TemplateInk.Fine, TemplateInk.Dash, Colour.Ink, Left, Right);
        Says(texts.KeyCut);
    }

    private Point Left => at with { X = at.X - Half };

    private Point Right => at with { X = at.X + Half };

    private void Corner(bool dashed, string says)
    {
        canvas.Line(
            TemplateInk.Strong,
            MarkInk.Corner,
            100,
            at with
            {
                X = at.X + Half,
            },
            at,
            at with
            {
                Y = at.Y + (Half / 2),
            }
        );
        CornerRing.Draw(canvas, at, dashed);
        Says(says);
    }

    private void Cross(Point middle, int arm, int width, Colour colour) =>
        canvas.Lines(
            width,
            colour,
            100,
            [
                [middle with { X = middle.X - arm }, middle with { X = middle.X + arm }],
                [middle with { Y = middle.Y - arm }, middle with { Y = middle.Y + arm }],
            ]
        );

    private void Field()
    {
        var colour = MarkInk.Field(0);
        canvas.Line(TemplateInk.Fine, colour, 100, Left, Right);
        canvas.Line(2 * TemplateInk.Strong, colour, 100, at, Left, at with { X = at.X - Half, Y = at.Y + (Half / 2) });
        Says(texts.KeyField);
    }

    private void Says(string text)
    {
        canvas.Text(
            text,
            new(at.X + Half + (Half / 2), at.Y + (TemplateInk.SmallLetters / 2)),
            TemplateInk.SmallLetters,
            Colour.Ink
        );
        at = at with { Y = at.Y + Row };
    }
}
