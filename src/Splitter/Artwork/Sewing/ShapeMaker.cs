using System.Collections.Frozen;
using System.Collections.Immutable;
using Splitter.Artwork.Columns;
using Splitter.Diagnostics;
using Splitter.Geometry;
using Splitter.Recipes;

namespace Splitter.Artwork.Sewing;

/// <summary>Decides how each painted element is sewn: rows, columns or lines.</summary>
internal sealed class ShapeMaker
{
    /// <summary>Ground that is nowhere this wide holds no stitch, µm: the shortest stitch of the trade.</summary>
    private const int NarrowestGround = 300;

    /// <summary>
    /// A stroke wider than this is filled with rows unless a rule says satin, µm. Common practice, no source.
    /// </summary>
    private const int WidestStrokeSatin = 8000;

    private readonly ImmutableArray<SewRule> rules;
    private readonly Guides guides;
    private readonly FrozenDictionary<string, int> threads;
    private readonly ShapeNames names;
    private readonly Lazy<LeaveRules> leaves;
    private readonly RepeatedOutlines outlines = new();
    private readonly List<Diagnostic> problems = [];

    /// <summary>What is left out since it is too small.</summary>
    private readonly List<(DrawnElement Element, Diagnostic Warning)> tooSmall = [];

    private ShapeMaker(Recipe recipe, Sheet sheet)
    {
        rules = recipe.Artwork.Sew;
        guides = new(recipe, sheet, problems);
        threads = ThreadNames.Numbers(sheet);
        names = new(sheet);
        leaves = new(() => new(sheet));
    }

    /// <summary>
    /// Shapes in drawing order, nothing cut away yet. What cannot be sewn as it is asked is a warning.
    /// </summary>
    internal static Result<ImmutableArray<Shape>> Make(Recipe recipe, Sheet sheet)
    {
        var maker = new ShapeMaker(recipe, sheet);
        ImmutableArray<Shape> shapes = [.. sheet.Elements.SelectMany(e => maker.Shapes(e))];
        maker.problems.AddRange(maker.LeftOut(TinyWork.Told(recipe, sheet)));
        maker.problems.AddRange(SewRules.Unused(recipe, sheet));
        return Result.From(shapes, maker.problems);
    }

    /// <param name="tiny">Says it of all areas at once; null where each is told.</param>
    private IEnumerable<Diagnostic> LeftOut(Diagnostic? tiny) =>
        tiny is null
            ? tooSmall.Select(t => t.Warning)
            : [tiny, .. tooSmall.Where(t => t.Element is not DrawnArea).Select(t => t.Warning)];

    private ImmutableArray<Shape> Shapes(DrawnElement element)
    {
        var rule = SewRules.For(element, rules);
        if (rule?.As == SewAs.Leave)
            return [];
        ImmutableArray<Shape> shapes = element switch
        {
            DrawnArea area => [.. Areas(area, rule)],
            DrawnLine line => [.. Lines(line, rule)],
            _ => throw new InvalidOperationException($"Nothing is known to sew for {element.GetType().Name}."),
        };
        if (shapes.IsEmpty)
        {
            var name = element.Id ?? names.Next(element);
            var leave = leaves.Value.For(element.Place, element.Color, name);
            tooSmall.Add((element, DrawingProblems.TooSmall(element.Place, name, leave)));
        }
        return shapes;
    }

    /// <summary>
    /// What a rule keeps whole is one shape; else every connected area is one, so that each may find one field.
    /// </summary>
    private IEnumerable<Shape> Areas(DrawnArea area, SewRule? rule)
    {
        ImmutableArray<Region> grounds =
        [
            .. area.Ground.Polygons.Select(p => new Region([p])).Where(g => InscribedDisc.Fits(g, NarrowestGround)),
        ];
        if (grounds.IsEmpty)
            return [];
        return rule?.KeepWhole == true
            ? [Area(area, rule, grounds)]
            : grounds.Select(ground => Area(area, rule, [ground]));
    }

