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

    /// <summary>The largest volume that may be in the cavity; null: one and a half times the largest fill of the regimen (choice).</summary>
    public Volume? LargestVolume { get; init; }

    /// <summary>The defaults.</summary>
    public static RegimenSettings Default { get; } = new();
}
