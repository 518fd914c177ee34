namespace Transport.Analysis;

/// <summary>One laboratory value of a sheet, as written and as understood.</summary>
/// <param name="Row">Row in the file, counted from 1.</param>
/// <param name="Fluid">What was sampled.</param>
/// <param name="Analyte">What was measured in it.</param>
/// <param name="Text">The value as written.</param>
/// <param name="UnitText">The unit as written; empty where none was.</param>
/// <param name="Remark">The remark; empty where none was.</param>
public sealed record SheetMeasurement(int Row, SampledFluid Fluid, Analyte Analyte, string Text, string UnitText, string Remark)
{
    /// <summary>Which drain of a collection; empty for everything else.</summary>
    public string Bag { get; init; } = "";

    /// <summary>Dwell time since the end of instillation; null where not written or not understood.</summary>
    public TimeSpan? Time { get; init; }

    /// <summary>The laboratory's unit in the usual spelling, such as "µmol/L"; null where it was not understood.</summary>
    public string? Unit { get; init; }

    /// <summary>The value (urea nitrogen as urea); null where it was not understood or cannot be.</summary>
    public Concentration? Value { get; init; }

    /// <summary>The value of a protein or a marker; null for other analytes, and where it was not understood.</summary>
    public MassConcentration? Mass { get; init; }

    /// <summary>Whether the value was understood.</summary>
    public bool IsUnderstood => Value is not null || Mass is not null;
}
