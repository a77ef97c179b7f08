using System.Collections.Immutable;
using Splitter.Artwork;
using Splitter.Diagnostics;
using Splitter.Geometry;
using Splitter.Planning.Fields.Covering;
using Splitter.Recipes;

namespace Splitter.Planning.Fields;

/// <summary>Lays fields on the drawing as the recipe says, and sees that they cover it.</summary>
internal static class FieldPlacer
{
    /// <summary>Ways to lay the same number of fields that are handed on at most.</summary>
    private const int MostLayouts = 8;

    /// <summary>
    /// More hoopings nobody sews, a bedspread of 2.5 m in a small hoop has some 340; their seams would take minutes to
    /// find.
    /// </summary>
    private const int MostHoopings = 500;

    /// <summary>
    /// One or more layouts, all with as many fields, the one whose seams promise to show least first: what they do
    /// show, and where corners find room, is seen later.
    /// </summary>
    /// <param name="jobs">How many threads may work.</param>
    internal static Result<ImmutableArray<Layout>> Place(Recipe recipe, Drawing drawing, Hoop hoop, int jobs = 1)
    {
        var held = FirstField.Held(recipe, drawing.Bounds.Centre);
        var turning = Turning.Of(recipe, hoop);
        var template = Template(recipe, drawing, hoop, turning);
        var farOff = FarOff.Problems(recipe, drawing, template).ToList();
        if (farOff.Exists(problem => problem.Severity == Severity.Error))
            return Result.Fail<ImmutableArray<Layout>>([.. farOff]);
        if (DrawnPoints.LeastFields(drawing, template) is > MostHoopings and var least)
            return Result.Fail<ImmutableArray<Layout>>(
                PlanProblems.TooManyHoopings(recipe.PlaceOf("hoops"), hoop, $"at least {least}", MostHoopings)
            );
        var task = CoverTask.Of(recipe, drawing, template, held);
        // Before a search that could only fail.
        if (recipe.Fields.Place is FewestFields && !task.CanLink && !Shelves.Covers(task).Any(c => c.Length == 1))
            return Result.Fail<ImmutableArray<Layout>>(
                PlanProblems.HoopTooSmallForCorners(
                    recipe.PlaceOf("hoops"),
                    hoop,
                    CommonGround.Least(recipe.Registration),
                    CommonGround.Longest
                )
            );
        ImmutableArray<Layout> layouts = recipe.Fields.Place switch
        {
            ListedFields listed => Bounded(Listed(listed.Fields, template)),
            GridFields grid => Bounded(FieldGrid.Fields(drawing.Bounds.Joined(held ?? Box.Empty), grid, template)),
            _ => HoldingWhole(Fewest(task, turning, jobs)),
        };
        if (layouts.IsEmpty)
        {
            var overZones = Coverage.OverZones(recipe, task.Fixed).ToList();
            return Result.Fail<ImmutableArray<Layout>>(
                overZones.Count > 0 ? [.. overZones] : ForbiddenZones.Problems(recipe, drawing, template, held).AsSpan()
            );
        }
        if (layouts[0].Fields.Length is > MostHoopings and var found)
            return Result.Fail<ImmutableArray<Layout>>(
                PlanProblems.TooManyHoopings(recipe.PlaceOf("hoops"), hoop, $"{found}", MostHoopings)
            );
        var problems = Coverage.Problems(recipe, drawing, layouts[0], template).ToList();
        return Result.From(
            problems.Count > 0
                ? [layouts[0]]
                : layouts.RemoveAll(l => l != layouts[0] && Coverage.Problems(recipe, drawing, l, template).Any()),
            [.. farOff, .. problems]
        );

        ImmutableArray<Layout> HoldingWhole(ImmutableArray<Layout> any) =>
            WantedWhole.Kept(
                drawing,
                any,
                wanted => Fewest(CoverTask.Of(recipe, drawing, template, held, wanted), turning, jobs),
                layout => !Coverage.Problems(recipe, drawing, layout, template).Any()
            );

        ImmutableArray<Layout> Bounded(ImmutableArray<Field> placed)
        {
            ImmutableArray<Field> fields = [.. placed, .. Listed(recipe.Fields.Fixed, template)];
            fields = Reaching(drawing, fields, task);
            return [Laid(fields, LowerBound.Of(task.With(fields), fields.Length), template)];
        }
    }

    /// <summary>A layout with its fields moved to where seams show less, as they are drawn now.</summary>
    /// <param name="layout">In sewing order.</param>
    /// <param name="shown">What seams between grounds show in a window.</param>
    /// <param name="jobs">How many threads may ask for it at once.</param>
    internal static Layout Refined(
        Recipe recipe,
        Drawing drawing,
        Layout layout,
        Func<ImmutableArray<Box>, Box, double> shown,
        int jobs
    )
    {
        var turning = Turning.Of(recipe, layout.Fields[0].Hoop);
        var template = Template(recipe, drawing, layout.Fields[0].Hoop, turning);
        var held = FirstField.Held(recipe, drawing.Bounds.Centre);
        var task = CoverTask.Of(recipe, drawing, template, held, wanted => layout.Grounds.Any(g => g.Contains(wanted)));
        var fields = Refining.Refined(task, layout.Fields, shown, jobs);
        var refined = Laid([.. fields.Select(f => Turned(f, task, turning))], layout.LowerBound, template);
        return Coverage.Problems(recipe, drawing, refined, template).Any() ? layout : refined;
    }

