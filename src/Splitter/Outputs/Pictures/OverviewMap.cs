using System.Collections.Immutable;
using Splitter.Artwork;
using Splitter.Geometry;
using Splitter.Planning;
using Splitter.Planning.Seams;
using Splitter.Recipes;
using Splitter.Texts;

namespace Splitter.Outputs.Pictures;

/// <summary>
/// The work in true scale, pale, and on it in strong colours what a plan adds: fields, seams by what they cross,
/// corners with their names, and at each join how far its parts may miss each other.
/// </summary>
internal sealed class OverviewMap
{
    /// <summary>How much of a thread's colour the cloth takes away, percent: marks must stand out.</summary>
    private const int Paleness = 45;

    private readonly Canvas canvas;
    private readonly Recipe recipe;
    private readonly Phrasebook say;
    private readonly ShownGround ground;
    private readonly Drawing drawing;
    private readonly Plan plan;
    private readonly ImmutableArray<SeamStretch> seams;
    private readonly ImmutableArray<Region> outlines;
    private readonly Box shown;
    private readonly Box cloth;
    private readonly Point shift;
    private readonly int letters;
    private readonly LabelRoom room;

    /// <summary>Then corners and crosses are left to the parts' own pictures, and figures to the chart.</summary>
    private readonly bool crowded;

    /// <param name="stage">What is shown of the drawing's plane.</param>
    /// <param name="shift">From the drawing to the page.</param>
    internal OverviewMap(
        Canvas canvas,
        Recipe recipe,
        Phrasebook say,
        ShownGround ground,
        (Box Shown, Box Cloth) stage,
        Point shift,
        int letters
    )
    {
        (this.canvas, this.recipe, this.say, this.ground) = (canvas, recipe, say, ground);
        (this.shift, this.letters) = (shift, letters);
        (drawing, plan, seams, outlines) = (ground.Drawing, ground.Plan, ground.Seams, ground.Outlines);
        (shown, cloth) = stage;
        room = new(Laid(stage.Shown), letters);
        crowded = FieldSigns.AreCrowded(plan, letters);
    }

    internal void Draw()
    {
        canvas.Area(Laid(cloth), Colour.Of(recipe.Cloth.Color));
        Shapes();
        Zones();
        Folds();
        Fields();
        Seams();
        if (!crowded)
        {
            foreach (var spot in ground.Dense)
                DenseSign.Draw(canvas, Laid(spot.Worst.Middle), letters);
            Alignments();
            Marks();
        }
        Words();
    }

    /// <summary>On the page, to a tenth of a millimetre: finer is not seen, and makes the picture large.</summary>
    private Point Laid(Point p) => (p + shift).OnTape();

    private Box Laid(Box b) => new(b.Left + shift.X, b.Top + shift.Y, b.Right + shift.X, b.Bottom + shift.Y);

    private Region Laid(Region region) =>
        new([.. region.Polygons.Select(p => new Polygon(Laid(p.Outer), [.. p.Holes.Select(Laid)]))]);

    private Ring Laid(Ring ring) => new([.. ring.Points.Select(Laid)]);

    private void Shapes()
    {
        var bare = Colour.Of(recipe.Cloth.Color);
        foreach (var (shape, outline) in drawing.Shapes.Zip(outlines))
        {
            var colour = Colour.Of(drawing.Threads[shape.Thread].Color).Mixed(bare, Paleness);
            canvas.Area(Laid(outline), colour);
        }
    }

    /// <summary>Where the cloth is folded, and on it the lines that the first part sews.</summary>
    private void Folds()
    {
        foreach (var line in plan.PlacementLines)
        {
            var (from, to) =
                line.Fold == Fold.Upright
                    ? (line.From with { Y = cloth.Top }, line.To with { Y = cloth.Bottom })
                    : (line.From with { X = cloth.Left }, line.To with { X = cloth.Right });
            canvas.Dashes(letters / 8, letters / 2, MarkInk.Placement, Laid(from), Laid(to));
        }
    }

    /// <summary>A fine line all round, so that fields stay apart where many overlap, and strong corners.</summary>
    private void Fields()
    {
        foreach (var (hooping, i) in plan.Hoopings.Select((h, i) => (h, i)))
        {
            var box = Laid(hooping.Field.Bounds);
            canvas.Outline(box, letters / 3, Colour.White, 60);
            canvas.Outline(box, letters / 8, MarkInk.Field(i));
            var arm = Math.Min(box.Width, box.Height) / 7;
            foreach (
                var (corner, x, y) in new[]
                {
                    (new Point(box.Left, box.Top), arm, arm),
                    (new Point(box.Right, box.Top), -arm, arm),
                    (new Point(box.Right, box.Bottom), -arm, -arm),
                    (new Point(box.Left, box.Bottom), arm, -arm),
                }
            )
                canvas.Line(
                    letters * 2 / 5,
                    MarkInk.Field(i),
                    100,
                    corner with
                    {
                        X = corner.X + x,
                    },
                    corner,
                    corner with
                    {
                        Y = corner.Y + y,
                    }
                );
        }
    }

