using System.Collections.Immutable;
using Splitter.Geometry;
using Splitter.Planning;
using Splitter.Planning.Seams;
using Splitter.Texts;

namespace Splitter.Outputs.Pictures;

/// <summary>What the signs of an overview mean.</summary>
internal sealed class OverviewKey : IPanel
{
    /// <summary>Width of the column of signs, in heights of a letter.</summary>
    private const int SignWidth = 5;

    private static readonly Colour Thread = Colour.Of("#7f8fa0");

    private readonly Canvas canvas;
    private readonly int letters;
    private readonly ImmutableArray<(string Text, Action<int, int> Draw)> signs;

    internal OverviewKey(Canvas canvas, Phrasebook say, int letters, ShownGround ground)
    {
        (this.canvas, this.letters) = (canvas, letters);
        var (plan, seams) = (ground.Plan, ground.Seams.Select(s => s.Ground).Distinct().Order());
        var found = ImmutableArray.CreateBuilder<(string, Action<int, int>)>();
        found.AddRange(
            seams.Select(ground => (SeamInk.Says(say, ground), (Action<int, int>)((x, y) => Seam(ground, x, y))))
        );
        var crowded = FieldSigns.AreCrowded(plan, letters);
        if (ErrorTag.Shown(plan, crowded).FirstOrDefault() is { } join)
            found.Add((ErrorText(say, plan, join), Error));
        if (crowded)
            found.Add((say.Say("overview.key.elsewhere"), (_, _) => { }));
        if (!plan.Corners.IsEmpty && !crowded)
            found.Add((say.Say("overview.key.corner"), Corner));
        if (!crowded && plan.Hoopings.Any(h => !h.Alignments.IsEmpty))
            found.Add((say.Say("overview.key.alignment"), Alignment));
        if (!crowded && !ground.Dense.IsEmpty)
            found.Add((say.Say("overview.key.dense"), Dense));
        if (!plan.PlacementLines.IsEmpty)
            found.Add((say.Say("overview.key.fold"), Fold));
        signs = found.ToImmutable();
    }

    private static string ErrorText(Phrasebook say, Plan plan, PartJoin join)
    {
        var (earlier, later) = (plan.Hoopings[join.Earlier].Letter, plan.Hoopings[join.Later].Letter);
        return say.Say(
            "overview.key.misfit",
            ("tag", $"{earlier}-{later} {say.Numbers.Misfit(join.Within95)}"),
            ("earlier", earlier),
            ("later", later),
            ("unit", say.Numbers.Unit)
        );
    }

    private int Row => letters * 18 / 10;

    public int Width =>
        (SignWidth * letters) + signs.Select(s => StrokeFont.WidthOf(s.Text, letters)).DefaultIfEmpty(0).Max();

    public int Height => signs.Length * Row;

    public void Draw(Point at)
    {
        var y = at.Y;
        foreach (var (text, draw) in signs)
        {
            y += Row;
            draw(at.X, y - (letters / 2));
            canvas.Text(text, new(at.X + (SignWidth * letters), y), letters, Colour.Ink);
        }
    }

    private void Seam(SeamGround ground, int x, int middle)
    {
        // What is pale is seen on thread only.
        if (ground == SeamGround.Whole)
            canvas.Area(
                new Box(x, middle - (letters * 6 / 10), x + (4 * letters), middle + (letters * 6 / 10)),
                Thread
            );
        SeamInk.Draw(canvas, ground, letters, [new(x, middle), new(x + (4 * letters), middle)]);
    }

    private void Error(int x, int middle)
    {
        canvas.Disc(new(x + (2 * letters), middle), letters * 3 / 10, Colour.Ink);
        canvas.Line(
            letters / 6,
            Colour.Ink,
            100,
            new(x + (2 * letters), middle),
            new(x + (3 * letters), middle - (letters / 2))
        );
    }

    private void Corner(int x, int middle) =>
        canvas.Line(
            letters / 4,
            MarkInk.Corner,
            100,
            new(x + (3 * letters), middle + (letters / 2)),
            new(x + letters, middle + (letters / 2)),
            new(x + letters, middle - (letters / 2))
        );

    private void Alignment(int x, int middle) => AlignmentSign.Draw(canvas, new(x + (2 * letters), middle), letters);

    private void Dense(int x, int middle) => DenseSign.Draw(canvas, new(x + (2 * letters), middle), letters);

    private void Fold(int x, int middle) =>
        canvas.Dashes(letters / 8, letters / 2, MarkInk.Placement, new(x, middle), new(x + (4 * letters), middle));
}
