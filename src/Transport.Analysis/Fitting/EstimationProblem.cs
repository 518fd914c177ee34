namespace Transport.Analysis;

/// <summary>What is estimated from what: shared by the search for an optimum and the draws around it.</summary>
/// <param name="Exchanges">What was observed.</param>
/// <param name="Model">The model of the membrane: what is free of it, and its prior.</param>
/// <param name="UsesPrior">Whether that prior counts. A residual volume always keeps its own.</param>
/// <param name="StudentDegreesOfFreedom">Of the errors; null: Gaussian.</param>
internal record EstimationProblem(
    IReadOnlyList<ObservedExchange> Exchanges, IMembraneModel Model, bool UsesPrior, double? StudentDegreesOfFreedom)
{
    /// <summary>The nights beside the exchanges, which pores alone can be asked for; null: none.</summary>
    public NightSurface? Nights { get; init; }

    /// <summary>Whose membrane it is.</summary>
    public Patient Patient => Exchanges.Count > 0 ? Exchanges[0].Patient : Nights!.Nights.Patient;

    /// <summary>The residual volumes of the exchanges as coordinates; they stand after the membrane's.</summary>
    public Coordinate[] ResidualVolumes { get; } =
        [.. Exchanges.Select(exchange => Coordinate.OfPositive(exchange.Dwell.Residual.Volume.Milliliters, exchange.ResidualLogDeviation))];

    /// <summary>Free coordinates.</summary>
    public int Dimension => Model.Count + ResidualVolumes.Length;

    /// <summary>Minus twice the log-density of one whitened residual, up to a constant: its square, or Student's at the same standard deviation.</summary>
    public T Deviance<T>(T residual)
        where T : struct, ILane<T> => StudentDegreesOfFreedom is { } degrees
            ? (degrees + 1) * T.Log(T.MultiplyAdd(residual, 1 / (degrees - 2) * residual, T.Of(1)))
            : residual * residual;

    /// <summary>A residual whose square is the deviance, and its derivative by the whitened one: what least squares need for any error.</summary>
    public (double Value, double Slope) Root(double residual)
    {
        if (StudentDegreesOfFreedom is not { } degrees)
        {
            return (residual, 1);
        }

        // Near zero both are those of a Gaussian with the curvature of the t there.
        var atZero = Math.Sqrt((degrees + 1) / (degrees - 2));
        var root = Math.CopySign(Math.Sqrt(Deviance(Real.Of(residual)).Value), residual);
        return Math.Abs(residual) < 1e-4
            ? (atZero * residual, atZero)
            : (root, (degrees + 1) * residual / ((degrees - 2 + residual * residual) * root));
    }
}
