namespace Transport;

/// <summary>One dwell with an instantaneous fill: what goes in, on top of what, for how long.</summary>
public sealed record Dwell
{
    /// <summary>A dwell.</summary>
    /// <exception cref="ArgumentOutOfRangeException">The fill or the duration is not positive, or the duration is above 48 h.</exception>
    public Dwell(DialysisSolution solution, Volume fill, TimeSpan duration, ResidualFluid residual)
    {
        ArgumentNullException.ThrowIfNull(solution);
        ArgumentNullException.ThrowIfNull(residual);
        Require.Positive(fill.Milliliters, "mL", nameof(fill));
        Require.InRange(duration.TotalMinutes, 1e-3, 48 * 60, "min", nameof(duration));
        if (solution.Agent != OsmoticAgent.Glucose)
        {
            throw new ArgumentException($"Only glucose solutions can be simulated, and {solution.Name} is none.", nameof(solution));
        }

        Solution = solution;
        Fill = fill;
        Duration = duration;
        Residual = residual;
    }

    /// <summary>The fresh solution.</summary>
    public DialysisSolution Solution { get; init; }

    /// <summary>Volume instilled.</summary>
    public Volume Fill { get; init; }

    /// <summary>From the end of instillation.</summary>
    public TimeSpan Duration { get; init; }

    /// <summary>What was in the cavity before.</summary>
    public ResidualFluid Residual { get; init; }
}
