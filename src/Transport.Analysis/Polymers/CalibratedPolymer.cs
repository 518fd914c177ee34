namespace Transport.Analysis;

/// <summary>A membrane that returns two published volumes of a glucose polymer's dwell, and how sure its two numbers are.</summary>
public sealed record CalibratedPolymer
{
    /// <summary>Whose plasma.</summary>
    public required Patient Patient { get; init; }

    /// <summary>The dwell, as long as the later of the two.</summary>
    public required Dwell Dwell { get; init; }

    /// <summary>The earlier volume.</summary>
    public required VolumeTarget Early { get; init; }

    /// <summary>The later volume.</summary>
    public required VolumeTarget Late { get; init; }

    /// <summary>The membrane, with both numbers in it.</summary>
    public required ThreePoreMembrane Membrane { get; init; }

    /// <summary>Standard error of <see cref="ThreePoreMembrane.PolymerOsmoticEfficiency"/>, from those of the two means; the model's own is not in it.</summary>
    public required double EfficiencyError { get; init; }

    /// <summary>Standard error of <see cref="ThreePoreMembrane.PolymerTissueUptake"/>, likewise.</summary>
    public required Clearance UptakeError { get; init; }

    /// <summary>Between the two errors.</summary>
    public required double Correlation { get; init; }

    /// <summary>The dwell in the calibrated membrane.</summary>
    public DwellCourse Course => DwellSimulation.Run(Patient, Membrane, Dwell);

    /// <summary>The same in a regular user, whose plasma holds polymer.</summary>
    public DwellCourse CourseOfRegularUser => DwellSimulation.Run(
        Patient with
        {
            Plasma = Patient.Plasma with { Others = Patient.Plasma.Others.SetItems(Dwell.Solution.Polymer!.InPlasmaOfRegularUser()) },
        },
        Membrane,
        Dwell);

    /// <summary>The same by hindrance theory alone: the whole difference draws, and the tissue takes up nothing.</summary>
    public DwellCourse CourseWithoutCalibration =>
        DwellSimulation.Run(Patient, Membrane with { PolymerOsmoticEfficiency = 1, PolymerTissueUptake = default }, Dwell);
}
