using System.Collections.Immutable;
using MathNet.Numerics.Statistics;

namespace Transport.Analysis;

/// <summary>Ultrafiltration, sodium and absorbed glucose against dwell time, over an ensemble of membranes.</summary>
public static class DwellCurves
{
    private const double StepMinutes = 10;

    // A population of one would have no spread, and its draws no median.
    private const int FewestOfPopulation = 200;

    /// <summary>One curve for each solution.</summary>
    /// <param name="patient">Whose plasma and size.</param>
    /// <param name="ensemble">The membranes, at the patient's size.</param>
    /// <param name="options">Strengths, fill, longest dwell.</param>
    /// <param name="control">Watches and stops.</param>
    /// <remarks>
    /// A curve of icodextrin is not of this patient: no test with glucose tells of it. It is drawn over as many membranes of a population of the
    /// patient's size (<see cref="PopulationPrior"/>), meeting the patient's plasma, and says so (<see cref="DwellCurve.IsOfPopulation"/>). Where a cavity runs empty, its curve stays where it was then.
    /// </remarks>
    /// <exception cref="ArgumentException">A solution is neither a glucose nor an icodextrin solution.</exception>
    /// <exception cref="ArgumentOutOfRangeException">The fill is not positive.</exception>
    /// <exception cref="IntegrationException">A dwell could not be integrated, for another reason than that the cavity ran empty.</exception>
    /// <exception cref="OperationCanceledException">The run was stopped.</exception>
    public static IReadOnlyList<DwellCurve> Run(
        Patient patient, MembraneEnsemble ensemble, DwellCurveOptions? options = null, RunControl? control = null)
    {
        ArgumentNullException.ThrowIfNull(patient);
        ArgumentNullException.ThrowIfNull(ensemble);
        options ??= DwellCurveOptions.Default;
        control ??= RunControl.None;
        var minutes = Enumerable.Range(0, (int)(options.Longest.TotalMinutes / StepMinutes) + 1).Select(i => i * StepMinutes).ToArray();
        var curves = new List<DwellCurve>();
        foreach (var strength in options.Solutions)
        {
            var discrepancy = options.Layers.Of(strength, options.Tested, ExchangeMode.Alone);
            var membranes = strength.Polymer is null
                ? ensemble
                : PopulationPrior.IncidentAdults().ToEnsemble(patient.BodySurface, Math.Max(FewestOfPopulation, ensemble.Count), ensemble.Seed);
            curves.Add(Curve(patient, membranes, strength, options, discrepancy, minutes, control));
            control.Progress?.Report((double)curves.Count / options.Solutions.Count);
        }

        return curves;
    }

