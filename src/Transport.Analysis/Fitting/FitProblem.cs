using MathNet.Numerics.LinearAlgebra;
using MathNet.Numerics.LinearAlgebra.Double;

namespace Transport.Analysis;

/// <summary>A fit as least squares: whitened residuals and their exact derivatives in standardised log coordinates.</summary>
/// <remarks>
/// Coordinates: u = (ln p − ln median) / log-deviation, so the prior is a unit Gaussian and its rows of the residual are u itself; every positive
/// parameter is unbounded and of order one. In the order of <see cref="MembraneParameter"/>, then the residual volume of each exchange.
/// Rows: the fitted observations, whitened with the covariance diag(own²) + shared sharedᵀ of each quantity; then the prior.
/// </remarks>
internal sealed class FitProblem : ILeastSquaresProblem
{
    public const int MembraneParameterCount = 4;

    private readonly ThreePoreMembrane center;
    private readonly Coordinate[] coordinates;
    private readonly ExchangeModel[] exchanges;

    public FitProblem(IReadOnlyList<ObservedExchange> observed, ThreePoreMembrane center, PopulationPrior prior, IntegrationOptions integration)
    {
        this.center = center;
        double[] medians =
        [
            center.DiffusionArea.Centimeters,
            center.GlucosePermeabilityScale,
            center.UltrafiltrationCoefficient.MillilitersPerMinutePerMillimeterOfMercury,
            center.TransientAmplitude,
        ];
        coordinates =
        [
            .. medians.Zip(Enum.GetValues<MembraneParameter>().Select(prior.LogDeviation), Coordinate.OfPositive),
            .. observed.Select(exchange => Coordinate.OfPositive(exchange.Dwell.Residual.Volume.Milliliters, exchange.ResidualLogDeviation)),
        ];
        exchanges = [.. observed.Select(exchange => new ExchangeModel(exchange, integration))];
        ParameterCount = coordinates.Length;
        ObservationCount = exchanges.Sum(exchange => exchange.FittedCount);
    }

    public int ParameterCount { get; }

    public int ObservationCount { get; }

    public int RowCount => ObservationCount + ParameterCount;

    /// <summary>Dwells integrated so far.</summary>
    public int Evaluations { get; private set; }

    /// <summary>A parameter's value at a coordinate.</summary>
    public double Value(int parameter, double coordinate) => coordinates[parameter].Value(coordinate);

    public double LogDeviation(int parameter) => coordinates[parameter].Spread;

    /// <summary>The membrane at the coordinates.</summary>
    public ThreePoreMembrane Membrane(Vector<double> u) => center with
    {
        DiffusionArea = DiffusionArea.FromCentimeters(Value(0, u[0])),
        GlucosePermeabilityScale = Value(1, u[1]),
        UltrafiltrationCoefficient = HydraulicConductance.FromMillilitersPerMinutePerMillimeterOfMercury(Value(2, u[2])),
        TransientAmplitude = Value(3, u[3]),
    };

    /// <summary>Writes whitened residuals (predicted − observed; then the prior's) and their derivatives by the coordinates.</summary>
    /// <returns>Whether the dwells could be integrated there.</returns>
    public bool Evaluate(Vector<double> u, Vector<double> residuals, Matrix<double> slopes)
    {
        residuals.Clear();
        slopes.Clear();
        var free = new FreeParameters<Dual>
        {
            DiffusionArea = Parameter(0, u[0], 0),
            GlucosePermeabilityScale = Parameter(1, u[1], 1),
            UltrafiltrationCoefficient = Parameter(2, u[2], 2),
            LymphaticRemoval = Dual.Of(center.LymphaticRemoval.MillilitersPerMinute),
            TransientAmplitude = Parameter(3, u[3], 3),
        };
        var row = 0;
        try
        {
            for (var e = 0; e < exchanges.Length; e++)
            {
                var own = MembraneParameterCount + e;
                Evaluations++;
                var exchange = exchanges[e];
                var whitened = exchange.WhitenedResiduals(center, free, Parameter(own, u[own], MembraneParameterCount));
                foreach (var value in whitened)
                {
                    residuals[row] = value.Value;
                    for (var j = 0; j < MembraneParameterCount; j++)
                    {
                        slopes[row, j] = value.Slopes[j];
                    }

                    slopes[row, own] = value.Slopes[MembraneParameterCount];
                    row++;
                }
            }
        }
        catch (IntegrationException)
        {
            return false;
        }

        for (var j = 0; j < ParameterCount; j++, row++)
        {
            residuals[row] = u[j];
            slopes[row, j] = 1;
        }

        return true;
    }

