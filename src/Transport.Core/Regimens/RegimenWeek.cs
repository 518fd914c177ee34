using System.Collections.Immutable;

namespace Transport;

/// <summary>What is done on the seven days of a week, over and over; or on those of several weeks that alternate.</summary>
public sealed record RegimenWeek
{
    private const int DaysPerWeek = 7;
    private const int MostWeeks = 4;

    /// <summary>A week, or up to four that alternate.</summary>
    /// <param name="days">Seven for each week: a regimen, or null for a day without any. A day begins with its night.</param>
    /// <exception cref="ArgumentException">They make no whole weeks, none is treated, or the nights do not begin at one clock time.</exception>
    public RegimenWeek(params IEnumerable<Regimen?> days) => Days = [.. days];

    /// <summary>What is done on each; null: nothing, with the residual fluid in place.</summary>
    /// <exception cref="ArgumentException">They make no whole weeks, none is treated, or the nights do not begin at one clock time.</exception>
    public ImmutableArray<Regimen?> Days
    {
        get;
        init => field = value.IsDefaultOrEmpty || value.Length % DaysPerWeek != 0 || value.Length > MostWeeks * DaysPerWeek
            || value.OfType<Regimen>().Select(regimen => regimen.NightStart).Distinct().Count() != 1
            ? throw new ArgumentException(
                $"Expected seven days for each of one to {MostWeeks} weeks, one of them treated, with nights that begin at one clock time.", nameof(value))
            : value;
    }

    /// <summary>How many weeks it takes until all is repeated.</summary>
    public int Weeks => Days.Length / DaysPerWeek;

    /// <summary>How many days are treated in all its weeks.</summary>
    public int Nights => Days.Count(day => day is not null);

    /// <summary>The regimen of every day; null where days differ.</summary>
    internal Regimen? Only => Days.All(day => Equals(day, Days[0])) ? Days[0] : null;

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

    /// <summary>A week of one regimen after a week of another, over and over.</summary>
    /// <exception cref="ArgumentException">There are fewer than two or more than four, or their nights do not begin at one clock time.</exception>
    public static RegimenWeek Alternating(params IReadOnlyList<Regimen> weeks)
    {
        ArgumentNullException.ThrowIfNull(weeks);
        return weeks.Count < 2
            ? throw new ArgumentException("Expected two weeks or more.", nameof(weeks))
            : new(weeks.SelectMany(regimen => Enumerable.Repeat(regimen, DaysPerWeek)));
    }

    /// <summary>"5 days a week: 9 h at night: 5 × 2.0 L glucose 1.36 %; day: dry; 2 without".</summary>
    public string Describe() => RegimenWords.Of(this);

    /// <summary>The same as <see cref="Describe"/>.</summary>
    public override string ToString() => Describe();

    /// <summary>Equal if every day is.</summary>
    public bool Equals(RegimenWeek? other) => other is not null && Days.SequenceEqual(other.Days);

    /// <inheritdoc/>
    public override int GetHashCode() => HashCode.Combine(Days.Length, Nights, Days.OfType<Regimen>().First());
}
