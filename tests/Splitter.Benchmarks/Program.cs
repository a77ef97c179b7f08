using Splitter.Benchmarks.Figures;
using Splitter.Benchmarks.StartUp;

return args switch
{
    ["figures", "--row", var name] => PlanFigures.PrintRow(name),
    ["figures", ..] => PlanFigures.Write(args[1..]),
    ["stitches", ..] => StitchFigures.Write(args[1..]),
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
        start-up           time splitter --version, compiled ahead of time, against a program that does nothing
        """
    );
    return 2;
}