    private Shape Area(DrawnElement element, SewRule? rule, ImmutableArray<Region> grounds)
    {
        var name = names.Next(element);
        var ground = grounds is [var only] ? only : Polygons.Union(grounds);
        if (rule?.As is null or SewAs.Satin)
        {
            var widest = rule?.As is null ? SewDefaults.WidestOwnSatin : SewDefaults.WidestAskedSatin;
            var columns = grounds.Select(g => outlines.Columns(g, widest)).ToImmutableArray();
            if (columns.All(c => !c.IsEmpty))
                return Satin(element, rule, name, [.. columns.SelectMany(c => c)], ground);
            if (rule?.As == SewAs.Satin)
                problems.Add(DrawingProblems.NotSatin(element.Place, name, widest));
        }
        return rule?.As == SewAs.Run
            ? Run(element, rule, name, [.. ground.Rings.Select(r => r.ToPolyline())])
            : Fill(element, rule, name, ground);
    }

    private IEnumerable<Shape> Lines(DrawnLine line, SewRule? rule)
    {
        var sewn =
            rule?.As
            ?? (
                line.Width < SewDefaults.NarrowestSatin ? SewAs.Run
                : line.Width <= WidestStrokeSatin ? SewAs.Satin
                : SewAs.Fill
            );
        var clip = line.Clip is { } ground ? new PathClipping(ground) : null;
        if (sewn == SewAs.Run)
        {
            ImmutableArray<Polyline> paths =
            [
                .. line.Paths.SelectMany(p => clip?.Inside(p) ?? [p]).Where(p => p.Length >= NarrowestGround),
            ];
            return paths.IsEmpty ? [] : [Run(line, rule, names.Next(line), paths)];
        }
        var covered = Polygons.Union(
            line.Paths.Select(p => Polygons.Stroke(p, line.Width, line.Cap, line.Join, line.MitreLimit))
        );
        if (line.Clip is { } visible)
            covered = Polygons.Intersect(covered, visible);
        if (!InscribedDisc.Fits(covered, NarrowestGround))
            return [];
        if (sewn == SewAs.Fill)
            return [Fill(line, rule, names.Next(line), covered)];
        ImmutableArray<Column> columns =
        [
            .. line
                .Paths.SelectMany(p => StrokeColumns.From(p, line.Width, line.Cap, line.Join, line.MitreLimit))
                .SelectMany(c => clip is null ? [c] : ColumnClipping.Keep(c, clip, inside: true)),
        ];
        return columns.IsEmpty ? [] : [Satin(line, rule, names.Next(line), columns, covered)];
    }

    private FillShape Fill(DrawnElement element, SewRule? rule, string name, Region ground) =>
        new()
        {
            Id = name,
            Place = element.Place,
            Thread = threads[element.Color],
            Style = SewDefaults.Fill(rule, ground) with { Guide = guides.For(rule, name, ground) },
            KeepWhole = rule?.KeepWhole ?? false,
            Footprint = ground,
        };

    private SatinShape Satin(
        DrawnElement element,
        SewRule? rule,
        string name,
        ImmutableArray<Column> columns,
        Region ground
    ) =>
        new()
        {
            Id = name,
            Place = element.Place,
            Thread = threads[element.Color],
            Style = SewDefaults.Satin(rule, columns),
            KeepWhole = rule?.KeepWhole ?? false,
            Columns = columns,
            Footprint = ground,
        };

    private RunShape Run(DrawnElement element, SewRule? rule, string name, ImmutableArray<Polyline> lines) =>
        new()
        {
            Id = name,
            Place = element.Place,
            Thread = threads[element.Color],
            Style = SewDefaults.Run(rule),
            KeepWhole = rule?.KeepWhole ?? false,
            Lines = lines,
            Footprint = Polygons.Union(
                lines.Select(l => Polygons.Stroke(l, SewDefaults.ThreadWidth, Cap.Round, Join.Round))
            ),
        };
}
