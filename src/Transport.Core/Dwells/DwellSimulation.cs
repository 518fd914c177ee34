namespace Transport;

/// <summary>Simulates one dwell.</summary>
public static class DwellSimulation
{
    /// <summary>Volume, solutes and pore flows of a dwell against time. Plasma stays constant.</summary>
    /// <param name="patient">Whose plasma it is.</param>
    /// <param name="membrane">The membrane, at the patient's size.</param>
    /// <param name="dwell">What goes in, and for how long.</param>
    /// <param name="options">Which solutes, how carefully.</param>
    /// <exception cref="IntegrationException">The dwell could not be integrated to its end; nothing partial is returned.</exception>
    public static DwellCourse Run(Patient patient, ThreePoreMembrane membrane, Dwell dwell, DwellOptions? options = null)
    {
        ArgumentNullException.ThrowIfNull(patient);
        ArgumentNullException.ThrowIfNull(membrane);
        ArgumentNullException.ThrowIfNull(dwell);
        options ??= DwellOptions.Default;
        var panel = options.Panel.With(dwell.Solution.Polymer);
        var plasma = CavityContents.Of(patient.Plasma, panel);
        var system = new ThreePoreSystem<Real>(membrane, FreeParameters<Real>.From(membrane), panel, plasma)
        {
            PolymerScission = options.PolymerScissionPerHour / 60,
        };
        CavityContents.Of(dwell.Solution, panel).CopyTo(system.Fresh);
        var state = new Real[system.Dimension];
        DwellStart.Write<Real>(state, dwell.Fill.Milliliters, CavityContents.Of(dwell.Solution, panel), Real.Of(dwell.Residual.Volume.Milliliters), CavityContents.Of(dwell.Residual, panel));

        var recorder = new StepRecorder(system.Dimension);
        var integrator = new DormandPrince853<Real, ThreePoreSystem<Real>>(system);
        integrator.Run(0, dwell.Duration.TotalMinutes, state, options.Integration, ref recorder);
        return new(patient, membrane, dwell, panel, plasma, recorder.ToTrajectory());
    }
}
