namespace Transport.Analysis;

/// <summary>Where an estimate comes from, by how far the data narrowed the prior.</summary>
public enum ParameterVerdict
{
    /// <summary>The data decide: at most half of the prior's spread is left.</summary>
    FromData,

    /// <summary>Data and population both count: between half and three quarters of the prior's spread is left.</summary>
    FromBoth,

    /// <summary>The data say little about it: more than three quarters of the prior's spread is left.</summary>
    FromPrior,
}
