namespace Transport;

/// <summary>Turns dwells of a batch into equations and starts, in the same memory for all. What neighbors share is computed once.</summary>
internal sealed class DwellLoader
{
    private readonly SolutePanel panel;
    private readonly double lastSample;
    private readonly double[] plasma;
    private readonly double[] fresh;
    private readonly double[] residual;
    private readonly Real[] start;
    private ThreePoreSystem<Real> one;
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
        one = new(panel);
        start = new Real[one.Dimension];
    }

    /// <summary>The start of the dwell that was filled last.</summary>
    public ReadOnlySpan<Real> Start => start;

    /// <summary>Its fresh fluid, mmol/L.</summary>
    public ReadOnlySpan<double> Fresh => fresh;

    /// <summary>Mixes fresh fluid and what was left.</summary>
    /// <exception cref="ArgumentException">The dwell ends too early, or it or the patient's plasma does not say what the panel needs.</exception>
    public void Fill(in DwellCase at)
    {
        Face(at.Patient.Plasma);
        if (ReferenceEquals(ofDwell, at.Dwell))
        {
            return;
        }

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

    /// <summary>Writes the equations of dwells that stand side by side in a lane.</summary>
    /// <param name="dwells">As many as the lane is wide.</param>
    /// <param name="system">Where to; the fresh fluid is left as it is.</param>
    /// <exception cref="ArgumentException">A patient's plasma does not say what the panel needs.</exception>
    public void Set<T>(ReadOnlySpan<DwellCase> dwells, ref ThreePoreSystem<T> system)
        where T : struct, ILane<T>
    {
        var first = dwells[0];
        if (Alike(dwells))
        {
            // Members of one ensemble, all at once.
            var free = default(FreeParameters<T>);
            for (var lane = 0; lane < dwells.Length; lane++)
            {
                free.WriteLane(lane, dwells[lane].Free);
            }

            Face(first.Patient.Plasma);
            pores = PoreCoefficients.Of(first.Membrane, panel, pores);
            system.Set(first.Membrane, free, pores, panel, plasma);
            return;
        }

        for (var lane = 0; lane < dwells.Length; lane++)
        {
            ref readonly var at = ref dwells[lane];
            Face(at.Patient.Plasma);
            pores = PoreCoefficients.Of(at.Membrane, panel, pores);
            one.Set(at.Membrane, at.Free, pores, panel, plasma);
            system.WriteLane(lane, one);
        }
    }

    // Whether they differ in nothing but what is free and in their fluids.
    private static bool Alike(ReadOnlySpan<DwellCase> dwells)
    {
        var first = dwells[0];
        foreach (ref readonly var at in dwells)
        {
            if (!ReferenceEquals(at.Membrane, first.Membrane) || !ReferenceEquals(at.Patient.Plasma, first.Patient.Plasma))
            {
                return false;
            }
        }

        return true;
    }

    private void Face(PlasmaComposition composition)
    {
        if (!ReferenceEquals(ofPlasma, composition))
        {
            ofPlasma = null;
            CavityContents.Write(composition, panel, plasma);
            ofPlasma = composition;
        }
    }
}
