namespace Transport;

/// <summary>What an exchange finds in the cavity: the map of an exchange is made around one of these.</summary>
internal enum CycleStart
{
    /// <summary>What a complete drain leaves.</summary>
    Residual,

    /// <summary>Half of that: fluid of the day that was taken up and no longer drained.</summary>
    HalfResidual,

    /// <summary>Next to nothing: the cavity was dry.</summary>
    Nothing,
}