    /// <summary>Hatched: no field may lie there.</summary>
    private void Zones()
    {
        foreach (var zone in recipe.Fields.Forbidden)
            if (zone.Common(shown) is { IsEmpty: false } part)
                ForbiddenZone.Draw(canvas, Laid(part), letters);
    }

    private void Seams()
    {
        var visible = seams.Where(s => s.Line.Length >= letters / 6.0).OrderBy(s => s.Ground).ToList();
        foreach (var stretch in visible.Where(s => s.Ground != SeamGround.Whole))
        {
            ImmutableArray<Point> line = [.. stretch.Line.Points.Select(Laid)];
            // A broad rim over bare cloth would pale the edges of shapes beside it, as if they were cut.
            var rim = stretch.Ground == SeamGround.Bare ? letters * 3 / 10 : letters * 6 / 10;
            canvas.Line(rim, Colour.White, 80, line.AsSpan());
            room.Cross(line.AsSpan());
        }
        foreach (var stretch in visible)
            SeamInk.Draw(canvas, stretch.Ground, letters, [.. stretch.Line.Points.Select(Laid)]);
    }

    private void Alignments()
    {
        foreach (var cross in plan.Hoopings.SelectMany(h => h.Alignments))
        {
            AlignmentSign.Draw(canvas, Laid(cross.At), letters);
            room.Take(AlignmentSign.At(Laid(cross.At), letters));
        }
    }

    /// <summary>
    /// What words must keep clear of: each corner, most of all the point that a tack goes through, and each dot.
    /// </summary>
    private void Marks()
    {
        foreach (var corner in plan.Corners)
        {
            var (at, x, y) = (Laid(corner.At), Laid(corner.ArmX), Laid(corner.ArmY));
            room.Take(Box.Around([x, at]).Grown(letters / 4));
            room.Take(Box.Around([y, at]).Grown(letters / 4));
            room.Take(Box.Around([at]).Grown(letters / 2));
        }
        foreach (var join in plan.Joins)
            room.Take(Box.Around([Laid(join.Weakest)]).Grown(letters / 2));
    }

    private void Corners()
    {
        foreach (var corner in plan.Corners)
        {
            var (at, x, y) = (Laid(corner.At), Laid(corner.ArmX), Laid(corner.ArmY));
            canvas.Line(letters * 5 / 10, Colour.White, 100, x, at, y);
            canvas.Line(letters / 4, MarkInk.Corner, 100, x, at, y);
        }
    }

    /// <summary>
    /// Names find their places first, since they belong right beside their corners; what a number belongs to, its line
    /// shows; letters of fields are at home wherever their part sews.
    /// </summary>
    private void Words()
    {
        var names = (crowded ? [] : plan.Corners)
            .Select(c => MarkName.Of(c.Id, Laid(c.At), Laid(c.ArmX), Laid(c.ArmY), room, letters))
            .ToList();
        var errors = ErrorTag
            .Shown(plan, crowded)
            .Select(join => ErrorTag.Of(plan, say.Numbers, join, Laid(join.Weakest), room, letters))
            .ToList();
        Signs();
        foreach (var name in names)
            name.DrawLine(canvas);
        foreach (var error in errors)
            error.DrawLine(canvas);
        if (!crowded)
            Corners();
        foreach (var name in names)
            name.Draw(canvas);
        foreach (var error in errors)
            error.Draw(canvas);
    }

    private void Signs()
    {
        foreach (var zone in recipe.Fields.Forbidden)
            if (zone.Common(shown) is { IsEmpty: false } part)
                ForbiddenZone.Name(canvas, say.Say("map.forbidden"), Laid(part), room, letters);
        var signs = new FieldSigns(drawing, plan, room, letters);
        foreach (var (hooping, i) in plan.Hoopings.Select((h, i) => (h, i)))
        {
            var note = IsFixed(hooping.Field) ? say.Say("map.fixed") : null;
            var sign = new FieldSign(canvas, letters, hooping, say.Say("map.top"), note);
            sign.Draw(Laid(signs.Place(i, sign, shift)), MarkInk.Field(i));
        }
    }

    /// <summary>The recipe says where it lies.</summary>
    private bool IsFixed(Field field)
    {
        var listed = recipe.Fields.Place is ListedFields { Fields: var all } ? all : [];
        return listed.Concat(recipe.Fields.Fixed).Any(f => f.Centre == field.Centre && f.Turn == field.Turn);
    }
}
