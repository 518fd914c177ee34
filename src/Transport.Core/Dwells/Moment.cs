using System.Globalization;

namespace Transport;

/// <summary>When something happened in a dwell, or that it had not happened by its end. The default value: not reached.</summary>
public readonly record struct Moment
{
    private readonly TimeSpan time;

    private Moment(TimeSpan time) => (this.time, IsReached) = (time, true);

    /// <summary>It had not happened by the end of the dwell.</summary>
    public static Moment NotReached => default;

    /// <summary>Whether it happened.</summary>
    public bool IsReached { get; }

    /// <summary>When, from the start of the dwell.</summary>
    /// <exception cref="InvalidOperationException">It was not reached.</exception>
    public TimeSpan Time => IsReached ? time : throw new InvalidOperationException("It was not reached within the dwell: there is no time.");

    /// <summary>It happened at a time.</summary>
    /// <exception cref="ArgumentOutOfRangeException">The time is negative.</exception>
    public static Moment At(TimeSpan time) =>
        time >= TimeSpan.Zero ? new(time) : throw new ArgumentOutOfRangeException(nameof(time), time, "Expected zero or more.");

    /// <summary>Minutes, or that it was not reached; invariant culture.</summary>
    public override string ToString() =>
        IsReached ? time.TotalMinutes.ToString("0", CultureInfo.InvariantCulture) + " min" : "not reached";
}
