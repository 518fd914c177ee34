namespace Transport.Analysis;

/// <summary>One strategy less another, within the patient, so that what differs between people is not in the intervals.</summary>
/// <param name="Strategy">The one.</param>
/// <param name="Against">The other.</param>
/// <param name="UltrafiltrationMilliliters">24-h ultrafiltration, mL.</param>
/// <param name="UreaDose">Weekly Kt/V.</param>
/// <param name="SodiumRemovedMillimoles">Sodium removed, mmol.</param>
/// <param name="GlucoseAbsorbedGrams">Glucose absorbed, g.</param>
/// <param name="LossGrams">Loss, g.</param>
public sealed record StrategyDifference(
    string Strategy,
    string Against,
    MeanInterval UltrafiltrationMilliliters,
    MeanInterval UreaDose,
    MeanInterval SodiumRemovedMillimoles,
    MeanInterval GlucoseAbsorbedGrams,
    MeanInterval LossGrams);
