namespace Transport.Studies;

/// <summary>One test of a virtual person, and how well each of three models would have foretold it.</summary>
public sealed record ModelComparisonRow
{
    /// <summary>Number of the test.</summary>
    public required int Test { get; init; }

    /// <summary>What made the data.</summary>
    public required ComparisonWorld World { get; init; }

    /// <summary>Log predictive density, each datum left out, of three pores less that of pores without the ultrasmall ones; empty where a fit found no optimum.</summary>
    public required double? LeadOverNoUltrasmall { get; init; }

    /// <summary>The same of three pores less that of one barrier.</summary>
    public required double? LeadOverBarrier { get; init; }

    /// <summary>What the data say of three pores.</summary>
    public required ModelVerdict? ThreePores { get; init; }

    /// <summary>What they say of pores without the ultrasmall ones.</summary>
    public required ModelVerdict? NoUltrasmallPores { get; init; }

    /// <summary>What they say of one barrier.</summary>
    public required ModelVerdict? OneBarrier { get; init; }

    /// <summary>The model whose fit found no optimum, so that the test is not compared; empty: none.</summary>
    public required string WithoutOptimum { get; init; }
}
