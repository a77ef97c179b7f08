using Splitter.Recipes.Language;

namespace Splitter.Recipes.Keys;

/// <summary>The keys of <c>machine</c>.</summary>
internal static class MachineKeys
{
    internal static readonly Key<int> Speed = new("speed", new CountKind(50, 5000))
    {
        Says = "Stitches a minute.",
        Example = "700",
        Default = "700",
    };

    internal static readonly Key<int> Stop = new("stop", new TimeKind("0 s", "60 min"))
    {
        Says = "Time lost at a stop, with a change of thread.",
        Example = "90 s",
        Default = "90 s",
    };

    internal static readonly Key<int> Trim = new("trim", new TimeKind("0 s", "10 min"))
    {
        Says = "Time lost at a trim.",
        Example = "7 s",
        Default = "7 s",
    };

    internal static readonly Key<int> Hooping = new("hooping", new TimeKind("0 s", "240 min"))
    {
        Says = "Time for one hooping: stabilizer into the hoop, tacks, cloth set and smoothed down.",
        Example = "15 min",
        Default = "15 min",
    };

    internal static readonly GroupKind<Machine> Group = new(
        [Speed, Stop, Trim, Hooping],
        group =>
            new()
            {
                Speed = group.Get(Speed),
                Stop = group.Get(Stop),
                Trim = group.Get(Trim),
                Hooping = group.Get(Hooping),
            }
    );
}
