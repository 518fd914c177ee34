namespace Transport.Studies;

/// <summary>What makes the data that models are compared on.</summary>
public enum ComparisonWorld
{
    /// <summary>Three kinds of pores; sodium is measured.</summary>
    ThreePores,

    /// <summary>The same people and tests; sodium is not measured.</summary>
    ThreePoresWithoutSodium,

    /// <summary>Pores without the ultrasmall ones; sodium is measured.</summary>
    NoUltrasmallPores,

    /// <summary>One barrier without pores; sodium is measured.</summary>
    OneBarrier,
}
