using Splitter.Benchmarks.Figures;

return args switch
{
    ["figures"] => PlanFigures.Write(),
    ["figures", "--row", var name] => PlanFigures.PrintRow(name),
    _ => Usage(),
};

static int Usage()
{
    Console.Error.WriteLine(
        "figures    plan the demo, the coastline and 20 open drawings; write the table in DEVELOPERS.md"
    );
    return 2;
}
