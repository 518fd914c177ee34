using System.Collections.Immutable;

namespace Transport;

/// <summary>What is done on the seven days of a week, over and over.</summary>
public sealed record RegimenWeek
{
    private const int DaysPerWeek = 7;

    /// <summary>A week.</summary>
    /// <param name="days">Seven: a regimen, or null for a day without any. A day begins with its night.</param>
    /// <exception cref="ArgumentException">They are not seven, none is treated, or the nights do not begin at one clock time.</exception>
    public RegimenWeek(params IEnumerable<Regimen?> days) => Days = [.. days];

    /// <summary>What is done on each; null: nothing, with the residual fluid in place.</summary>
    /// <exception cref="ArgumentException">They are not seven, none is treated, or the nights do not begin at one clock time.</exception>
    public ImmutableArray<Regimen?> Days
    {
        get;
        init => field = Require.Made(value, nameof(Days)).Length != DaysPerWeek || value.OfType<Regimen>().Select(regimen => regimen.NightStart).Distinct().Count() != 1
            ? throw new ArgumentException("Expected seven days, one of them treated, with nights that begin at one clock time.", nameof(value))
            : value;
    }

    /// <summary>How many nights are treated.</summary>
    public int Nights => Days.Count(day => day is not null);

    /// <summary>Clock time at which the nights begin.</summary>
    public TimeOnly NightStart => Days.OfType<Regimen>().First().NightStart;

    /// <summary>So many nights a week of one regimen, spread as evenly as seven days allow, the first of them treated (choice).</summary>
    /// <exception cref="ArgumentOutOfRangeException">Not between 1 and 7 nights.</exception>
    public static RegimenWeek OfNights(Regimen regimen, int nights)
    {
        ArgumentNullException.ThrowIfNull(regimen);
        Require.InRange(nights, 1, DaysPerWeek, "nights");
        return new(Enumerable.Range(0, DaysPerWeek).Select(day => day * nights % DaysPerWeek < nights ? regimen : null));
    }

    /// <summary>Equal if every day is.</summary>
    public bool Equals(RegimenWeek? other) => other is not null && Days.SequenceEqual(other.Days);

    /// <inheritdoc/>
    public override int GetHashCode() => HashCode.Combine(Nights, Days.OfType<Regimen>().First());
}
