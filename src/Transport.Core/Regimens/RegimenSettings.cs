namespace Transport;

/// <summary>What belongs to the patient's belly, catheter and machine and not to the prescription.</summary>
public sealed record RegimenSettings
{
    /// <summary>Residual volume per 1.73 m² where none is given, mL: adults have 200 to 300 mL (memory).</summary>
    internal const double UsualResidual = 250;

    /// <summary>Flow of a fill; 150 to 250 mL/min by gravity or pump (memory).</summary>
    /// <exception cref="ArgumentOutOfRangeException">Not between 10 and 1000 mL/min.</exception>
    public FlowRate FillFlow
    {
        get;
        init
        {
            Require.InRange(value.MillilitersPerMinute, 10, 1000, "mL/min", nameof(FillFlow));
            field = value;
        }
    }
    = FlowRate.FromMillilitersPerMinute(200);

    /// <summary>How the cavity runs out.</summary>
    public DrainProfile Drain { get; init; } = DrainProfile.Default;

    /// <summary>
    /// Time after which a drain is ended whatever is left: what a slow catheter then keeps is carried into the next cycle. Null: every drain goes on
    /// to its end.
    /// </summary>
    /// <exception cref="ArgumentOutOfRangeException">Not between 1 and 240 min.</exception>
    public TimeSpan? LongestDrain
    {
        get;
        init
        {
            if (value is { } time)
            {
                Require.InRange(time.TotalMinutes, 1, 240, "min", nameof(LongestDrain));
            }

            field = value;
        }
    }

    /// <summary>
    /// Volume of the line between machine and patient, where spent fluid stays after a drain and runs back in with the next fill, while as much of
    /// the fresh fluid never reaches the cavity; 15 to 35 mL (weak memory), by default none.
    /// </summary>
    /// <exception cref="ArgumentOutOfRangeException">Not between 0 and 200 mL.</exception>
    public Volume LineVolume
    {
        get;
        init
        {
            Require.InRange(value.Milliliters, 0, 200, "mL", nameof(LineVolume));
            field = value;
        }
    }

    /// <summary>Volume left after a drain; null: 250 mL per 1.73 m² of the patient's surface.</summary>
    /// <exception cref="ArgumentOutOfRangeException">Not between 1 mL and 5 L.</exception>
    public Volume? Residual
    {
        get;
        init
        {
            if (value is { } volume)
            {
                Require.InRange(volume.Milliliters, 1, 5000, "mL", nameof(Residual));
            }

            field = value;
        }
    }

    /// <summary>The largest volume that may be instilled at a time, night or day; null: not known, nothing is checked.</summary>
    public Volume? LargestFill { get; init; }

    /// <summary>The largest volume that may be in the cavity; null: one and a half times the largest fill of the regimen, whatever the size of the person (choice). Of a small person, or after large fills, state it.</summary>
    public Volume? LargestVolume { get; init; }

    /// <summary>
    /// How long a drain is planned to take from one volume to another, mL, where a complete one would go on to the residual, and what it leaves.
    /// </summary>
    internal (double Minutes, double Left) DrainOf(double start, double end, double residual)
    {
        var minutes = Drain.MinutesFor(start, end, residual);
        return LongestDrain is { TotalMinutes: var longest } && minutes > longest
            ? (longest, Drain.VolumeAfter(longest, start, residual))
            : (minutes, end);
    }

    /// <summary>The defaults.</summary>
    public static RegimenSettings Default { get; } = new();
}
