namespace Splitter.Correcting;

/// <summary>What measured offsets say of a hooping.</summary>
internal enum Verdict
{
    /// <summary>It lies as well as can be measured.</summary>
    Fits,

    /// <summary>It lies beside its place.</summary>
    Moved,

    /// <summary>It is turned, too.</summary>
    Turned,

    /// <summary>
    /// The cloth has given more than it is expected to; places of it have other distances than they should.
    /// </summary>
    Stretched,

    /// <summary>No move and no stretch of the cloth explains the figures.</summary>
    Contradictory,
}
