namespace Transport;

/// <summary>A dwell of a batch that could not be simulated. The others are not affected.</summary>
/// <param name="Index">Which dwell, counted from 0.</param>
/// <param name="Finding">What was wrong with it.</param>
public sealed record DwellFailure(int Index, Finding Finding);
