namespace Transport.Analysis;

/// <summary>The regimens of a space that a patient's limits allow, asked of one membrane after another by shared exchanges. One per thread.</summary>
internal sealed class RegimenTable
{
    private readonly RegimenRingOf?[] rings;
    private readonly RingWorker worker;
    private readonly RegimenFigures reader;
    private readonly RegimenOptions simulation;
    private readonly Dictionary<Regimen, int> places = [];
    private readonly RegimenWorkspace workspace = new() { SeesLimit = false };

    public RegimenTable(Patient patient, RegimenSpace space, RegimenGoals goals)
    {
        Patient = patient;
        Space = space;
        var search = new RegimenSearchOptions { Layers = DoubtLayers.ParametersAlone };
        simulation = search.Screening;
        var judge = new CenterJudge(patient, goals);
        Regimens = [.. space.All().Where(regimen => judge.Limits(regimen) is null)];
        if (Regimens.Count == 0)
        {
            throw new ArgumentException("The space holds no regimen that the limits allow.", nameof(space));
        }

        for (var i = 0; i < Regimens.Count; i++)
        {
            places[Regimens[i]] = i;
        }

        var catalog = new RegimenCatalog(patient, simulation, Regimens[0], goals.Pressure);
        List<CycleKind> scratch = [];
        rings = [.. Regimens.Select(regimen => catalog.Add(regimen, scratch))];
        catalog.Complete(search);
        worker = new(patient, catalog, simulation, search, goals.Pressure, seesPeak: false);
        reader = new(patient, simulation, goals.Pressure);
    }

    public Patient Patient { get; }

    public RegimenSpace Space { get; }

    /// <summary>In the order of the grid.</summary>
    public IReadOnlyList<Regimen> Regimens { get; }

    /// <summary>The regimen with the least loss; of equal ones the first.</summary>
    public (int Index, double Loss) LeastLoss(ThreePoreMembrane membrane, StrategyLoss loss, RunControl control)
    {
        var (best, least) = (0, double.MaxValue);
        Run(membrane, control, (i, figures) =>
        {
            if (loss.Of(figures) is var here && here < least)
            {
                (best, least) = (i, here);
            }
        });
        return (best, least);
    }

    /// <summary>The measures of every regimen.</summary>
    public void Run(ThreePoreMembrane membrane, RunControl control, Taking take)
    {
        worker.Prepare(membrane);
        Span<double> figures = stackalloc double[RegimenFigures.Count];
        for (var i = 0; i < Regimens.Count; i++)
        {
            if (i % 64 == 0)
            {
                control.Cancellation.ThrowIfCancellationRequested();
            }

            RegimenFigures.ReadPlan(Regimens[i], figures);
            worker.RunFigures(Regimens[i], rings[i], offset: 0, figures);
            take(i, figures);
        }
    }

    /// <summary>The measures of one regimen, whether it is of the space or not.</summary>
    public double[] Figures(ThreePoreMembrane membrane, Regimen regimen)
    {
        var figures = new double[RegimenFigures.Count];
        RegimenFigures.ReadPlan(regimen, figures);
        if (places.TryGetValue(regimen, out var i))
        {
            worker.Prepare(membrane);
            worker.RunFigures(regimen, rings[i], offset: 0, figures);
        }
        else
        {
            reader.Read(workspace.Run(Patient, membrane, regimen, simulation, RunControl.None), figures);
        }

        return figures;
    }

    public delegate void Taking(int regimen, ReadOnlySpan<double> figures);
}
