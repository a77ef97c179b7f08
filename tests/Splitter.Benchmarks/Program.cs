using Splitter.Benchmarks.Catalogue;
using Splitter.Benchmarks.Figures;
using Splitter.Benchmarks.Layers;
using Splitter.Benchmarks.Mutants;
using Splitter.Benchmarks.Speed;
using Splitter.Benchmarks.StartUp;

return args switch
{
    ["figures", "--row", var name] => PlanFigures.PrintRow(name),
    ["figures", ..] => PlanFigures.Write(args[1..]),
    ["layers", ..] => LayerCensus.Write(args[1..]),
    ["stitches", ..] => StitchFigures.Write(args[1..]),
    ["speed", "--row", var name, var jobs] => SpeedFigures.PrintRow(name, jobs, kinds: false),
    ["speed", "--row", var name, var jobs, "kinds"] => SpeedFigures.PrintRow(name, jobs, kinds: true),
    ["speed", ..] => SpeedFigures.Write(args[1..]),
    ["catalogue"] => CatalogueFigures.Write(),
    ["mutants", var group, var seed, var census] => MutantFigures.Draw(group, seed, census),
    ["mutants", var group, var seed, var census, var report] => MutantFigures.Count(group, seed, census, report),
    ["start-up"] => StartUpTimes.Write(),
    _ => Usage(),
};

static int Usage()
{
    Console.Error.WriteLine(
        """
        figures [NAME…]    plan the demo, the coastline and 20 open drawings; write the table of plans in DEVELOPERS.md, or
                           with names only print these
        stitches [NAME…]   sew the demo, the coastline and 30 open drawings, compare thread with artwork; write the table of
                           stitches in DEVELOPERS.md, or with names only print these
        layers [NAME…]     the same works: where more thread lies than cloth bears, by cause; write that table in
                           DEVELOPERS.md, or with names only print these
        speed [NAME…]      time every stage of generated works from a motif to a bedspread, and what they are compared with;
                           write the tables of speed in DEVELOPERS.md, or with names only print these; quick: all small ones
        catalogue          measure builds and makes, and simulate 10,000 recipes over 1 to 64 agents; write the table of the
                           catalogue in DEVELOPERS.md
        mutants GROUP SEED CENSUS [REPORT]
                           draw mutants of registration, planning or cutting from a report of the mutation tool and write its
                           settings; with a report of that run, count what became of them
        start-up           time splitter --version, compiled ahead of time, against a program that does nothing
        """
    );
    return 2;
}
