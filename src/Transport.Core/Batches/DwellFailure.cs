namespace Transport;

/// <summary>A dwell of a batch that could not be simulated. The others are not affected.</summary>
/// <param name="Index">Which dwell, counted from 0.</param>
/// <param name="Finding">What was wrong with it.</param>
public sealed record DwellFailure(int Index, Finding Finding)
{
    /// <summary>Code of the finding where the equations could not be integrated to the last sample.</summary>
    public const string NotIntegrated = "dwell-not-integrated";

    /// <summary>Code of the finding where plasma or fluid does not say what the panel needs, or the dwell ends before the last sample.</summary>
    public const string NotPossible = "dwell-not-possible";
}
