namespace Transport;

/// <summary>One dwell with an instantaneous fill: what goes in, on top of what, for how long.</summary>
public sealed record Dwell
{
    /// <summary>A dwell.</summary>
    /// <exception cref="ArgumentException">The solution is neither a glucose nor an icodextrin solution.</exception>
    /// <exception cref="ArgumentOutOfRangeException">The fill or the duration is not positive, or the duration is above 48 h.</exception>
    public Dwell(DialysisSolution solution, Volume fill, TimeSpan duration, ResidualFluid residual)
    {
        Solution = solution;
        Fill = fill;
        Duration = duration;
        Residual = residual;
    }

    /// <summary>The fresh solution.</summary>
    /// <exception cref="ArgumentException">It is neither a glucose nor an icodextrin solution.</exception>
    public DialysisSolution Solution
    {
        get;
        init
        {
            ArgumentNullException.ThrowIfNull(value, nameof(Solution));
            field = value.Agent is OsmoticAgent.Glucose or OsmoticAgent.Icodextrin
                ? value
                : throw new ArgumentException($"Only glucose and icodextrin solutions can be simulated, and {value.Name} is neither.", nameof(Solution));
        }
    }

    /// <summary>Volume instilled.</summary>
    /// <exception cref="ArgumentOutOfRangeException">Zero or negative.</exception>
    public Volume Fill
    {
        get;
        init => field = Require.MoreThanZero(value, nameof(Fill));
    }

    /// <summary>From the end of instillation.</summary>
    /// <exception cref="ArgumentOutOfRangeException">Zero, negative or above 48 h.</exception>
    public TimeSpan Duration
    {
        get;
        init
        {
            Require.InRange(value.TotalMinutes, 1e-3, 48 * 60, "min", nameof(Duration));
            field = value;
        }
    }

    /// <summary>What was in the cavity before.</summary>
    public ResidualFluid Residual
    {
        get;
        init
        {
            ArgumentNullException.ThrowIfNull(value, nameof(Residual));
            field = value;
        }
    }
}
