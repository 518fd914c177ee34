namespace Transport;

/// <summary>How a regimen is simulated.</summary>
/// <remarks>How the contact area depends on the volume is the membrane's own affair (<see cref="ThreePoreMembrane.AreaLaw"/>).</remarks>
public sealed record RegimenOptions
{
    /// <summary>How carefully to integrate; the default is 1e-7. At 1e-5 a day's ultrafiltration is within 0.01 mL (measured).</summary>
    public IntegrationOptions Integration { get; init; } = new() { RelativeTolerance = 1e-7 };

    /// <summary>Which solutes to follow. Of all beyond the small panel plasma has to be stated.</summary>
    public SolutePanel Panel { get; init; } = SolutePanel.Small;

    /// <summary>
    /// Solutes with a body behind the membrane, whose plasma rises and falls; null: plasma stays at the patient's level. With a body a day takes
    /// several times longer to simulate and is integrated to 1e-9 at least.
    /// </summary>
    public BodyKinetics? Body { get; init; }

    /// <summary>Which fills start the initial transient.</summary>
    public TransientUse Transient { get; init; } = TransientUse.FirstFill;

    /// <summary>
    /// Volume that raises the pressure by 1 mmHg at night, lying, per 1.73 m²; the day has the membrane's own. Null: the membrane's own at night too.
    /// </summary>
    /// <value>680 mL, from 2.0 cmH2O per litre supine (Twardowski et al., Kidney Int 1983;23:64-70, read).</value>
    /// <exception cref="ArgumentOutOfRangeException">Zero or negative.</exception>
    public Volume? SupineVolumePerPressure
    {
        get;
        init => field = value is { } volume ? Require.MoreThanZero(volume, nameof(SupineVolumePerPressure)) : null;
    }
    = Volume.FromMilliliters(680);

    /// <summary>
    /// Fluid before the first fill of a single night and day, which need not end as it began; null: the steady rhythm, in which every day
    /// ends as it began. With a body, plasma then starts at the patient's level, and every generation has to be given.
    /// </summary>
    /// <exception cref="ArgumentOutOfRangeException">Its volume is not between 1 mL and 10 L.</exception>
    public ResidualFluid? FirstNight
    {
        get;
        init
        {
            if (value is not null)
            {
                Require.InRange(value.Volume.Milliliters, 1, 10_000, "mL", nameof(FirstNight));
            }

            field = value;
        }
    }

    /// <summary>Interval of the timeline; null: none is kept.</summary>
    /// <exception cref="ArgumentOutOfRangeException">Zero or negative.</exception>
    public TimeSpan? Timeline
    {
        get;
        init => field = value is { } interval ? Require.MoreThanZero(interval, nameof(Timeline)) : null;
    }

    /// <summary>Pressure against volume for the timeline; null: a population's, not this patient's.</summary>
    public CavityPressure? Pressure { get; init; }

    /// <summary>Sodium's calibration.</summary>
    public SodiumCalibration Sodium { get; init; } = SodiumCalibration.Published;

    /// <summary>Fluid removal in 24 h, urine included, above which the outcome says so; null: not known.</summary>
    public Volume? LargestFluidRemoval { get; init; }

    /// <summary>The defaults.</summary>
    public static RegimenOptions Default { get; } = new();
}