    private static DwellCurve Curve(
        Patient patient,
        MembraneEnsemble ensemble,
        DialysisSolution solution,
        DwellCurveOptions options,
        ModelDiscrepancy discrepancy,
        double[] minutes,
        RunControl control)
    {
        var dwell = DwellOf(patient, solution, options.Fill, options.Longest);
        var samples = DwellBatch.Run(
            [.. Enumerable.Range(0, ensemble.Count).Select(i => new DwellCase(patient, ensemble, i, dwell))],
            minutes.Select(TimeSpan.FromMinutes),
            new() { Integration = new() { RelativeTolerance = 1e-6 } },
            new() { Cancellation = control.Cancellation });
        var emptied = samples.Failures.ToDictionary(failure => failure.Index, failure => UntilEmpty(patient, ensemble[failure.Index], dwell));
        var repeats = DoubtDraws.PerMember(ensemble.Count);
        var ultrafiltration = Columns(repeats);
        var sodium = Columns();
        var glucose = Columns();
        var polymer = Columns();
        var doubt = new DoubtDraws(options.Layers, ensemble.Seed);
        var part = DoubtDraws.Of(solution);
        var variation = options.Layers.NightToNight;
        for (var draw = 0; draw < ensemble.Count * repeats; draw++)
        {
            var i = draw / repeats;
            var missed = doubt[part, draw];
            var night = options.Layers.HoldsNightToNight ? doubt[DoubtDraws.Part.Night, draw] : 0;
            for (var t = 0; t < minutes.Length; t++)
            {
                var time = TimeSpan.FromMinutes(minutes[t]);
                var byModel = Net(t, i);
                var mean = byModel + discrepancy.ShiftOf(byModel, time) + discrepancy.DeviationAt(time) * missed;
                ultrafiltration[t][draw] = mean + night * NightVariation.GrowthAt(time) * variation.Milliliters(mean);
            }
        }

        for (var i = 0; i < ensemble.Count; i++)
        {
            for (var t = 0; t < minutes.Length; t++)
            {
                (sodium[t][i], glucose[t][i], polymer[t][i]) = emptied.TryGetValue(i, out var course)
                    ? (course.RemovedAt(Solutes.Sodium, Open(t, course)).Millimoles, course.GlucoseAbsorbedAt(Open(t, course)).Grams, course.PolymerAbsorbedAt(Open(t, course)).Grams)
                    : ((Micromoles(Solutes.Sodium, t, i) - Micromoles(Solutes.Sodium, 0, i)) / 1000,
                        (Micromoles(Solutes.Glucose, 0, i) - Micromoles(Solutes.Glucose, t, i)) / 1e6 * Solutes.Glucose.MolarMassGramsPerMole,
                        samples.PolymerGrams(0, i) - samples.PolymerGrams(t, i));
            }
        }

        var holds = discrepancy == ModelDiscrepancy.None ? options.Layers.OfDwells & ~Doubt.ModelForm : options.Layers.OfDwells;
        var net = Band("mL", ultrafiltration, holds);
        var peak = net.Median.Max();
        return new()
        {
            Solution = solution,
            IsTested = options.Tested is { } used && ModelDiscrepancies.IsSameStrength(solution, used),
            IsOfPopulation = solution.Polymer is not null,
            Fill = options.Fill,
            Minutes = [.. minutes],
            NetUltrafiltration = net,
            SodiumRemoved = Band("mmol", sodium, Doubt.Parameters),
            GlucoseAbsorbed = Band("g", glucose, Doubt.Parameters),
            PolymerAbsorbed = solution.Polymer is null ? null : Band("g", polymer, Doubt.Parameters),
            PeakWindow = Window(minutes, net.Median, peak),
            PeakUltrafiltration = Volume.FromMilliliters(peak),
            ReturnToZero = BackAtZero(minutes, net.Median),
        };

        double Net(int t, int member) => emptied.TryGetValue(member, out var course)
            ? course.NetUltrafiltrationAt(Open(t, course)).Milliliters
            : samples.VolumesMilliliters(t)[member] - samples.VolumesMilliliters(0)[member];

        // As long as there is something in it.
        TimeSpan Open(int t, DwellCourse course) => TimeSpan.FromMinutes(Math.Min(minutes[t], course.Dwell.Duration.TotalMinutes));

        double Micromoles(Solute solute, int t, int member) =>
            samples.ConcentrationsMillimolesPerLiter(solute, t)[member] * samples.VolumesMilliliters(t)[member];

        double[][] Columns(int perMember = 1) => [.. minutes.Select(_ => new double[ensemble.Count * perMember])];
    }

    // A cavity that runs empty holds next to nothing a minute before, and nothing crosses its membrane afterwards.
    private static DwellCourse UntilEmpty(Patient patient, ThreePoreMembrane membrane, Dwell dwell)
    {
        try
        {
            return DwellSimulation.Run(patient, membrane, dwell);
        }
        catch (IntegrationException stopped) when (stopped.Time > TimeSpan.FromMinutes(StepMinutes))
        {
            var end = stopped.Time - TimeSpan.FromMinutes(1);
            var course = DwellSimulation.Run(patient, membrane, dwell with { Duration = end });
            if (course.VolumeAt(end) > dwell.Fill * 0.05)
            {
                throw;
            }

            return course;
        }
    }

    private static Dwell DwellOf(Patient patient, DialysisSolution solution, Volume fill, TimeSpan duration) =>
        new(solution, fill, duration, ResidualFluid.Used(ObservedExchange.TypicalResidual(patient), patient.Plasma));

    private static CurveBand Band(string unit, double[][] columns, Doubt doubt)
    {
        var quantiles = columns.Select(column =>
        {
            Array.Sort(column);
            return (
                Low: SortedArrayStatistics.Quantile(column, 0.05),
                Median: SortedArrayStatistics.Quantile(column, 0.5),
                High: SortedArrayStatistics.Quantile(column, 0.95));
        }).ToArray();
        return new(
            unit, [.. quantiles.Select(q => q.Median)], [.. quantiles.Select(q => q.Low)], [.. quantiles.Select(q => q.High)], doubt);
    }

    private static (TimeSpan From, TimeSpan To) Window(double[] minutes, ImmutableArray<double> values, double peak)
    {
        var near = minutes.Where((_, t) => values[t] >= peak - 0.05 * Math.Abs(peak)).ToArray();
        return (TimeSpan.FromMinutes(near[0]), TimeSpan.FromMinutes(near[^1]));
    }

    // Linear between two times of the grid.
    private static TimeSpan? BackAtZero(double[] minutes, ImmutableArray<double> values)
    {
        var peak = values.IndexOf(values.Max());
        for (var t = peak + 1; t < minutes.Length; t++)
        {
            if (values[t] <= 0)
            {
                return TimeSpan.FromMinutes(minutes[t - 1] + StepMinutes * values[t - 1] / (values[t - 1] - values[t]));
            }
        }

        return null;
    }
}
