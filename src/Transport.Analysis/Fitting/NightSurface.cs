using MathNet.Numerics.LinearAlgebra;

namespace Transport.Analysis;

/// <summary>The expected means of nights as a parabola over the membrane's coordinates, through simulations around a point.</summary>
/// <remarks>
/// A day is a hundred times dearer than a dwell, and its mean bends little over the doubt that a fit leaves: so each regimen is simulated once for each coefficient
/// (36 times for seven coordinates), and search and draws read the parabola. The fit makes it again around its optimum until the two agree; how far it is off the
/// simulation is measured where it is used (<see cref="Miss"/>).
/// </remarks>
internal sealed class NightSurface
{
    private static readonly RegimenOptions Simulation = new() { Integration = new() { RelativeTolerance = 1e-5 } };

    // How far the parabola may be off the simulation, in deviations of a mean's whole error (choice): less moves no interval visibly. And at how many draws that is looked up.
    private const double LargestMiss = 0.5;
    private const int Looks = 8;

    private readonly MembraneCoordinates membrane;
    private readonly Vector<double> center;
    private readonly Parabola[] parabolas;
    private readonly RegimenWorkspace workspace = new() { SeesLimit = false };

    /// <param name="nights">What was observed.</param>
    /// <param name="membrane">The coordinates.</param>
    /// <param name="center">The point around which to simulate.</param>
    /// <param name="factor">How far, and in which directions: the lower Cholesky factor of a covariance.</param>
    /// <exception cref="IntegrationException">A regimen cannot be integrated there.</exception>
    public NightSurface(ObservedNights nights, MembraneCoordinates membrane, Vector<double> center, Matrix<double> factor)
    {
        (Nights, this.membrane, this.center) = (nights, membrane, center);
        var regimens = nights.Means.Select(mean => mean.Regimen).Distinct().ToList();
        var simulated = regimens.ToDictionary(regimen => regimen, regimen => Simulations(regimen, factor));
        var inverse = factor.Inverse();
        parabolas = [.. nights.Means.Select(mean => new Parabola(simulated[mean.Regimen].ConvertAll(outcome => Of(mean, outcome)), inverse))];
        Whitening = WhiteningOf(simulated.ToDictionary(pair => pair.Key, pair => pair.Value[0]));
    }

    /// <summary>Around an optimum, as far as its covariance reaches.</summary>
    /// <exception cref="IntegrationException">A regimen cannot be integrated there.</exception>
    public static NightSurface Around(ObservedNights nights, MembraneCoordinates membrane, Vector<double> optimum, Matrix<double> covariance) =>
        new(nights, membrane, optimum.SubVector(0, membrane.Count), covariance.SubMatrix(0, membrane.Count, 0, membrane.Count).Cholesky().Factor);

    public ObservedNights Nights { get; }

    /// <summary>How many means.</summary>
    public int Count => parabolas.Length;

    /// <summary>What whitens the errors of the means, which go together: lower triangular.</summary>
    public double[,] Whitening { get; }

    /// <summary>An expected mean, mL.</summary>
    public T Predicted<T>(int mean, ReadOnlySpan<T> point)
        where T : struct, ILane<T>
    {
        var parabola = parabolas[mean];
        var sum = T.Of(parabola.Height);
        for (var i = 0; i < center.Count; i++)
        {
            var slope = T.Of(parabola.Slopes[i]);
            for (var j = 0; j < center.Count; j++)
            {
                slope += 0.5 * parabola.Bends[i, j] * (point[j] - T.Of(center[j]));
            }

            sum += slope * (point[i] - T.Of(center[i]));
        }

        return sum;
    }

    /// <summary>Writes the whitened residuals (predicted − observed) at a point.</summary>
    public void Whiten<T>(ReadOnlySpan<T> point, Span<T> into)
        where T : struct, ILane<T>
    {
        into[..Count].Clear();
        for (var j = 0; j < Count; j++)
        {
            var miss = Predicted(j, point) - T.Of(Nights.Means[j].Observation.Value);
            for (var i = j; i < Count; i++)
            {
                into[i] += Whitening[i, j] * miss;
            }
        }
    }

    /// <summary>How far the parabola is off the simulation at a point: the worst mean, in deviations of its whole error.</summary>
    public double Miss(IReadOnlyList<double> point)
    {
        Real[] at = [.. point.Take(membrane.Count).Select(Real.Of)];
        var there = membrane.Membrane(point);
        var outcomes = Nights.Means.Select(mean => mean.Regimen).Distinct().ToDictionary(regimen => regimen, regimen => Run(regimen, there));
        return Nights.Means.Select((mean, i) =>
            Math.Abs(Predicted<Real>(i, at).Value - Of(mean, outcomes[mean.Regimen])) / mean.Observation.Deviation).Max();
    }

    /// <summary>Whether the parabola is too far from the simulation to be read at a point.</summary>
    public bool IsOff(Vector<double> point) => Miss(point.ToArray()) > LargestMiss;

    /// <summary>What to say where chains read the nights off a parabola that is far from the simulation; null where it is not.</summary>
    public Finding? OffSimulation(Chains chains)
    {
        var worst = Enumerable.Range(0, Looks).Max(look => Miss([.. Enumerable.Range(0, membrane.Count).Select(j => chains.Even(look, j, Looks))]));
        return worst <= LargestMiss ? null : new(Severity.Warning, "nights-parabola-off", FormattableString.Invariant(
            $"The parabola that the draws read the nights from is off the simulation by {worst:0.00} of the nights' error at the worst of {Looks} draws; expected at most {LargestMiss:0.0}. Read the fit's intervals instead, or give the fit a test that holds it."));
    }

