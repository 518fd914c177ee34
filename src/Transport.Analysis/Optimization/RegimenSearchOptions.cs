namespace Transport.Analysis;

/// <summary>How a search goes about it.</summary>
public sealed record RegimenSearchOptions
{
    /// <summary>How regimens are simulated; within the search 1e-5 is careful enough (0.01 mL a day).</summary>
    public RegimenOptions Simulation { get; init; } = new() { Integration = new() { RelativeTolerance = 1e-5 } };

    /// <summary>The same without a timeline.</summary>
    internal RegimenOptions Plain => Simulation with { Timeline = null };

    /// <summary>How exchanges that regimens share are simulated: at 1e-4 a day's ultrafiltration is within 1 mL and 0.1 % (measured). With a body, maps do not hold.</summary>
    internal RegimenOptions Screening => Plain with { Integration = new() { RelativeTolerance = Math.Max(1e-4, Simulation.Integration.RelativeTolerance) } };

    /// <summary>The strength that the patient's test used; the ultrafiltration of others holds the model's discrepancy. Null: there was no test.</summary>
    public DialysisSolution? Tested { get; init; }

    /// <summary>The largest fill that was tested in this patient; an option with a larger one says so. Null: not known.</summary>
    /// <exception cref="ArgumentOutOfRangeException">Zero or negative.</exception>
    public Volume? LargestTestedFill { get; init => field = value is { } fill ? Require.MoreThanZero(fill, nameof(LargestTestedFill)) : null; }

    /// <summary>The defaults for a patient with this test: its strength and its fill.</summary>
    public static RegimenSearchOptions Of(EquilibrationTest test)
    {
        ArgumentNullException.ThrowIfNull(test);
        return new() { Tested = test.Solution, LargestTestedFill = test.InstilledVolume };
    }

    /// <summary>Which doubt the mean ultrafiltration holds; that of a single day always holds how nights differ besides. Sodium holds that of its calibration.</summary>
    public DoubtLayers Layers { get; init; } = DoubtLayers.Default;

    /// <summary>How many members of the ensemble the options are run over.</summary>
    /// <exception cref="ArgumentOutOfRangeException">Less than 1.</exception>
    public int EnsembleMembers
    {
        get;
        init => field = value >= 1 ? value : throw new ArgumentOutOfRangeException(nameof(EnsembleMembers), value, "Expected 1 or more.");
    }
    = 200;

    /// <summary>How many options are shown at most.</summary>
    /// <exception cref="ArgumentOutOfRangeException">Less than 1.</exception>
    public int MostOptions
    {
        get;
        init => field = value >= 1 ? value : throw new ArgumentOutOfRangeException(nameof(MostOptions), value, "Expected 1 or more.");
    }
    = 12;

    /// <summary>How many runs at a time; the result does not depend on it.</summary>
    public int Workers { get; init; } = Environment.ProcessorCount;

    /// <summary>The defaults.</summary>
    public static RegimenSearchOptions Default { get; } = new();
}
