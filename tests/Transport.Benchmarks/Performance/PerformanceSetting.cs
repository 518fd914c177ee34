namespace Transport.Benchmarks;

/// <summary>Everything that is tuned before anything is timed.</summary>
internal sealed class PerformanceSetting : IDisposable
{
    /// <param name="onlyLanes">Whether only the batch is wanted.</param>
    public PerformanceSetting(bool onlyLanes = false)
    {
        Problem = new();
        Minutes = [.. PeerProblem.Times.Select(time => time.TotalMinutes)];
        Coefficients = [.. Enumerable.Range(0, PeerProblem.Members).Select(i => Problem.Coefficients(i, Problem.DwellOf(i).Solution))];
        Starts = [.. Enumerable.Range(0, PeerProblem.Members).Select(Problem.Start)];
        States = new double[Minutes.Length * Starts[0].Length];
        Cases = [.. Enumerable.Range(0, PeerProblem.Members).Select(i => new DwellCase(Problem.Patient, Problem.Ensemble, i, Problem.DwellOf(i)))];
        Samples = new(PeerProblem.Panel, PeerProblem.Times, PeerProblem.Members);

        (var batchTolerance, BatchError) = PeerProblem.Tune(tolerance =>
        {
            DwellBatch.Run(Cases, Samples, Batch(tolerance));
            return Problem.WorstError(i => Problem.Observed(Samples, i));
        });
        BatchOptions = Batch(batchTolerance);
        DayOptions = OfDay(1e-7);
        if (onlyLanes)
        {
            return;
        }

        (DwellTolerance, DwellError) = PeerProblem.Tune(tolerance => Problem.WorstError(i => PeerProblem.Observed(Problem.Run(i, tolerance))));

        var exactDay = Day(OfDay(1e-12));
        (var dayTolerance, DayError) = PeerProblem.Tune(tolerance => Worst(Day(OfDay(tolerance)), exactDay));
        DayOptions = OfDay(dayTolerance);

        Cvode = CvodePeer.Build(Problem.Scale());
        if (Cvode is null)
        {
            return;
        }

        (var cvodeTolerance, CvodeError) = PeerProblem.Tune(tolerance =>
        {
            Cvode.Tolerate(tolerance);
            return Problem.WorstError(CvodeObserved);
        });
        Cvode.Tolerate(cvodeTolerance);
        CvodeEvaluations = Enumerable.Range(0, PeerProblem.Members).Average(i => Cvode.Dwell(Coefficients[i], Starts[i], Minutes, States));

        NightCvode = CvodePeer.Build(Problem.Scale())!;
        NightPeer = new(NightCvode, Problem);
        NightCvode.Tolerate(1e-12);
        var exact = (double[])NightPeer.Run().Clone();
        (_, CvodeDayError) = PeerProblem.Tune(tolerance =>
        {
            NightCvode.Tolerate(tolerance);
            return Worst(NightPeer.Run(), exact);
        });
    }

    public PeerProblem Problem { get; }

    public double[] Minutes { get; }

    public double[][] Coefficients { get; }

    public double[][] Starts { get; }

    public double[] States { get; }

    public DwellCase[] Cases { get; }

    public DwellSamples Samples { get; }

    public double DwellTolerance { get; }

    public double DwellError { get; }

    public DwellBatchOptions BatchOptions { get; }

    public double BatchError { get; }

    public RegimenOptions DayOptions { get; }

    public double DayError { get; }

    public CvodePeer? Cvode { get; }

    public double CvodeError { get; }

    public double CvodeEvaluations { get; }

    public NightPeer? NightPeer { get; }

    public double CvodeDayError { get; }

    private CvodePeer? NightCvode { get; }

    public void Dispose()
    {
        Cvode?.Dispose();
        NightCvode?.Dispose();
    }

    public static DwellBatchOptions Batch(double tolerance, int workers = 1) =>
        new() { Panel = PeerProblem.Panel, Workers = workers, Integration = new() { RelativeTolerance = tolerance } };

    private static RegimenOptions OfDay(double tolerance) =>
        new() { Panel = PeerProblem.Panel, Integration = new() { RelativeTolerance = tolerance } };

    private double[] CvodeObserved(int member)
    {
        Cvode!.Dwell(Coefficients[member], Starts[member], Minutes, States);
        return Problem.Observed(States);
    }

    private double[] Day(RegimenOptions options)
    {
        var day = RegimenSimulation.Run(Problem.Patient, Problem.Membranes[0], NightPeer.Regimen, options);
        return
        [
            day.EveningDrain.Milliliters, day.Ultrafiltration.Milliliters, day.PeritonealUreaClearance.MillilitersPerMinute,
            day.PeritonealCreatinineClearance.MillilitersPerMinute, day.GlucoseAbsorbed.Grams, .. day.Cycles.Select(cycle => cycle.Ultrafiltration.Milliliters),
        ];
    }

    private static double Worst(double[] found, double[] exact) => found.Zip(exact, (a, b) => Math.Abs(a / b - 1)).Max();
}
