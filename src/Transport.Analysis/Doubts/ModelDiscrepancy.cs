namespace Transport.Analysis;

/// <summary>How far a model misses ultrafiltration under one condition: true = gain × model + offset, with a deviation, for 4 h and 2 L.</summary>
/// <param name="Gain">Factor on the model's net ultrafiltration.</param>
/// <param name="Offset">What to add at 4 h.</param>
/// <param name="Deviation">Standard deviation at 4 h.</param>
public sealed record ModelDiscrepancy(double Gain, Volume Offset, Volume Deviation)
{
    private static readonly TimeSpan Usual = TimeSpan.FromHours(4);

    /// <summary>None: the fit has met it.</summary>
    public static ModelDiscrepancy None { get; } = new(1, default, default);

    /// <summary>Until when offset and deviation grow in proportion to the dwell; from there on they stay (choice).</summary>
    /// <value>4 h, which glucose's series lasted; 16 h with icodextrin, whose volume rises as long.</value>
    public TimeSpan GrowsUntil { get; init; } = Usual;

    /// <summary>Offset and deviation after a dwell, over those at 4 h.</summary>
    public double GrowthAt(TimeSpan dwell) => Math.Min(dwell / Usual, GrowsUntil / Usual);

    /// <summary>What to add to an exchange's ultrafiltration by the model, mL.</summary>
    internal double ShiftOf(double ultrafiltration, TimeSpan dwell) => GainedOf(ultrafiltration) + OffsetAt(dwell);

    /// <summary>The part of it in proportion to the ultrafiltration, mL.</summary>
    internal double GainedOf(double ultrafiltration) => (Gain - 1) * ultrafiltration;

    /// <summary>The rest, mL.</summary>
    internal double OffsetAt(TimeSpan dwell) => GrowthAt(dwell) * Offset.Milliliters;

    /// <summary>How sure that is, mL.</summary>
    internal double DeviationAt(TimeSpan dwell) => GrowthAt(dwell) * Deviation.Milliliters;
}
