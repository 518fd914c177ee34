namespace Transport;

/// <summary>Simulates one dwell.</summary>
public static class DwellSimulation
{
    /// <summary>Volume, solutes and flows of a dwell against time. Plasma stays constant.</summary>
    /// <param name="patient">Whose plasma it is.</param>
    /// <param name="membrane">The membrane, at the patient's size.</param>
    /// <param name="dwell">What goes in, and for how long.</param>
    /// <param name="options">Which solutes, how carefully.</param>
    /// <exception cref="ArgumentException">The membrane, the plasma or the residual fluid does not state a solute of the panel.</exception>
    /// <exception cref="IntegrationException">The dwell could not be integrated to its end; nothing partial is returned.</exception>
    public static DwellCourse Run(Patient patient, IMembrane membrane, Dwell dwell, DwellOptions? options = null)
    {
        ArgumentNullException.ThrowIfNull(patient);
        ArgumentNullException.ThrowIfNull(membrane);
        ArgumentNullException.ThrowIfNull(dwell);
        options ??= DwellOptions.Default;
        return membrane.Run(patient, dwell, options with { Panel = options.Panel.With(dwell.Solution.Polymer) });
    }

    /// <summary>The one way in which a membrane's equations are run through a dwell.</summary>
    internal static DwellCourse Run<TSystem>(TSystem system, IMembrane membrane, Patient patient, Dwell dwell, DwellOptions options)
        where TSystem : struct, IDwellSystem<Real>
    {
        var panel = options.Panel;
        var state = new Real[system.Dimension];
        DwellStart.Write<Real>(
            state, dwell.Fill.Milliliters, CavityContents.Of(dwell.Solution, panel),
            Real.Of(dwell.Residual.Volume.Milliliters), CavityContents.Of(dwell.Residual, panel));

        var recorder = new StepRecorder();
        var integrator = new DormandPrince853<Real, TSystem>(system);
        integrator.Run(0, dwell.Duration.TotalMinutes, state, options.Integration, ref recorder);
        return new(patient, membrane, dwell, panel, system, recorder.ToTrajectory());
    }
}
