namespace Transport;

/// <summary>The choices inside an osmotic conductance from two tests.</summary>
public sealed record PairedTestOptions
{
    /// <summary>Logarithmic mean, 19.3 mmHg per mmol/L.</summary>
    public static PairedTestOptions Default { get; } = new();

    /// <summary>How glucose is averaged.</summary>
    public GlucoseMean GlucoseMean { get; init; } = GlucoseMean.Logarithmic;

    /// <summary>Osmotic pressure of 1 mmol/L at 37 °C; 19.3 mmHg by convention, 19.34 exactly.</summary>
    /// <exception cref="ArgumentOutOfRangeException">Zero or negative.</exception>
    public Pressure PressurePerMillimolePerLiter { get; init => field = Require.MoreThanZero(value, nameof(PressurePerMillimolePerLiter)); }
        = Pressure.FromMillimetersOfMercury(19.3);

    /// <summary>Choices of the single tests: assay errors, limits.</summary>
    public EquilibrationIndicesOptions Indices { get; init; } = EquilibrationIndicesOptions.Default;
}
