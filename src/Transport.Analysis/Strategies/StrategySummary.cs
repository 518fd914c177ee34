namespace Transport.Analysis;

/// <summary>What a strategy does for a population.</summary>
/// <param name="Strategy">Its name.</param>
/// <param name="ShareInRange">Share of patients whose ultrafiltration lies in the range, 0 to 1.</param>
/// <param name="ShareAboveRange">Share of patients who are dried out.</param>
/// <param name="UltrafiltrationMilliliters">24-h ultrafiltration, mL.</param>
/// <param name="UreaDose">Weekly Kt/V.</param>
/// <param name="SodiumRemovedMillimoles">Sodium removed, mmol.</param>
/// <param name="GlucoseAbsorbedGrams">Glucose absorbed, g.</param>
/// <param name="LossGrams">Loss, g.</param>
/// <param name="RegretGrams">Loss less that of what would have been best for each, g.</param>
/// <param name="AgainstFirst">Differences from the first strategy, within the patient; null for the first.</param>
public sealed record StrategySummary(
    string Strategy,
    double ShareInRange,
    double ShareAboveRange,
    MeanInterval UltrafiltrationMilliliters,
    MeanInterval UreaDose,
    MeanInterval SodiumRemovedMillimoles,
    MeanInterval GlucoseAbsorbedGrams,
    MeanInterval LossGrams,
    MeanInterval RegretGrams,
    StrategyDifference? AgainstFirst);
