namespace Transport.Analysis;

/// <summary>Gives the measures of regimens with one membrane after another: by maps where they are rings, by simulation where not. One per thread.</summary>
internal sealed class RingWorker
{
    private const int MostExchanges = 80;

    private readonly Patient patient;
    private readonly RegimenOptions simulation;
    private readonly RegimenSearchOptions search;
    private readonly bool seesPeak;
    private readonly RegimenFigures figures;
    private readonly (RingCatalog Rings, CycleLibrary Library)[] catalogs;
    private readonly RegimenWorkspace workspace = new() { SeesLimit = false };
    private readonly double[] sums;
    private readonly double[] infused;
    private readonly double[] drained = new double[MostExchanges];
    private readonly double[] late = new double[MostExchanges];
    private ThreePoreMembrane membrane = null!;

    public RingWorker(Patient patient, RegimenCatalog catalog, RegimenOptions options, RegimenSearchOptions search, CavityPressure pressure, bool seesPeak)
    {
        this.patient = patient;
        this.search = search;
        simulation = search.Plain;
        this.seesPeak = seesPeak;
        figures = new(patient, options, pressure);
        catalogs = [.. catalog.All.Select(rings => (rings, rings.ToLibrary(seesPeak)))];
        sums = new double[catalogs.Max(one => one.Library.SumCount)];
        infused = new double[sums.Length];
    }

    public void Prepare(ThreePoreMembrane of)
    {
        membrane = of;
        foreach (var (_, library) in catalogs)
        {
            library.Prepare(of);
        }
    }

    /// <summary>The measures, without the model's discrepancy; and that.</summary>
    public ModelMiss Run(Regimen regimen, RegimenRingOf? ring, Span<double> into)
    {
        if (ring is not null && ring.Places.Length <= MostExchanges)
        {
            var (rings, library) = catalogs[ring.Catalog];
            var found = sums.AsSpan(0, library.SumCount);
            if (library.TryRun(ring.Places, found, drained, late))
            {
                Read(rings, ring, found, into);
                return rings.Doubt.Of(ring.Places, drained, late);
            }
        }

        var outcome = Simulate(regimen);
        figures.Read(outcome, into);
        return DailyDoubt.ModelForm(outcome, search.Layers, search.Tested);
    }

    /// <summary>The measures alone, the ultrafiltration with the model's discrepancy; the fullest moment, where it is not looked for, is left as it is.</summary>
    /// <param name="regimen">The regimen.</param>
    /// <param name="ring">Its exchanges; null where it is no ring.</param>
    /// <param name="offset">The part of the discrepancy that the membrane does not change, mL.</param>
    /// <param name="into">The measures in order.</param>
    public void RunFigures(Regimen regimen, RegimenRingOf? ring, double offset, Span<double> into)
    {
        if (ring is not null)
        {
            var (rings, library) = catalogs[ring.Catalog];
            var found = sums.AsSpan(0, library.SumCount);
            if (!seesPeak && rings.StartOf(ring.Branch) is { } start ? library.TryRunShared(ring.Places, start, found) : library.TryRun(ring.Places, found))
            {
                Read(rings, ring, found, into);
                into[(int)RegimenMeasure.Ultrafiltration] += offset + library.Gained;
                return;
            }
        }

        figures.Read(Simulate(regimen), search, into);
    }

    private void Read(RingCatalog rings, RegimenRingOf ring, ReadOnlySpan<double> found, Span<double> into)
    {
        var given = infused.AsSpan(0, rings.InfusedCount);
        rings.Infused(ring.Places, given);
        rings.Figures.Read(found, given, into, seesPeak);
    }

    private RegimenOutcome Simulate(Regimen regimen) => workspace.Run(patient, membrane, regimen, simulation, RunControl.None);
}