    /// <summary>Every observation, fitted or not, beside its prediction.</summary>
    public IReadOnlyList<FitResidual> Residuals(Vector<double> u)
    {
        var free = FreeParameters<Dual>.From(Membrane(u));
        return
        [
            .. exchanges.SelectMany((exchange, e) => exchange.Predictions(
                center, free, Dual.Of(Value(MembraneParameterCount + e, u[MembraneParameterCount + e])))),
        ];
    }

    private Dual Parameter(int parameter, double coordinate, int slot)
    {
        var value = Value(parameter, coordinate);
        return new(value, Dual.Parameter(0, slot).Slopes * coordinates[parameter].Slope(value));
    }

    /// <summary>One exchange: its dwell, its observations and how they are whitened.</summary>
    private sealed class ExchangeModel
    {
        private readonly ObservedExchange exchange;
        private readonly DwellKernel<Dual> kernel;
        private readonly double[] minutes;
        private readonly Dual[] states;
        private readonly List<(Observation[] Observations, Matrix<double> Whitening)> groups = [];

        public ExchangeModel(ObservedExchange exchange, IntegrationOptions integration)
        {
            this.exchange = exchange;
            kernel = new(exchange.Dwell, exchange.Patient.Plasma, SolutePanel.Small, integration);
            minutes = [.. exchange.Observations.Select(o => o.Time.TotalMinutes).Append(0).Append(exchange.Dwell.Duration.TotalMinutes).Distinct().Order()];
            states = new Dual[minutes.Length * kernel.Dimension];
            foreach (var group in exchange.Observations.Where(o => o.IsFitted).GroupBy(o => o.Quantity))
            {
                var observations = group.ToArray();
                var covariance = DenseMatrix.Create(observations.Length, observations.Length, (i, j) =>
                    observations[i].SharedDeviation * observations[j].SharedDeviation
                    + (i == j ? observations[i].OwnDeviation * observations[i].OwnDeviation : 0));
                groups.Add((observations, covariance.Cholesky().Factor.Inverse()));
            }
        }

        public int FittedCount => groups.Sum(group => group.Observations.Length);

        public IEnumerable<Dual> WhitenedResiduals(ThreePoreMembrane membrane, in FreeParameters<Dual> free, Dual residualVolume)
        {
            kernel.Run(membrane, free, residualVolume, minutes, states);
            return Whitened();

            IEnumerable<Dual> Whitened()
            {
                foreach (var (observations, whitening) in groups)
                {
                    var raw = observations.Select(o => Predicted(o) - Dual.Of(o.Value)).ToArray();
                    for (var i = 0; i < raw.Length; i++)
                    {
                        var sum = Dual.Of(0);
                        for (var j = 0; j <= i; j++)
                        {
                            sum += whitening[i, j] * raw[j];
                        }

                        yield return sum;
                    }
                }
            }
        }

        public IEnumerable<FitResidual> Predictions(ThreePoreMembrane membrane, in FreeParameters<Dual> free, Dual residualVolume)
        {
            kernel.Run(membrane, free, residualVolume, minutes, states);
            return [.. exchange.Observations.Select(o => new FitResidual(o, Predicted(o).Value))];
        }

        private Dual Predicted(Observation observation)
        {
            var at = Array.BinarySearch(minutes, observation.Time.TotalMinutes);
            var plasma = exchange.Patient.Plasma;
            return observation.Quantity switch
            {
                ObservedQuantity.CreatinineToPlasma => (1 / plasma.Creatinine.MillimolesPerLiter) * Concentration(at, SolutePanel.Creatinine),
                ObservedQuantity.UreaToPlasma => (1 / plasma.Urea.MillimolesPerLiter) * Concentration(at, SolutePanel.Urea),
                ObservedQuantity.SodiumToPlasma => (1 / plasma.Sodium.MillimolesPerLiter) * Concentration(at, SolutePanel.Sodium),
                ObservedQuantity.GlucoseToInitial => Concentration(at, SolutePanel.Glucose) / Concentration(0, SolutePanel.Glucose),
                ObservedQuantity.GlucoseToFresh =>
                    (1 / exchange.Dwell.Solution.Glucose.MillimolesPerLiter) * Concentration(at, SolutePanel.Glucose),
                ObservedQuantity.NetUltrafiltrationMilliliters => states[at * kernel.Dimension] - states[0],
                _ => throw new InvalidOperationException($"No prediction is known for {observation.Quantity}."),
            };
        }

        private Dual Concentration(int at, int solute) => states[at * kernel.Dimension + 1 + solute] / states[at * kernel.Dimension];
    }
}
