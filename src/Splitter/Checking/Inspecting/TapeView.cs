namespace Splitter.Checking.Inspecting;

/// <summary>What a picture of a tape shows.</summary>
internal enum TapeView
{
    /// <summary>Thread as it lies on the cloth, lit from one side.</summary>
    Thread,

    /// <summary>Every needle hole, moves without sewing, and trims.</summary>
    Penetrations,

    /// <summary>Layers of thread on every square millimetre.</summary>
    Density,
}
