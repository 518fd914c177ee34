namespace Transport.Studies;

/// <summary>One random problem, answered by the search and by brute force.</summary>
public sealed record AgreementRow
{
    /// <summary>Number of the problem.</summary>
    public required int Problem { get; init; }

    /// <summary>How many regimens the grid holds.</summary>
    public required int Candidates { get; init; }

    /// <summary>How many draws of the membrane.</summary>
    public required int Draws { get; init; }

    /// <summary>The bounds, in words.</summary>
    public required string Bounds { get; init; }

    /// <summary>How many regimens meet everything, by brute force.</summary>
    public required int Feasible { get; init; }

    /// <summary>How many of them no other beats, by brute force.</summary>
    public required int Unbeaten { get; init; }

    /// <summary>How many the search offers after ties are thinned.</summary>
    public required int Offered { get; init; }

    /// <summary>Whether search and brute force offer the same.</summary>
    public required bool Agrees { get; init; }

    /// <summary>Where nothing meets the goals: the goal that the search names.</summary>
    public required string Unmet { get; init; }
}
