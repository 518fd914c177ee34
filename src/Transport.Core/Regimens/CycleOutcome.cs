namespace Transport;

/// <summary>One cycle of the night, as it ran.</summary>
/// <param name="Filled">Volume instilled.</param>
/// <param name="Drained">Volume drained.</param>
/// <param name="FillStart">Start of the fill, from the start of the night.</param>
/// <param name="PlannedDwellTime">The dwell time that the plan gives it in this patient.</param>
/// <param name="DwellTime">From the end of the fill to the start of the drain; what an earlier drain took longer is missing.</param>
/// <param name="DrainTime">How long the drain took.</param>
/// <param name="Carried">What was in the cavity before the fill.</param>
/// <param name="LeftBehind">Volume in the cavity after the drain.</param>
public sealed record CycleOutcome(
    Volume Filled,
    Volume Drained,
    TimeSpan FillStart,
    TimeSpan PlannedDwellTime,
    TimeSpan DwellTime,
    TimeSpan DrainTime,
    ResidualFluid Carried,
    Volume LeftBehind)
{
    /// <summary>Drained minus filled. It holds what was carried in and left behind; over a night that cancels.</summary>
    public Volume Ultrafiltration => Drained - Filled;
}
