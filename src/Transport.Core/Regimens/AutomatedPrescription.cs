using System.Collections.Immutable;

namespace Transport;

/// <summary>What the prescription of an automated night states; the rest follows by arithmetic.</summary>
/// <remarks>
/// <para>Of fluid in all, volume per cycle and cycles two are enough: N = ⌊(W − L)/F⌋, F = (W − L)/N, or W = N F + L; if all three are stated they have
/// to agree: what is over has to be less than a cycle, unless it is shared out. With a tidal share p the first fill is full and the others p F: N = 1 + ⌊(W − L − F)/(p F)⌋. The dwell time is what fills and drains
/// leave of the night.</para>
/// <para>It may state what cannot be: <see cref="Findings"/> says all that stands against it, with the numbers, and
/// <see cref="ToRegimen"/> refuses it.</para>
/// </remarks>
public sealed record AutomatedPrescription
{
    /// <summary>A prescription for a night.</summary>
    /// <param name="nightLength">From the start of the first fill to the end of the last drain.</param>
    /// <param name="solution">The solution of the cycles.</param>
    public AutomatedPrescription(TimeSpan nightLength, DialysisSolution solution)
    {
        ArgumentNullException.ThrowIfNull(solution);
        NightLength = nightLength;
        Solution = solution;
    }

    /// <summary>From the start of the first fill to the end of the last drain; the initial drain comes before, the day fill after.</summary>
    public TimeSpan NightLength { get; init; }

    /// <summary>The solution of the cycles.</summary>
    public DialysisSolution Solution { get; init; }

    /// <summary>Everything that is infused in 24 h, day fill included; null: it follows.</summary>
    public Volume? FluidInAll { get; init; }

    /// <summary>The fill of a cycle, of a tidal night that of the first; null: it follows.</summary>
    public Volume? VolumePerCycle { get; init; }

    /// <summary>How many cycles, the day fill not counted; null: it follows.</summary>
    public int? Cycles { get; init; }

    /// <summary>What stays in for the day; null: a dry day.</summary>
    public DayFill? DayFill { get; init; }

    /// <summary>The part of the fill that is drained and refilled, 0.05 to 1; null: every drain is complete.</summary>
    public double? TidalShare { get; init; }

    /// <summary>Ultrafiltration expected of the night, added to the tidal drains in equal parts; zero: none is added.</summary>
    public Volume ExpectedUltrafiltration { get; init; }

    /// <summary>Every how many tidal cycles the drain is complete; null: only the last.</summary>
    public int? CompleteDrainEvery { get; init; }

    /// <summary>What happens to fluid that does not make a whole cycle.</summary>
    public SpareFluid Spare { get; init; }

    /// <summary>The bags that are hung; none: not stated.</summary>
    /// <exception cref="ArgumentException">The list was never made.</exception>
    public ImmutableArray<FluidBag> Bags { get; init => field = Require.Made(value, nameof(Bags)); } = [];

    /// <summary>Clock time of the first fill.</summary>
    public TimeOnly NightStart { get; init; } = new(22, 0);

    /// <summary>Belly, catheter and machine.</summary>
    public RegimenSettings Settings { get; init; } = RegimenSettings.Default;

    /// <summary>What stands against it and what to be careful about; problems first.</summary>
    public IReadOnlyList<Finding> Findings => PrescriptionArithmetic.Of(this).Findings;

    /// <summary>The regimen that it makes.</summary>
    /// <exception cref="RegimenException">It cannot be carried out; all reasons are in it.</exception>
    public Regimen ToRegimen() => PrescriptionArithmetic.Of(this) is var (regimen, findings) && regimen is not null
        ? regimen
        : throw new RegimenException(findings);
}
