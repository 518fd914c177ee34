using MathNet.Numerics.Distributions;
using MathNet.Numerics.Statistics;

namespace Transport.Analysis;

/// <summary>Regimens over the members of an ensemble: the same members for all, so that differences pair.</summary>
internal sealed class EnsembleStage
{
    // Members are repeated until this many draws carry the doubt that is not the membrane's.
    private const int LeastDraws = 200;
    private const double Coverage = 0.90;

    private readonly IReadOnlyList<Candidate> candidates;
    private readonly int members;
    private readonly Doubt ofMean;
    private readonly double[][] ultrafiltration;
    private readonly double[][] ureaDose;
    private readonly double[][] glucose;
    private readonly double[][] sodium;

    private EnsembleStage(IReadOnlyList<Candidate> candidates, int members, Doubt ofMean)
    {
        this.candidates = candidates;
        this.members = members;
        this.ofMean = ofMean;
        ultrafiltration = Table();
        ureaDose = Table();
        glucose = Table();
        sodium = Table();
    }

    public static EnsembleStage Run(
        Patient patient, MembraneEnsemble ensemble, IReadOnlyList<Candidate> candidates, RegimenSearchOptions options, RunControl control)
    {
        var stage = new EnsembleStage(candidates, Math.Min(ensemble.Count, options.EnsembleMembers), DailyDoubt.OfMean(options));
        ParallelRuns.Run(stage.members, options.Workers, control, 0.6, 1, () => new RegimenWorkspace(), (workspace, member) =>
        {
            // The member outside, so that the equations of a membrane are set up once.
            var membrane = ensemble[member];
            for (var k = 0; k < candidates.Count; k++)
            {
                control.Cancellation.ThrowIfCancellationRequested();
                var outcome = workspace.Run(patient, membrane, candidates[k].Regimen, options.Simulation, RunControl.None);
                stage.ultrafiltration[k][member] = outcome.Ultrafiltration.Milliliters;
                stage.ureaDose[k][member] = outcome.UreaDose.TotalKtOverV;
                stage.glucose[k][member] = outcome.GlucoseAbsorbed.Grams;
                stage.sodium[k][member] = outcome.SodiumRemovedByModel.Millimoles;
            }
        });
        return stage;
    }

    public Band<double> UreaDose(int k) => Bands(ureaDose[k], value => value, Doubt.Parameters);

    public Band<Mass> Glucose(int k) => Bands(glucose[k], Mass.FromGrams, Doubt.Parameters);

    public Band<Volume> MeanUltrafiltration(int k)
    {
        var (shift, deviation) = candidates[k].ModelForm;
        return Bands(Spread(ultrafiltration[k], (value, z) => value + shift + deviation * z), Volume.FromMilliliters, ofMean);
    }

    public Band<Volume> UltrafiltrationOfOneDay(int k)
    {
        var (shift, deviation) = candidates[k].ModelForm;
        return Bands(
            Spread(ultrafiltration[k], (value, z) => value + shift + z * OfOneDay(value + shift, deviation)),
            Volume.FromMilliliters,
            ofMean | Doubt.NightToNight);
    }

    /// <summary>Sodium with the doubt of its calibration.</summary>
    public Band<AmountOfSubstance> Sodium(int k, SodiumCalibration calibration) => Bands(
        Spread(sodium[k], (value, z) => value * calibration.Factor * Math.Exp(calibration.DeviationOfLogFactor * z)),
        AmountOfSubstance.FromMillimoles,
        Doubt.Parameters | Doubt.ModelForm);

    public double ProbabilityOfMean(int k, FluidTarget range)
    {
        var (shift, deviation) = candidates[k].ModelForm;
        return ultrafiltration[k].Average(value => DailyDoubt.ShareInRange(value + shift, deviation, range));
    }

    public double ProbabilityOfDay(int k, FluidTarget range)
    {
        var (shift, deviation) = candidates[k].ModelForm;
        return ultrafiltration[k].Average(value => DailyDoubt.ShareInRange(value + shift, OfOneDay(value + shift, deviation), range));
    }

    private static double OfOneDay(double mean, double deviation)
    {
        var night = NightVariation.StartingMilliliters(mean);
        return Math.Sqrt(deviation * deviation + night * night);
    }

    // Normal deviates on an even, irrational grid: no random numbers, the same for every regimen.
    private double[] Spread(double[] values, Func<double, double, double> draw)
    {
        var repeats = (LeastDraws + members - 1) / members;
        var spread = new double[members * repeats];
        for (var i = 0; i < spread.Length; i++)
        {
            var place = (i + 0.5) * 0.6180339887498949;
            spread[i] = draw(values[i / repeats], Normal.InvCDF(0, 1, place - Math.Floor(place)));
        }

        return spread;
    }

    private static Band<T> Bands<T>(double[] values, Func<double, T> quantity, Doubt doubt)
        where T : struct
    {
        var sorted = values.Order().ToArray();
        return new(At(0.5), At(0.5 * (1 - Coverage)), At(0.5 * (1 + Coverage)), Coverage, doubt);

        T At(double share) => quantity(SortedArrayStatistics.Quantile(sorted, share));
    }

    private double[][] Table() => [.. candidates.Select(_ => new double[members])];
}
