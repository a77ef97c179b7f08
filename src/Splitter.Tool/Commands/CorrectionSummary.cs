using System.Collections.Immutable;
using Splitter.Correcting;
using Splitter.Geometry;
using static System.FormattableString;

namespace Splitter.Tool.Commands;

/// <summary>What <c>realign</c> answers; lengths in millimetres.</summary>
internal sealed record CorrectionSummary(
    string Recipe,
    string Hoop,
    string Part,
    string Verdict,
    CorrectionSummary.MoveSummary Move,
    decimal ResidualMm,
    ImmutableArray<CorrectionSummary.LeftSummary> Left,
    ImmutableArray<CorrectionSummary.JoinSummary> Joins,
    string? Folder,
    ImmutableArray<string> Files
)
{
    internal static CorrectionSummary Of(string recipe, string output, Realigned made)
    {
        var correction = made.Correction;
        var move = correction.Move;
        var written = move.Verdict != Correcting.Verdict.Fits;
        return new(
            recipe,
            correction.Plan.Hoop.Name,
            correction.Part.Letter,
            Outputs.Words.Of(move.Verdict),
            new(
                Millimetres(move.Right),
                Millimetres(move.Up),
                Rounded(move.Degrees),
                Rounded(move.Warp * 100),
                Rounded(move.Weft * 100)
            ),
            Rounded(move.Residual / Units.Millimetre),
            [.. correction.Left.Select(l => new LeftSummary(l.At, Rounded(l.Off / Units.Millimetre)))],
            [.. correction.Joins.Select(join => JoinSummary.Of(correction, join))],
            written ? $"{output}/{FolderOf(made)}" : null,
            written ? [.. made.Files.Select(f => Path.GetFileName(f.Path))] : []
        )
        {
            HasSewnCrosses = correction.HasSewnCrosses,
        };
    }

    /// <summary>Beside the folder of the hoop.</summary>
    internal static string FolderOf(Realigned made) => Path.GetDirectoryName(made.Files[0].Path)!;

    internal string ToText() =>
        Verdict == "fits"
            ? Invariant($"Part {Part} lies as well as can be measured: sew on with it as it is. Nothing is written.\n")
            : $"Part {Part} {Told()}.\n{Moves()}\nOff by then, in mm, if all was read right: "
                + string.Join(", ", Left.Select(l => Invariant($"{l.At} {l.OffMm:0.00}")))
                + Invariant($"; on average {ResidualMm:0.00}.\n\n{Table()}\n{Folder}/\n")
                + $"{(HasSewnCrosses ? "Unpick the crosses, load" : "Load")} the tape in it, and go on by its page. "
                + "The tape first sews crosses\nwhere you measured: sew on only if they meet what is there.\n";

    private string Told() =>
        Verdict switch
        {
            "moved" => "lies beside its place",
            "turned" => "lies beside its place and is turned",
            _ => $"lies on cloth that has {MoveWords.Given(Warp, Weft)}: it becomes {MoveWords.Shares(Warp, Weft)}",
        };

    /// <summary>Where the middle goes, if other places go otherwise.</summary>
    private string Moves()
    {
        var way = MoveWords.Of((int)(Move.RightMm * Units.Millimetre), (int)(Move.UpMm * Units.Millimetre));
        var turn = Math.Round(Math.Abs(Move.ClockwiseDeg), 2);
        return turn == 0 && Verdict == "moved"
            ? $"It goes {way}, as the hoop lies before you."
            : $"In the middle of the hoop it goes {way}, and it turns "
                + Invariant($"{turn:0.00} degrees {(Move.ClockwiseDeg < 0 ? "anticlockwise" : "clockwise")},\n")
                + "as the hoop lies before you.";
    }

    private string Table()
    {
        if (Joins.IsEmpty)
            return "No seam joins it to another part.\n";
        var joins = new TextTable("join", "planned", "now", "covers", "");
        foreach (var join in Joins)
            joins.Add(
                string.Join('-', join.Between),
                Invariant($"{join.PlannedMm:0.00}"),
                Invariant($"{join.NowMm:0.00}"),
                Invariant($"{join.CoversMm:0.00}"),
                join.NowMm > join.CoversMm ? "not covered" : ""
            );
        return $"{joins}\n19 times in 20 two parts miss each other by less, in mm.\n";
    }

    private bool HasSewnCrosses { get; init; }

    private double Warp => (double)Move.LongerAlongWarpPercent / 100;

    private double Weft => (double)Move.LongerAlongWeftPercent / 100;

    private static decimal Millimetres(int micrometres) => (decimal)micrometres / Units.Millimetre;

    private static decimal Rounded(double value) => Math.Round((decimal)value, 3, MidpointRounding.AwayFromZero);

    /// <summary>How a part moves, as the hoop lies before the person.</summary>
    internal sealed record MoveSummary(
        decimal RightMm,
        decimal UpMm,
        decimal ClockwiseDeg,
        decimal LongerAlongWarpPercent,
        decimal LongerAlongWeftPercent
    );

    /// <summary>How far off a measured place will still be.</summary>
    internal sealed record LeftSummary(string At, decimal OffMm);

    /// <summary>By how much two parts may miss each other, 19 times in 20.</summary>
    internal sealed record JoinSummary(string[] Between, decimal PlannedMm, decimal NowMm, decimal CoversMm)
    {
        internal static JoinSummary Of(Correction correction, JoinChange join) =>
            new(
                [
                    correction.Plan.Hoopings[join.Before.Earlier].Letter,
                    correction.Plan.Hoopings[join.Before.Later].Letter,
                ],
                Millimetres(join.Before.Within95),
                Millimetres(join.After.Within95),
                Millimetres(join.After.Covers)
            );
    }
}
