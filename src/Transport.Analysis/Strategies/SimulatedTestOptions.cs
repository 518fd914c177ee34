using System.Collections.Immutable;

namespace Transport.Analysis;

/// <summary>How a test is simulated, and with which errors it is written down.</summary>
public sealed record SimulatedTestOptions
{
    /// <summary>The solution.</summary>
    public DialysisSolution Solution { get; init; } = DialysisSolution.Glucose386;

    /// <summary>What runs in.</summary>
    /// <exception cref="ArgumentOutOfRangeException">Zero or negative.</exception>
    public Volume Fill { get; init => field = Require.MoreThanZero(value, nameof(Fill)); } = Volume.FromLiters(2);

    /// <summary>How long it stays.</summary>
    public TimeSpan Duration { get; init; } = TimeSpan.FromHours(4);

    /// <summary>When dialysate is sampled, the last at the end.</summary>
    public ImmutableArray<TimeSpan> SampleTimes { get; init => field = Require.Made(value, nameof(SampleTimes)); } =
        [TimeSpan.Zero, TimeSpan.FromHours(2), TimeSpan.FromHours(4)];

    /// <summary>How laboratory and scale err.</summary>
    public AssayErrors Errors { get; init; } = AssayErrors.Default;

    /// <summary>How much the residual volume that nobody measures differs between people: standard deviation of its logarithm (choice).</summary>
    /// <exception cref="ArgumentOutOfRangeException">Negative or not finite.</exception>
    public double ResidualLogDeviation { get; init => field = Require.NotNegative(value, "", nameof(ResidualLogDeviation)); } = 0.3;

    /// <summary>Degrees of freedom of errors with heavy tails, at the same standard deviation; null: Gaussian errors.</summary>
    /// <exception cref="ArgumentOutOfRangeException">2 or less: no variance.</exception>
    public double? TailDegreesOfFreedom
    {
        get;
        init => field = value is null or > 2
            ? value
            : throw new ArgumentOutOfRangeException(nameof(TailDegreesOfFreedom), value, "Expected more than 2 degrees of freedom, or none for Gaussian errors.");
    }

    /// <summary>The defaults: 2 L of 3.86 % for 4 h, sampled at 0, 2 and 4 h.</summary>
    public static SimulatedTestOptions Default { get; } = new();
}
