using MathNet.Numerics.LinearAlgebra;

namespace Transport.Analysis;

/// <summary>What every feasible reading tells, at each of some membranes, and what a set of them tells together.</summary>
internal sealed class DesignInformation
{
    private readonly MembraneCoordinates membrane;
    private readonly IReadOnlyList<PlannedSample> feasible;
    private readonly PlannedExchange[] exchanges;
    private readonly DesignTarget target;
    private readonly TestDesignOptions options;
    private readonly FitProblem problem;
    private readonly Patient patient;
    private readonly List<At> membranes = [];

    public DesignInformation(
        Patient patient, MembraneCoordinates membrane, IReadOnlyList<PlannedSample> feasible, DesignTarget target, TestDesignOptions options)
    {
        (this.patient, this.membrane, this.feasible, this.target, this.options) = (patient, membrane, feasible, target, options);
        exchanges = [.. feasible.Select(sample => sample.Exchange).Distinct()];
        problem = new(
            new(
                [
                    .. exchanges.Select(exchange => new ObservedExchange
                    {
                        Patient = patient,
                        Dwell = exchange.Dwell,
                        ResidualLogDeviation = exchange.ResidualLogDeviation,
                        Findings = [],
                        Observations =
                        [
                            .. feasible.Where(sample => sample.Exchange == exchange).SelectMany(sample => sample.Readings).Distinct()
                                .Select(reading => new Observation(reading.Quantity, reading.Time, 1, 1, 0, IsFitted: true)),
                        ],
                    }),
                ],
                membrane,
                UsesPrior: true,
                StudentDegreesOfFreedom: null),
            options.Integration);
    }

    /// <summary>Derivatives at one membrane; one whose dwells cannot be integrated tells nothing and is left out.</summary>
    public void Add(Vector<double> point)
    {
        var whole = Vector<double>.Build.Dense(membrane.Count + exchanges.Length, j => j < point.Count ? point[j] : 0);
        if (problem.Sensitivities(whole) is { } rows && Slopes(point) is { } slopes)
        {
            membranes.Add(new(rows, slopes));
        }
    }

    /// <summary>Precision with some samples, beside what is known: the inverse covariance of the membrane's coordinates.</summary>
    public ExpectedPrecision Precision(Matrix<double> known, IReadOnlyList<PlannedSample> samples)
    {
        var count = membrane.Count;
        var target = 0.0;
        var parameters = new double[count];
        if (membranes.Count == 0)
        {
            throw new InvalidOperationException("In no membrane that is compatible with what is known can the planned dwells be computed; the cavity may run empty.");
        }

        foreach (var at in membranes)
        {
            // A residual volume is known as well as its exchange says.
            var information = Matrix<double>.Build.DenseIdentity(count + exchanges.Length);
            information.SetSubMatrix(0, 0, known);
            for (var e = 0; e < exchanges.Length; e++)
            {
                AddExchange(information, e, at, [.. samples.Where(sample => sample.Exchange == exchanges[e]).SelectMany(sample => sample.Readings).Distinct()]);
            }

            var covariance = information.Cholesky().Solve(Matrix<double>.Build.DenseIdentity(information.RowCount)).SubMatrix(0, count, 0, count);
            target += at.TargetSlopes.DotProduct(covariance * at.TargetSlopes) / membranes.Count;
            for (var j = 0; j < count; j++)
            {
                parameters[j] += Math.Pow(membrane[j].Spread, 2) * covariance[j, j] / membranes.Count;
            }
        }

        return new(samples, Math.Sqrt(target), membrane.Free.Select((parameter, j) => (parameter, parameters[j])).ToDictionary(pair => pair.parameter, pair => Math.Sqrt(pair.Item2)));
    }

    private void AddExchange(Matrix<double> information, int exchange, At at, IReadOnlyList<PlannedReading> readings)
    {
        foreach (var group in readings.GroupBy(reading => reading.Quantity))
        {
            var rows = group.Select(reading => at.Rows.First(row =>
                row.Exchange == exchange && row.Observation.Quantity == reading.Quantity && row.Observation.Time == reading.Time)).ToArray();
            var errors = rows.Select(row => Errors(exchanges[exchange], row)).ToArray();
            var covariance = Matrix<double>.Build.Dense(rows.Length, rows.Length, (i, j) =>
                errors[i].Shared * errors[j].Shared + (i == j ? errors[i].Own * errors[i].Own : 0));
            var slopes = Matrix<double>.Build.Dense(rows.Length, information.RowCount, (i, j) => rows[i].Slopes[j]);
            information.Add(slopes.TransposeThisAndMultiply(covariance.Cholesky().Solve(slopes)), information);
        }
    }

    // Of a ratio the errors are shares of it.
    private (double Own, double Shared) Errors(PlannedExchange exchange, Sensitivity row)
    {
        var plasma = patient.Plasma;
        var errors = options.Errors;
        var (variation, sampling, floor, denominator) = row.Observation.Quantity switch
        {
            ObservedQuantity.CreatinineToPlasma => (errors.CreatinineVariation, errors.SamplingVariation, errors.CreatinineFloor, plasma.Creatinine),
            ObservedQuantity.UreaToPlasma => (errors.UreaVariation, errors.SamplingVariation, errors.UreaFloor, plasma.Urea),
            ObservedQuantity.SodiumToPlasma => (errors.SodiumVariation, 0, default, plasma.Sodium),
            ObservedQuantity.GlucoseToInitial or ObservedQuantity.GlucoseToFresh =>
                (errors.GlucoseVariation, errors.SamplingVariation, errors.GlucoseFloor, exchange.Dwell.Solution.Glucose),
            ObservedQuantity.AlbuminToPlasma or ObservedQuantity.ImmunoglobulinGToPlasma =>
                (errors.ProteinVariation, errors.SamplingVariation, default, plasma.Sodium),
            _ => default,
        };
        if (row.Observation.Quantity == ObservedQuantity.NetUltrafiltrationMilliliters)
        {
            return (errors.VolumeDeviation.Milliliters, 0);
        }

        var ofFloor = floor / (denominator * row.Predicted);
        return (
            Math.Sqrt(variation * variation + sampling * sampling + ofFloor * ofFloor),
            options.ExactDenominators || row.Observation.Quantity == ObservedQuantity.GlucoseToFresh ? 0 : variation);
    }

    private Vector<double>? Slopes(Vector<double> point)
    {
        const double step = 0.05;
        try
        {
            return Vector<double>.Build.Dense(membrane.Count, j => (Of(j, step) - Of(j, -step)) / (2 * step));
        }
        catch (IntegrationException)
        {
            return null;
        }

        double Of(int j, double by)
        {
            var moved = point.ToArray();
            moved[j] += by;
            return target.Of(membrane.Membrane(moved));
        }
    }

    private sealed record At(IReadOnlyList<Sensitivity> Rows, Vector<double> TargetSlopes);
}
