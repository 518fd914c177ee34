namespace Transport;

/// <summary>Simulates one dwell with the classical membrane.</summary>
public static class LumpedDwellSimulation
{
    /// <summary>Volume and solutes of a dwell against time. Plasma stays constant, and is taken as measured.</summary>
    /// <param name="patient">Whose plasma it is.</param>
    /// <param name="membrane">The membrane, at the patient's size.</param>
    /// <param name="dwell">What goes in, and for how long.</param>
    /// <param name="options">Which solutes, how carefully.</param>
    /// <exception cref="ArgumentException">The membrane or the plasma does not state a solute of the panel, or the solution holds a polymer.</exception>
    /// <exception cref="IntegrationException">The dwell could not be integrated to its end; nothing partial is returned.</exception>
    public static LumpedDwellCourse Run(Patient patient, LumpedMembrane membrane, Dwell dwell, DwellOptions? options = null)
    {
        ArgumentNullException.ThrowIfNull(patient);
        ArgumentNullException.ThrowIfNull(membrane);
        ArgumentNullException.ThrowIfNull(dwell);
        if (dwell.Solution.Polymer is not null)
        {
            throw new ArgumentException($"One barrier without pores does not tell a polymer's fractions apart: {dwell.Solution} is not for it.", nameof(dwell));
        }

        options ??= DwellOptions.Default;
        var panel = options.Panel;
        var plasma = CavityContents.Of(patient.Plasma, panel);
        var system = new LumpedSystem<Real>(membrane, panel, plasma, dwell.Fill.Milliliters);
        var state = new Real[system.Dimension];
        DwellStart.Write<Real>(
            state, dwell.Fill.Milliliters, CavityContents.Of(dwell.Solution, panel),
            Real.Of(dwell.Residual.Volume.Milliliters), CavityContents.Of(dwell.Residual, panel));

        var recorder = new StepRecorder(system.Dimension);
        var integrator = new DormandPrince853<Real, LumpedSystem<Real>>(system);
        integrator.Run(0, dwell.Duration.TotalMinutes, state, options.Integration, ref recorder);
        return new(patient, membrane, dwell, panel, plasma, recorder.ToTrajectory());
    }
}
