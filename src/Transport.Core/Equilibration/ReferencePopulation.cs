namespace Transport;

/// <summary>A published series of equilibration tests that a patient can be compared with.</summary>
/// <remarks>
/// D/P creatinine may be compared across glucose strengths (cross-over 2003: 0.67 and 0.66). D/D0 glucose, net ultrafiltration
/// and the sodium dip may not: they are comparable at the series' own strength, fill and handling of overfill only.
/// </remarks>
public sealed record ReferencePopulation
{
    /// <summary>What tables and charts call it.</summary>
    public required string Name { get; init; }

    /// <summary>Nominal anhydrous glucose of the test fluid, %; null where the source does not say.</summary>
    public required double? GlucosePercent { get; init; }

    /// <summary>Number of tests or patients; null where not known.</summary>
    public required int? Count { get; init; }

    /// <summary>Volume that truly entered, overfill included; null where the source does not say. Ultrafiltration is compared at this fill only.</summary>
    public Volume? Fill { get; init; }

    /// <summary>Whether overfill counts as ultrafiltration in this series.</summary>
    public bool IsOverfillCounted { get; init; }

    /// <summary>Whether it is of children, filled by body surface.</summary>
    public bool IsOfChildren { get; init; }

    /// <summary>4-h D/P creatinine.</summary>
    public required ReferenceDistribution DialysateToPlasmaCreatinine { get; init; }

    /// <summary>4-h D/D0 glucose; null where not known.</summary>
    public ReferenceDistribution? DialysateToInitialGlucose { get; init; }

    /// <summary>Net ultrafiltration in 4 h, mL; null where not known.</summary>
    public ReferenceDistribution? NetUltrafiltrationMilliliters { get; init; }

    /// <summary>Sodium dip in the first hour, mmol/L; null where not known. The two published series disagree (8.4 and 4.7).</summary>
    public ReferenceDistribution? SodiumDipMillimolesPerLiter { get; init; }

    /// <summary>How the figures are known.</summary>
    public required Evidence Evidence { get; init; }

    /// <summary>Where they come from.</summary>
    public required string Source { get; init; }

    /// <summary>Its folder under reference-data.</summary>
    public required string Folder { get; init; }

    /// <summary>Whether the series was tested with the strength of a solution, within 6 %; false where the source does not say.</summary>
    public bool IsOfStrength(DialysisSolution solution)
    {
        ArgumentNullException.ThrowIfNull(solution);
        return GlucosePercent is { } percent && solution.Agent == OsmoticAgent.Glucose
            && Math.Abs(solution.Glucose.GramsPerLiter(Solutes.Glucose) / 10 / percent - 1) < 0.06;
    }

    /// <summary>The name.</summary>
    public override string ToString() => Name;
}