    /// <summary>Some field of the hoop could hold all of a box.</summary>
    internal static bool CanHold(Recipe recipe, Drawing drawing, Hoop hoop, Box box) =>
        Template(recipe, drawing, hoop, Turning.Of(recipe, hoop)).Fits(box, Units.TapeStep + 1);

    /// <summary>The fields that the recipe lays on the drawing, those of a grid without a line of their own.</summary>
    internal static ImmutableArray<(Field Field, Place? Place)> Placed(Recipe recipe, Drawing drawing, Hoop hoop)
    {
        var template = Template(recipe, drawing, hoop, Turning.Of(recipe, hoop));
        var cover = drawing.Bounds.Joined(FirstField.Held(recipe, drawing.Bounds.Centre) ?? Box.Empty);
        ImmutableArray<Field> grid = recipe.Fields.Place is GridFields g ? FieldGrid.Fields(cover, g, template) : [];
        return
        [
            .. grid.Select(field => (field, (Place?)null)),
            .. HandPlaced.Of(recipe, template).Select(placed => (placed.Field, (Place?)placed.Place)),
        ];
    }

    /// <summary>
    /// A layout without those of some fields that the rest does not need; the same when it needs all of them.
    /// </summary>
    internal static Layout Without(Recipe recipe, Drawing drawing, Layout layout, ImmutableArray<int> numbers)
    {
        var hoop = layout.Fields[0].Hoop;
        var template = Template(recipe, drawing, hoop, Turning.Of(recipe, hoop));
        var task = CoverTask.Of(recipe, drawing, template, FirstField.Held(recipe, drawing.Bounds.Centre));
        var rest = Needed(layout.Fields, [.. numbers.Select(i => layout.Fields[i])], task);
        if (Coverage.Problems(recipe, drawing, Laid(rest, layout.LowerBound, template), template).Any())
            return layout;
        var left = task.With(rest);
        var isFreer = left.Fixed.Length < task.Fixed.Length;
        return Laid(rest, isFreer ? LowerBound.Of(left, rest.Length) : layout.LowerBound, template);
    }

    /// <summary>Fields without those that reach nothing drawn, unless the rest needs them.</summary>
    private static ImmutableArray<Field> Reaching(Drawing drawing, ImmutableArray<Field> fields, CoverTask task) =>
        Needed(fields, [.. fields.Where(f => !FarOff.Sews(drawing, task.Template.Ground(f)))], task);

    /// <summary>
    /// Fields without empty ones, as long as the rest reach each other as well, and one can be sewn first.
    /// </summary>
    private static ImmutableArray<Field> Needed(
        ImmutableArray<Field> fields,
        ImmutableArray<Field> empty,
        CoverTask task
    )
    {
        foreach (var field in empty)
        {
            var rest = fields.Remove(field);
            if (
                Links.Groups(rest, task).Count <= Links.Groups(fields, task).Count
                && (task.Held is not { } held || rest.Any(f => f.Usable.Contains(held)))
            )
                fields = rest;
        }
        return fields;
    }

    // Stitches reach past the artwork's edge by the pull compensation, and by half a step of the tape.
    private static FieldTemplate Template(Recipe recipe, Drawing drawing, Hoop hoop, Turning turning) =>
        new(hoop, recipe.Fields.Clearance, drawing.Shapes.Max(s => s.Style.Pull) + Units.TapeStep)
        {
            Turns = turning.Footprints,
        };

    private static ImmutableArray<Layout> Fewest(CoverTask task, Turning turning, int jobs)
    {
        var answer = FewestSearch.Find(task, jobs);
        // Where the throat lets no cover pass, one that knows nothing of it shows which fields it stops.
        if (answer.Covers.IsEmpty && task.Turning is not null)
            answer = FewestSearch.Find(task = task with { Turning = null }, jobs);
        // Where zones forbid every cover there is no layout, and the zones are named.
        if (answer.Covers.IsEmpty && !task.Forbidden.IsEmpty)
            return [];
        var covers = answer.Covers.IsEmpty
            ?
            [
                [.. task.Fixed, .. Shelves.Covers(task).FirstOrDefault([])],
            ]
            : Settling.Settled(task, answer.Covers, MostLayouts, jobs);
        return
        [
            .. covers.Select(cover =>
                Laid([.. cover.Select(f => Turned(f, task, turning))], answer.LowerBound, task.Template)
            ),
        ];
    }

    private static Field Turned(Field field, CoverTask task, Turning turning) =>
        task.Fixed.Contains(field) ? field : task.Template.At(field.Centre, turning.Best(field));

    private static Layout Laid(ImmutableArray<Field> fields, int bound, FieldTemplate template) =>
        new(fields, [.. fields.Select(template.Ground)], bound);

    private static ImmutableArray<Field> Listed(ImmutableArray<ListedField> fields, FieldTemplate template) =>
        [.. fields.Select(f => template.At(f.Centre, f.Turn))];
}
