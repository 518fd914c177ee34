namespace Transport;

/// <summary>One exchange: a fill of one solution, its dwell, its drain. Nights and days are composed of them.</summary>
public sealed record Exchange
{
    /// <summary>An exchange.</summary>
    /// <param name="solution">The fresh solution.</param>
    /// <param name="fill">Volume instilled.</param>
    /// <param name="dwellTime">From the end of the fill to the start of the drain; null: an equal share of what the night or day leaves.</param>
    /// <exception cref="ArgumentOutOfRangeException">The fill or a given dwell time is not positive.</exception>
    public Exchange(DialysisSolution solution, Volume fill, TimeSpan? dwellTime = null)
    {
        ArgumentNullException.ThrowIfNull(solution);
        Solution = solution;
        Fill = fill;
        DwellTime = dwellTime;
    }

    /// <summary>The fresh solution.</summary>
    public DialysisSolution Solution { get; init; }

    /// <summary>Volume instilled.</summary>
    /// <exception cref="ArgumentOutOfRangeException">Zero or negative.</exception>
    public Volume Fill
    {
        get;
        init
        {
            Require.Positive(value.Milliliters, "mL", nameof(Fill));
            field = value;
        }
    }

    /// <summary>From the end of the fill to the start of the drain; null: an equal share of what the night or day leaves.</summary>
    /// <exception cref="ArgumentOutOfRangeException">Zero or negative.</exception>
    public TimeSpan? DwellTime
    {
        get;
        init
        {
            if (value is { } time)
            {
                Require.Positive(time.TotalMinutes, "min", nameof(DwellTime));
            }

            field = value;
        }
    }

    /// <summary>How much of it is drained at its end; null: everything but the residual.</summary>
    public PartialDrain? PartialDrain { get; init; }
}
