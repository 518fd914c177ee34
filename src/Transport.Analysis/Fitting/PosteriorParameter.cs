namespace Transport.Analysis;

/// <summary>One parameter of a membrane, given the data: what its draws say, and whether the draws may be believed. Per 1.73 m² where it is extensive.</summary>
public sealed record PosteriorParameter
{
    /// <summary>Which.</summary>
    public required MembraneParameter Parameter { get; init; }

    /// <summary>What a table calls it.</summary>
    public string Name => Parameter.Name();

    /// <summary>Its unit; empty where it has none.</summary>
    public string Unit => Parameter.Unit();

    /// <summary>Median and 90 % interval of the draws, in the unit.</summary>
    public required Band<double> Posterior { get; init; }

    /// <summary>Median and 90 % interval before the data.</summary>
    public required Band<double> Prior { get; init; }

    /// <summary>Standard deviation of the draws over the prior's, both on the parameter's scale (logarithm, or log odds of a share).</summary>
    public required double SpreadLeft { get; init; }

    /// <summary>Ratio of the spread of all draws to that within half-chains; under 1.01 where the four chains tell one story.</summary>
    public required double RHat { get; init; }

    /// <summary>Independent draws that the middle is worth.</summary>
    public required double BulkEffectiveDraws { get; init; }

    /// <summary>Independent draws that the 5 % and 95 % quantiles are worth, the smaller.</summary>
    public required double TailEffectiveDraws { get; init; }

    /// <summary>Whether the data decide it, narrow it, or say little about it.</summary>
    public ParameterVerdict Verdict => Contraction.Of(SpreadLeft);
}
