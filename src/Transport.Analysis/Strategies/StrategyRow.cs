namespace Transport.Analysis;

/// <summary>One virtual patient under one strategy, judged by the membrane that nobody saw. A row of the study's files.</summary>
public sealed record StrategyRow
{
    /// <summary>Number of the patient.</summary>
    public required int Patient { get; init; }

    /// <summary>The patient's seed.</summary>
    public required int Seed { get; init; }

    /// <summary>The class of the test's D/P of creatinine.</summary>
    public required TransportCategory Category { get; init; }

    /// <summary>True A0/Δx per 1.73 m², cm.</summary>
    public required double DiffusionAreaCentimeters { get; init; }

    /// <summary>The same as fitted, cm.</summary>
    public required double FittedDiffusionAreaCentimeters { get; init; }

    /// <summary>True osmotic conductance to glucose per 1.73 m², µL/min/mmHg.</summary>
    public required double OsmoticConductanceMicroliters { get; init; }

    /// <summary>The same as fitted, µL/min/mmHg.</summary>
    public required double FittedOsmoticConductanceMicroliters { get; init; }

    /// <summary>Name of the strategy.</summary>
    public required string Strategy { get; init; }

    /// <summary>The regimen it chose, in words.</summary>
    public required string Regimen { get; init; }

    /// <summary>24-h ultrafiltration, mL.</summary>
    public required double UltrafiltrationMilliliters { get; init; }

    /// <summary>Weekly Kt/V of urea, kidneys included.</summary>
    public required double UreaDose { get; init; }

    /// <summary>Weekly creatinine clearance, kidneys included, L per 1.73 m².</summary>
    public required double CreatinineClearanceLiters { get; init; }

    /// <summary>Sodium removed in 24 h, mmol, centred on published series.</summary>
    public required double SodiumRemovedMillimoles { get; init; }

    /// <summary>Glucose absorbed in 24 h, g.</summary>
    public required double GlucoseAbsorbedGrams { get; init; }

    /// <summary>Fluid infused in 24 h, L.</summary>
    public required double FluidUsedLiters { get; init; }

    /// <summary>Cycles of the night.</summary>
    public required int Cycles { get; init; }

    /// <summary>Loss, g.</summary>
    public required double LossGrams { get; init; }

    /// <summary>Loss of the regimen of the space that would have been best for the true membrane, g.</summary>
    public required double BestLossGrams { get; init; }

    /// <summary>What was lost by not knowing better, g; below zero only where a strategy chose outside of the space.</summary>
    public double RegretGrams => LossGrams - BestLossGrams;
}
