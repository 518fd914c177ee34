using MathNet.Numerics.LinearAlgebra.Double;

namespace Transport.Analysis;

/// <summary>One exchange over a lane: its dwell, its observations and how they are whitened.</summary>
/// <remarks>
/// With derivatives a fit asks it, with four points at once a sampler. Whitening: the inverse of the Cholesky factor of diag(own²) + shared sharedᵀ of each
/// quantity.
/// </remarks>
internal sealed class ExchangeModel<T>
    where T : struct, ILane<T>
{
    private readonly ObservedExchange exchange;
    private readonly IModelDwell<T> dwell;
    private readonly SolutePanel panel;
    private readonly double[] minutes;
    private readonly T[] states;
    private readonly List<(Observation[] Observations, double[,] Whitening)> groups = [];
    private readonly T[] raw;

    public ExchangeModel(ObservedExchange exchange, IMembraneModel model)
    {
        this.exchange = exchange;
        panel = exchange.Observations.Any(observation => observation.Quantity.IsOfProtein()) ? SolutePanel.Full : SolutePanel.Small;
        dwell = model.Dwell<T>(exchange, panel);
        minutes = [.. exchange.Observations.Select(o => o.Time.TotalMinutes).Append(0).Append(exchange.Dwell.Duration.TotalMinutes).Distinct().Order()];
        states = new T[minutes.Length * dwell.Dimension];
        foreach (var group in exchange.Observations.Where(o => o.IsFitted).GroupBy(o => o.Quantity))
        {
            var observations = group.ToArray();
            var covariance = DenseMatrix.Create(observations.Length, observations.Length, (i, j) =>
                observations[i].SharedDeviation * observations[j].SharedDeviation
                + (i == j ? observations[i].OwnDeviation * observations[i].OwnDeviation : 0));
            groups.Add((observations, covariance.Cholesky().Factor.Inverse().ToArray()));
        }

        FittedCount = groups.Sum(group => group.Observations.Length);
        raw = new T[FittedCount];
    }

    /// <summary>Observations that are fitted.</summary>
    public int FittedCount { get; }

    /// <summary>The fitted observations of each quantity, in the order of the rows, and what whitens them.</summary>
    public IReadOnlyList<(Observation[] Observations, double[,] Whitening)> Groups => groups;

    /// <summary>Integrates the dwell at a point of the membrane's coordinates.</summary>
    /// <exception cref="IntegrationException">It cannot be.</exception>
    public void Run(ReadOnlySpan<T> point, T residualVolume, IntegrationOptions integration) => dwell.Run(point, residualVolume, minutes, states, integration);

    /// <summary>Writes the whitened residuals (predicted − observed) of the dwell that was run last.</summary>
    public void Whiten(Span<T> into)
    {
        var row = 0;
        foreach (var (observations, whitening) in groups)
        {
            for (var i = 0; i < observations.Length; i++, row++)
            {
                raw[i] = Miss(observations[i]);
                var sum = whitening[i, 0] * raw[0];
                for (var j = 1; j <= i; j++)
                {
                    sum += whitening[i, j] * raw[j];
                }

                into[row] = sum;
            }
        }
    }

    // Errors of ratios grow with the truth, not with what was read: logarithms are compared, to the scale of the observation. In plain differences a value read too
    // low would seem the better known.
    private T Miss(Observation observation) => observation.Quantity == ObservedQuantity.NetUltrafiltrationMilliliters
        ? Predicted(observation) - T.Of(observation.Value)
        : observation.Value * (T.Log(Predicted(observation)) - T.Of(Math.Log(observation.Value)));

    /// <summary>What the dwell that was run last gives for an observation, in its unit.</summary>
    public T Predicted(Observation observation)
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
            ObservedQuantity.AlbuminToPlasma => Concentration(at, panel.IndexOf(Solutes.Albumin)),
            ObservedQuantity.ImmunoglobulinGToPlasma => Concentration(at, panel.IndexOf(Solutes.ImmunoglobulinG)),
            ObservedQuantity.NetUltrafiltrationMilliliters => states[at * dwell.Dimension] - states[0],
            _ => throw new InvalidOperationException($"No prediction is known for {observation.Quantity}."),
        };
    }

    /// <summary>Every observation beside its prediction, of the dwell that was run last.</summary>
    public IReadOnlyList<FitResidual> Residuals(Func<T, double> value) => [.. exchange.Observations.Select(o => new FitResidual(o, value(Predicted(o))))];

    private T Concentration(int at, int solute) => states[at * dwell.Dimension + 1 + solute] / states[at * dwell.Dimension];
}
