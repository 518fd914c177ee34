namespace Transport;

/// <summary>Turns a dwell of a batch into equations and a start, in the same memory for all. What neighbors share is computed once.</summary>
internal sealed class DwellLoader
{
    private readonly SolutePanel panel;
    private readonly double lastSample;
    private readonly double[] plasma;
    private readonly double[] fresh;
    private readonly double[] residual;
    private readonly Real[] start;
    private ThreePoreSystem<Real> system;
    private PoreCoefficients? pores;
    private PlasmaComposition? ofPlasma;
    private Dwell? ofDwell;

    /// <param name="panel">The solutes to follow.</param>
    /// <param name="lastSample">What every dwell has to last for, min.</param>
    public DwellLoader(SolutePanel panel, double lastSample)
    {
        this.panel = panel;
        this.lastSample = lastSample;
        plasma = new double[panel.Count];
        fresh = new double[panel.Count];
        residual = new double[panel.Count];
        system = new(panel);
        start = new Real[system.Dimension];
    }

    /// <summary>The equations of the dwell that was loaded last.</summary>
    public ref readonly ThreePoreSystem<Real> System => ref system;

    /// <summary>Its start.</summary>
    public ReadOnlySpan<Real> Start => start;

    /// <exception cref="ArgumentException">It ends too early, or does not say what the panel needs.</exception>
    public void Load(in DwellCase at)
    {
        if (!ReferenceEquals(ofPlasma, at.Patient.Plasma))
        {
            ofPlasma = null;
            CavityContents.Write(at.Patient.Plasma, panel, plasma);
            ofPlasma = at.Patient.Plasma;
        }

        if (!ReferenceEquals(ofDwell, at.Dwell))
        {
            ofDwell = null;
            if (at.Dwell.Duration.TotalMinutes < lastSample)
            {
                throw new ArgumentException("The dwell ends before the last sample.", nameof(at));
            }

            if (!panel.Follows(at.Dwell.Solution.Polymer))
            {
                throw new ArgumentException("The panel does not follow the polymer of the solution.", nameof(at));
            }

            CavityContents.Write(at.Dwell.Solution, panel, fresh);
            CavityContents.Write(at.Dwell.Residual, panel, residual);
            DwellStart.Write<Real>(start, at.Dwell.Fill.Milliliters, fresh, Real.Of(at.Dwell.Residual.Volume.Milliliters), residual);
            ofDwell = at.Dwell;
        }

        pores = PoreCoefficients.Of(at.Membrane, panel, pores);
        system.Set(at.Membrane, at.Free, pores, panel, plasma);
        fresh.CopyTo(system.Fresh);
    }
}
