namespace Transport.Analysis;

/// <summary>One estimated number of a membrane with its uncertainty and its prior, per 1.73 m² of body surface where it is extensive.</summary>
public abstract record ParameterEstimate
{
    private protected ParameterEstimate(string name, string unit, double perUnit, Coordinate coordinate, double u, double error)
    {
        Name = name;
        Unit = unit;
        Value = perUnit * coordinate.Value(u);
        Low = perUnit * coordinate.Value(u - NormalDistribution.Quantile95 * error);
        High = perUnit * coordinate.Value(u + NormalDistribution.Quantile95 * error);
        LogStandardError = coordinate.Spread * error;
        PriorMedian = perUnit * coordinate.Value(0.0);
        PriorLogDeviation = coordinate.Spread;
    }

    /// <summary>What a table calls it.</summary>
    public string Name { get; }

    /// <summary>Its unit; empty where it has none.</summary>
    public string Unit { get; }

    /// <summary>The estimate, in the unit.</summary>
    public double Value { get; }

    /// <summary>Lower end of the 90 % interval.</summary>
    public double Low { get; }

    /// <summary>Upper end of the 90 % interval.</summary>
    public double High { get; }

    /// <summary>Standard error of its logarithm (log odds of a share): 0.10 is about 10 %.</summary>
    public double LogStandardError { get; }

    /// <summary>Median of the prior, in the unit.</summary>
    public double PriorMedian { get; }

    /// <summary>Standard deviation of the prior's logarithm (log odds of a share).</summary>
    public double PriorLogDeviation { get; }

    /// <summary>Share of the prior's spread that is left: 0 (the data decide) to 1 (the prior is returned).</summary>
    public double SpreadLeft => Math.Min(1, LogStandardError / PriorLogDeviation);

    /// <summary>Where the estimate comes from.</summary>
    public ParameterVerdict Verdict => Contraction.Of(SpreadLeft);
}
