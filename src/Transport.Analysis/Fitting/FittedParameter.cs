namespace Transport.Analysis;

/// <summary>One estimated parameter with its uncertainty and its prior, per 1.73 m² of body surface where it is extensive.</summary>
public sealed record FittedParameter
{
    /// <summary>Which.</summary>
    public required MembraneParameter Parameter { get; init; }

    /// <summary>What a table calls it.</summary>
    public string Name => Parameter.Name();

    /// <summary>Its unit; empty where it has none.</summary>
    public string Unit => Parameter.Unit();

    /// <summary>The estimate, in the unit.</summary>
    public required double Value { get; init; }

    /// <summary>Lower end of the 90 % interval.</summary>
    public required double Low { get; init; }

    /// <summary>Upper end of the 90 % interval.</summary>
    public required double High { get; init; }

    /// <summary>Standard error of its logarithm (log odds of a share): 0.10 is about 10 %.</summary>
    public required double LogStandardError { get; init; }

    /// <summary>Median of the prior, in the unit.</summary>
    public required double PriorMedian { get; init; }

    /// <summary>Standard deviation of the prior's logarithm (log odds of a share).</summary>
    public required double PriorLogDeviation { get; init; }

    /// <summary>Share of the prior's spread that is left: 0 (the data decide) to 1 (the prior is returned).</summary>
    public double SpreadLeft => Math.Min(1, LogStandardError / PriorLogDeviation);

    /// <summary>Where the estimate comes from.</summary>
    public ParameterVerdict Verdict => Contraction.Of(SpreadLeft);
}