    // At the center; up and down each direction; up two at once.
    private List<RegimenOutcome> Simulations(Regimen regimen, Matrix<double> factor)
    {
        var count = center.Count;
        List<RegimenOutcome> outcomes = [At(center)];
        for (var i = 0; i < count; i++)
        {
            outcomes.Add(At(center + factor.Column(i)));
            outcomes.Add(At(center - factor.Column(i)));
        }

        for (var i = 0; i < count; i++)
        {
            for (var j = i + 1; j < count; j++)
            {
                outcomes.Add(At(center + factor.Column(i) + factor.Column(j)));
            }
        }

        return outcomes;

        RegimenOutcome At(Vector<double> point) => Run(regimen, membrane.Membrane(point.AsArray() ?? point.ToArray()));
    }

    private RegimenOutcome Run(Regimen regimen, ThreePoreMembrane there) => workspace.Run(Nights.Patient, there, regimen, Simulation, RunControl.None);

    private double Of(NightMean mean, RegimenOutcome outcome)
    {
        var night = outcome.NightUltrafiltration.Milliliters + Discrepancies(mean, outcome, ofNight: true).Sum(strength => strength.Miss.Shift);
        var drain = outcome.EveningDrain.Milliliters + Discrepancies(mean, outcome, ofNight: false).Sum(strength => strength.Miss.Shift);
        return mean.Observation.Quantity switch
        {
            ObservedQuantity.MeanNightUltrafiltrationMilliliters => night,
            ObservedQuantity.MeanInitialDrainMilliliters => drain,
            _ => night + drain + (outcome.DayUltrafiltration - outcome.EveningDrain).Milliliters,
        };
    }

    private IEnumerable<(DoubtDraws.Part Strength, ModelMiss Miss)> Discrepancies(NightMean mean, RegimenOutcome outcome, bool ofNight) =>
        mean.Observation.Quantity == (ofNight ? ObservedQuantity.MeanInitialDrainMilliliters : ObservedQuantity.MeanNightUltrafiltrationMilliliters) ? []
        : ofNight ? DailyDoubt.ByStrength(DailyDoubt.Night(outcome), DoubtLayers.OfReviews, Nights.Tested)
        : DailyDoubt.ByStrength(DailyDoubt.Day(outcome), DoubtLayers.OfReviews, Nights.Tested);

    // Own errors; the person's offsets, one of nights and one of days; the model's discrepancy, one of each strength.
    private double[,] WhiteningOf(Dictionary<Regimen, RegimenOutcome> at)
    {
        var offset = Nights.OffsetDeviation.Milliliters;
        var shares = Nights.Means.Select(mean => Discrepancies(mean, at[mean.Regimen], ofNight: true).Concat(Discrepancies(mean, at[mean.Regimen], ofNight: false))
            .GroupBy(strength => strength.Strength).ToDictionary(group => group.Key, group => group.Sum(strength => strength.Miss.Deviation))).ToArray();
        var covariance = Matrix<double>.Build.Dense(shares.Length, shares.Length, (i, j) =>
        {
            var (one, other) = (Nights.Means[i].Observation, Nights.Means[j].Observation);
            return (i == j ? one.OwnDeviation * one.OwnDeviation : 0)
                + offset * offset * ((HoldsNight(one) && HoldsNight(other) ? 1 : 0) + (HoldsDay(one) && HoldsDay(other) ? 1 : 0))
                + shares[i].Sum(share => share.Value * shares[j].GetValueOrDefault(share.Key));
        });
        return covariance.Cholesky().Factor.Inverse().ToArray();
    }

    private static bool HoldsNight(Observation mean) => mean.Quantity != ObservedQuantity.MeanInitialDrainMilliliters;

    private static bool HoldsDay(Observation mean) => mean.Quantity != ObservedQuantity.MeanNightUltrafiltrationMilliliters;

    private sealed class Parabola
    {
        /// <param name="values">In the order of <see cref="Simulations"/>.</param>
        /// <param name="inverse">From the coordinates to the directions.</param>
        public Parabola(List<double> values, Matrix<double> inverse)
        {
            var count = inverse.RowCount;
            Height = values[0];
            var slopes = Vector<double>.Build.Dense(count, i => (values[1 + 2 * i] - values[2 + 2 * i]) / 2);
            var bends = Matrix<double>.Build.Dense(count, count);
            var next = 1 + 2 * count;
            for (var i = 0; i < count; i++)
            {
                bends[i, i] = values[1 + 2 * i] + values[2 + 2 * i] - 2 * Height;
                for (var j = i + 1; j < count; j++, next++)
                {
                    bends[i, j] = bends[j, i] = values[next] - values[1 + 2 * i] - values[1 + 2 * j] + Height;
                }
            }

            Slopes = inverse.TransposeThisAndMultiply(slopes).ToArray();
            Bends = (inverse.Transpose() * bends * inverse).ToArray();
        }

        public double Height { get; }

        public double[] Slopes { get; }

        public double[,] Bends { get; }
    }
}
