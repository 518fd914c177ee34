namespace Transport.Analysis;

/// <summary>How regimens are looked at: how they are simulated, and what their figures need besides.</summary>
public sealed record OutlookOptions
{
    /// <summary>How regimens are simulated. Solutes with a plasma level are added to its panel.</summary>
    public RegimenOptions Simulation { get; init; } = new() { Integration = new() { RelativeTolerance = 1e-5 } };

    /// <summary>The strength that the patient's test used; ultrafiltration of others holds the model's discrepancy. Null: there was no test.</summary>
    public DialysisSolution? Tested { get; init; }

    /// <summary>The largest fill that was tested in this patient; a regimen with a larger one says so. Null: not known.</summary>
    /// <exception cref="ArgumentOutOfRangeException">Zero or negative.</exception>
    public Volume? LargestTestedFill { get; init => field = value is { } fill ? Require.MoreThanZero(fill, nameof(LargestTestedFill)) : null; }

    /// <summary>The ultrafiltration that is wanted in 24 h, with its ceiling; null: none was given, and no regimen is judged by it, which findings say.</summary>
    public FluidTarget? Fluid { get; init; }

    /// <summary>Solutes whose plasma level is assumed, not measured: no level of them is given.</summary>
    public IReadOnlyList<Solute> NotMeasured { get; init; } = [];

    /// <summary>Whether the fit that the membranes come from may be believed; null: they come from no fit. Of one that asks to check the sheet no figure is laid beside a guideline.</summary>
    public FitStatus? Fit { get; init; }

    /// <summary>The defaults for a patient with this test: its strength, its fill, what of plasma was not measured, and whether its fit may be believed.</summary>
    /// <param name="test">The test.</param>
    /// <param name="fit">The membrane that was fitted to it; null: the membranes come from elsewhere.</param>
    public static OutlookOptions Of(EquilibrationTest test, FittedMembrane? fit = null)
    {
        ArgumentNullException.ThrowIfNull(test);
        return new()
        {
            Fit = fit?.Status,
            Tested = test.Solution,
            LargestTestedFill = test.InstilledVolume,
            NotMeasured = [.. test.PlasmaUrea is null ? [Solutes.Urea] : Array.Empty<Solute>(), .. test.CorrectedPlasmaCreatinine is null ? [Solutes.Creatinine] : Array.Empty<Solute>()],
        };
    }

    /// <summary>Which doubt ultrafiltration holds. Sodium always holds that of its calibration.</summary>
    public DoubtLayers Layers { get; init; } = DoubtLayers.Default;

    /// <summary>Clock times of blood samples for which plasma levels are given, where the simulation has a body (<see cref="RegimenOptions.Body"/>).</summary>
    /// <value>8, 14 and 20 o'clock (choice): after the night, about where the level of a cycler crosses its mean, before the next night.</value>
    public IReadOnlyList<TimeOnly> SampleTimes { get; init; } = [new(8, 0), new(14, 0), new(20, 0)];

    /// <summary>How many members of the ensemble are used at most.</summary>
    /// <exception cref="ArgumentOutOfRangeException">Less than 1.</exception>
    public int EnsembleMembers
    {
        get;
        init => field = value >= 1 ? value : throw new ArgumentOutOfRangeException(nameof(EnsembleMembers), value, "Expected 1 or more.");
    }
    = 200;

    /// <summary>By which formula body water is taken; null: by that of the patient's age (<see cref="Patient.BodyWaterFormula"/>).</summary>
    public BodyWaterFormula? BodyWater { get; init; }

    /// <summary>Pressure against volume; null: a population's, with its spread.</summary>
    public CavityPressure? Pressure { get; init; }

    /// <summary>Plasma albumin, g/L; null: not measured, and protein loss is not given.</summary>
    /// <exception cref="ArgumentOutOfRangeException">Not between 5 and 70 g/L.</exception>
    public double? PlasmaAlbuminGramsPerLiter
    {
        get;
        init => field = value is { } level ? Require.InRange(level, 5, 70, "g/L", nameof(PlasmaAlbuminGramsPerLiter)) : null;
    }

    /// <summary>Plasma total protein, g/L; null: not measured, and total protein loss is not given.</summary>
    /// <exception cref="ArgumentOutOfRangeException">Not between 20 and 120 g/L.</exception>
    public double? PlasmaProteinGramsPerLiter
    {
        get;
        init => field = value is { } level ? Require.InRange(level, 20, 120, "g/L", nameof(PlasmaProteinGramsPerLiter)) : null;
    }

    /// <summary>Free amino acids in plasma, g/L; null: not measured, and their loss is not given.</summary>
    /// <exception cref="ArgumentOutOfRangeException">Not between 0 and 5 g/L.</exception>
    public double? PlasmaAminoAcidsGramsPerLiter
    {
        get;
        init => field = value is { } level ? Require.InRange(level, 0, 5, "g/L", nameof(PlasmaAminoAcidsGramsPerLiter)) : null;
    }

    /// <summary>Energy that counts as the day's need, kcal per kg; null: of an adult 30, the middle of the usual 25 to 35 (memory), of a child none is known here and no share is given.</summary>
    /// <exception cref="ArgumentOutOfRangeException">Not between 10 and 100 kcal/kg.</exception>
    public double? EnergyNeedKilocaloriesPerKilogram
    {
        get;
        init => field = value is { } need ? Require.InRange(need, 10, 100, "kcal/kg", nameof(EnergyNeedKilocaloriesPerKilogram)) : null;
    }

    /// <summary>Volumes that bags have.</summary>
    public IReadOnlyList<Volume> BagVolumes { get; init; } = FluidBag.UsualVolumes;

    /// <summary>How many runs at a time; the result does not depend on it.</summary>
    public int Workers { get; init; } = Environment.ProcessorCount;

    /// <summary>The defaults.</summary>
    public static OutlookOptions Default { get; } = new();

    internal CavityPressure PressureInUse => Pressure ?? Simulation.Pressure ?? CavityPressure.Population;

    internal bool IsPressureMeasured => Pressure is not null || Simulation.Pressure is not null;

    internal double? EnergyNeedOf(Patient patient) => EnergyNeedKilocaloriesPerKilogram ?? (TargetAssessment.IsChild(patient) ? null : 30);

    internal double BodyWaterLitersOf(Patient patient) => BodySize.Water(BodyWater ?? patient.BodyWaterFormula, patient).Liters;

    /// <summary>The simulation with every solute of which the plasma says enough.</summary>
    internal RegimenOptions SimulationFor(Patient patient)
    {
        Solute[] known = [Solutes.Beta2Microglobulin, Solutes.Albumin, Solutes.ImmunoglobulinG, .. new[] { Solutes.Potassium, Solutes.Phosphate }.Where(patient.Plasma.Others.ContainsKey)];
        var own = Simulation.Panel.Solutes.Except(SolutePanel.Small.Solutes);
        return Simulation with { Panel = SolutePanel.Of(own.Union(known)), Pressure = PressureInUse };
    }
}
