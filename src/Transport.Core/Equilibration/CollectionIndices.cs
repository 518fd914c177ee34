namespace Transport;

/// <summary>What a collection of a day measures: dose, residual function, protein catabolism, fluid, sodium and glucose balance, protein loss.</summary>
public sealed record CollectionIndices
{
    /// <summary>The collection.</summary>
    public required CollectedDay Collection { get; init; }

    /// <summary>The choices made.</summary>
    public required EquilibrationIndicesOptions Options { get; init; }

    /// <summary>Weekly Kt/V urea by the drains, by the kidneys, of both.</summary>
    public (IndexValue? Peritoneal, IndexValue? Renal, IndexValue? Total) WeeklyUreaDose { get; init; }

    /// <summary>Weekly creatinine clearance by the drains, by the kidneys (mean of urea and creatinine clearance), of both; L/week per 1.73 m².</summary>
    public (IndexValue? Peritoneal, IndexValue? Renal, IndexValue? Total) WeeklyCreatinineClearance { get; init; }

    /// <summary>Renal urea clearance, mL/min.</summary>
    public IndexValue? RenalUreaClearance { get; init; }

    /// <summary>Renal creatinine clearance, mL/min.</summary>
    public IndexValue? RenalCreatinineClearance { get; init; }

    /// <summary>Residual filtration: the mean of the two, mL/min.</summary>
    public IndexValue? ResidualFiltration { get; init; }

    /// <summary>Urea nitrogen in drains and urine, g/day.</summary>
    public IndexValue? UreaNitrogenAppearance { get; init; }

    /// <summary>Protein catabolic rate, g/day, by Bergström's formula.</summary>
    public IndexValue? ProteinCatabolicRate { get; init; }

    /// <summary>The same by Randerson's, g/day.</summary>
    public IndexValue? ProteinCatabolicRateByRanderson { get; init; }

    /// <summary>Protein catabolic rate over body water / 0.58, g/kg/day.</summary>
    public IndexValue? NormalizedProteinCatabolicRate { get; init; }

    /// <summary>Net ultrafiltration of the day, mL.</summary>
    public IndexValue? NetUltrafiltration { get; init; }

    /// <summary>Sodium removed by drains, by urine, and both, mmol/day.</summary>
    public (IndexValue? Peritoneal, IndexValue? Renal, IndexValue? Total) SodiumRemoved { get; init; }

    /// <summary>Glucose absorbed, mmol/day.</summary>
    public IndexValue? GlucoseAbsorbed { get; init; }

    /// <summary>Glucose absorbed, g/day.</summary>
    public IndexValue? GlucoseAbsorbedMass { get; init; }

    /// <summary>Total protein in the drains, g/day.</summary>
    public IndexValue? ProteinLoss { get; init; }

    /// <summary>Peritoneal clearance of total protein, mL/day.</summary>
    public IndexValue? ProteinClearance { get; init; }

    /// <summary>Creatinine in drains and urine, mg/kg/day: a check of completeness.</summary>
    public IndexValue? CreatinineOutput { get; init; }

    /// <summary>What could not be computed, and why.</summary>
    public required IReadOnlyList<MissingIndex> NotAvailable { get; init; }

    /// <summary>What to read with care.</summary>
    public IReadOnlyList<Finding> Findings { get; init; } = [];

    /// <summary>What the kidneys do, for a patient; null where urine was not measured.</summary>
    public ResidualFunction? Residual => RenalUreaClearance is { Value: >= 0 } urea && RenalCreatinineClearance is { Value: >= 0 } creatinine && Collection.Urine is { } urine
        ? new(Clearance.FromMillilitersPerMinute(urea.Value), Clearance.FromMillilitersPerMinute(creatinine.Value), urine.Volume * (24 / Collection.Duration.TotalHours))
        : null;

    /// <summary>Every index that is there, in the order of a report.</summary>
    public IReadOnlyList<IndexValue> All =>
    [
        .. new[]
        {
            WeeklyUreaDose.Peritoneal, WeeklyUreaDose.Renal, WeeklyUreaDose.Total,
            WeeklyCreatinineClearance.Peritoneal, WeeklyCreatinineClearance.Renal, WeeklyCreatinineClearance.Total,
            RenalUreaClearance, RenalCreatinineClearance, ResidualFiltration,
            NetUltrafiltration, SodiumRemoved.Peritoneal, SodiumRemoved.Renal, SodiumRemoved.Total, GlucoseAbsorbed, GlucoseAbsorbedMass,
            UreaNitrogenAppearance, ProteinCatabolicRate, ProteinCatabolicRateByRanderson, NormalizedProteinCatabolicRate,
            ProteinLoss, ProteinClearance, CreatinineOutput,
        }.OfType<IndexValue>(),
    ];

    /// <summary>The indices of a collection, with the choices as they ship.</summary>
    public static CollectionIndices Of(CollectedDay collection) => Of(collection, EquilibrationIndicesOptions.Default);

    /// <summary>The indices of a collection.</summary>
    /// <param name="collection">The collection.</param>
    /// <param name="options">Assay errors and limits.</param>
    public static CollectionIndices Of(CollectedDay collection, EquilibrationIndicesOptions options)
    {
        ArgumentNullException.ThrowIfNull(collection);
        ArgumentNullException.ThrowIfNull(options);
        var indices = new CollectionArithmetic(collection, options).Compute();
        return indices with { Findings = CollectionFindings.Of(indices, options.Thresholds) };
    }
}
