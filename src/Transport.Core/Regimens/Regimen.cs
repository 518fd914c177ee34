using System.Collections.Immutable;
using System.Globalization;

namespace Transport;

/// <summary>One night of exchanges and what stays in for the day: what is repeated every 24 hours.</summary>
/// <remarks>
/// The night length runs from the start of the first fill to the end of the last drain. The drain of the day fill comes before it, the day fill
/// after it. A regimen made with <c>with</c> may turn out impossible: <see cref="Findings"/> says so, and no simulation accepts it.
/// </remarks>
public sealed record Regimen
{
    /// <summary>A dwell below this is a caution, min (choice).</summary>
    internal const double ShortDwell = 20;

    /// <summary>A regimen of any exchanges.</summary>
    /// <param name="nightLength">From the start of the first fill to the end of the last drain.</param>
    /// <param name="night">The exchanges; those without a dwell time of their own share what remains of the night.</param>
    /// <param name="dayFill">What stays in for the day; null: a dry day.</param>
    /// <param name="settings">Belly, catheter and machine.</param>
    /// <exception cref="RegimenException">It cannot be carried out; all reasons are in it.</exception>
    public Regimen(TimeSpan nightLength, IEnumerable<Exchange> night, DayFill? dayFill = null, RegimenSettings? settings = null)
        : this(nightLength, [.. night], dayFill, settings ?? RegimenSettings.Default, [])
    {
    }

    // earlier: what was found before the exchanges could be made; if an error is among them the night is empty and is not judged.
    private Regimen(
        TimeSpan nightLength, ImmutableArray<Exchange> night, DayFill? dayFill, RegimenSettings settings, IReadOnlyCollection<Finding> earlier)
    {
        NightLength = nightLength;
        Night = night;
        DayFill = dayFill;
        Settings = settings;
        var findings = earlier.Count == 0 ? Findings : [.. earlier, .. RegimenCheck.OfTheRest(this)];
        if (findings.Any(finding => finding.Severity == Severity.Error))
        {
            throw new RegimenException(findings);
        }
    }

    /// <summary>From the start of the first fill to the end of the last drain.</summary>
    public TimeSpan NightLength { get; init; }

    /// <summary>The exchanges of the night, in order.</summary>
    public ImmutableArray<Exchange> Night { get; init; }

    /// <summary>What stays in for the day; null: a dry day.</summary>
    public DayFill? DayFill { get; init; }

    /// <summary>Belly, catheter and machine.</summary>
    public RegimenSettings Settings { get; init; }

    /// <summary>How many cycles the night has.</summary>
    public int Cycles => Night.Length;

    /// <summary>Everything that is infused in 24 h, day fill included.</summary>
    public Volume FluidInAll => Night.Aggregate(DayFill?.Volume ?? default, (sum, exchange) => sum + exchange.Fill);

    /// <summary>The fill of a cycle; null where the cycles differ.</summary>
    public Volume? VolumePerCycle => Night is [var first, ..] && Night.All(exchange => exchange.Fill == first.Fill) ? first.Fill : null;

    /// <summary>The planned dwell time of each cycle, given or shared out.</summary>
    /// <exception cref="RegimenException">The regimen cannot be carried out.</exception>
    public ImmutableArray<TimeSpan> DwellTimes
    {
        get
        {
            OrThrow();
            var share = SharedDwellMinutes;
            return [.. Night.Select(exchange => exchange.DwellTime ?? TimeSpan.FromMinutes(share))];
        }
    }

    /// <summary>What stands against it and what to be careful about; problems first.</summary>
    public IReadOnlyList<Finding> Findings => RegimenCheck.Of(this);

    /// <summary>The polymer of its icodextrin; null where there is none.</summary>
    internal PolymerDistribution? Polymer =>
        DayFill?.Solution.Polymer ?? Night.Select(exchange => exchange.Solution.Polymer).FirstOrDefault(polymer => polymer is not null);

    /// <summary>Length of the day, after its fill and before its drain, min.</summary>
    internal double DayMinutes => 1440 - NightLength.TotalMinutes
        - (DayFill is { } fill ? FillMinutes(fill.Volume.Milliliters) + DrainMinutes(fill.Volume.Milliliters) : 0);

    /// <summary>Fills and drains of the night, min.</summary>
    internal double ExchangeMinutes => Night.Sum(exchange => FillMinutes(exchange.Fill.Milliliters) + DrainMinutes(exchange.Fill.Milliliters));

    /// <summary>Dwell of each cycle that has none of its own, min; NaN where every cycle has.</summary>
    internal double SharedDwellMinutes
    {
        get
        {
            var given = Night.Sum(exchange => exchange.DwellTime?.TotalMinutes ?? 0);
            var sharing = Night.Count(exchange => exchange.DwellTime is null);
            return sharing == 0 ? double.NaN : (NightLength.TotalMinutes - ExchangeMinutes - given) / sharing;
        }
    }

    /// <summary>Equal cycles through the night.</summary>
    /// <param name="nightLength">From the start of the first fill to the end of the last drain.</param>
    /// <param name="cycles">How many.</param>
    /// <param name="volumePerCycle">Fill of each.</param>
    /// <param name="solution">The solution of each.</param>
    /// <param name="dayFill">What stays in for the day; null: a dry day.</param>
    /// <param name="settings">Belly, catheter and machine.</param>
    /// <exception cref="RegimenException">It cannot be carried out; all reasons are in it.</exception>
    public static Regimen Cycling(
        TimeSpan nightLength, int cycles, Volume volumePerCycle, DialysisSolution solution, DayFill? dayFill = null, RegimenSettings? settings = null)
    {
        ArgumentNullException.ThrowIfNull(solution);
        List<Finding> found = [];
        RegimenCheck.Cycles(cycles, found);
        RegimenCheck.Fill(volumePerCycle, found);
        ImmutableArray<Exchange> night = found.Count > 0 ? [] : [.. Enumerable.Repeat(new Exchange(solution, volumePerCycle), cycles)];
        return new(nightLength, night, dayFill, settings ?? RegimenSettings.Default, found);
    }

    /// <summary>As many equal cycles as the fluid makes: (fluid in all − day fill) / volume per cycle, rounded down.</summary>
    /// <param name="nightLength">From the start of the first fill to the end of the last drain.</param>
    /// <param name="fluidInAll">Everything infused in 24 h, day fill included.</param>
    /// <param name="volumePerCycle">Fill of each cycle.</param>
    /// <param name="solution">The solution of each.</param>
    /// <param name="spare">What happens to the remainder.</param>
    /// <param name="dayFill">What stays in for the day; null: a dry day.</param>
    /// <param name="settings">Belly, catheter and machine.</param>
    /// <exception cref="RegimenException">It cannot be carried out; all reasons are in it.</exception>
    public static Regimen OfFluidInAll(
        TimeSpan nightLength,
        Volume fluidInAll,
        Volume volumePerCycle,
        DialysisSolution solution,
        SpareFluid spare = SpareFluid.Leave,
        DayFill? dayFill = null,
        RegimenSettings? settings = null)
    {
        var cycles = volumePerCycle.Milliliters > 0
            ? (int)Math.Clamp(Math.Floor(ForTheNight(fluidInAll, dayFill) / volumePerCycle + 1e-9), 0, int.MaxValue)
            : 0;
        var fill = spare == SpareFluid.Share && cycles > 0 ? ForTheNight(fluidInAll, dayFill) * (1.0 / cycles) : volumePerCycle;
        return Cycling(nightLength, cycles, fill, solution, dayFill, settings);
    }

    /// <summary>What of a supply of fluid this regimen leaves in the bags.</summary>
    public Volume SpareOf(Volume fluidInAll) => fluidInAll - FluidInAll;

    /// <summary>Throws if the regimen cannot be carried out.</summary>
    /// <exception cref="RegimenException">It cannot; all reasons are in it.</exception>
    public Regimen OrThrow()
    {
        var findings = Findings;
        return findings.Any(finding => finding.Severity == Severity.Error) ? throw new RegimenException(findings) : this;
    }

    /// <summary>"8 h 30 min at night: 5 × 2.0 L glucose 1.36 %; day: 2.0 L glucose 2.27 %".</summary>
    public string Describe()
    {
        var day = DayFill is { } fill ? $"{Liters(fill.Volume)} {fill.Solution.Name}" : "dry";
        return $"{HoursAndMinutes(NightLength)} at night: {string.Join(", ", Groups())}; day: {day}";
    }

    /// <summary>The same as <see cref="Describe"/>.</summary>
    public override string ToString() => Describe();

    /// <summary>Equal if every exchange, the day fill, the night length and the settings are.</summary>
    public bool Equals(Regimen? other) =>
        other is not null && NightLength == other.NightLength && Night.SequenceEqual(other.Night) && Equals(DayFill, other.DayFill)
        && Settings.Equals(other.Settings);

    /// <inheritdoc/>
    public override int GetHashCode() => HashCode.Combine(NightLength, Night.Length, Night.IsEmpty ? null : Night[0], DayFill);

    /// <summary>Volume left after a drain, mL.</summary>
    internal double ResidualFor(Patient patient) => Settings.Residual?.Milliliters ?? RegimenSettings.UsualResidual * patient.SurfaceFactor;

    internal double FillMinutes(double milliliters) => milliliters / Settings.FillFlow.MillilitersPerMinute;

    /// <summary>The planned time of a drain, min: as if nothing had crossed the membrane.</summary>
    internal double DrainMinutes(double fill)
    {
        var residual = Settings.Residual?.Milliliters ?? RegimenSettings.UsualResidual;
        return Settings.Drain.MinutesFor(fill + residual, residual);
    }

    internal static string Liters(Volume volume) => volume.Liters.ToString("0.0##", CultureInfo.InvariantCulture) + " L";

    internal static string HoursAndMinutes(TimeSpan time)
    {
        var minutes = (int)Math.Round(time.TotalMinutes);
        return (minutes / 60, minutes % 60) switch
        {
            (0, var m) => string.Create(CultureInfo.InvariantCulture, $"{m} min"),
            (var h, 0) => string.Create(CultureInfo.InvariantCulture, $"{h} h"),
            var (h, m) => string.Create(CultureInfo.InvariantCulture, $"{h} h {m} min"),
        };
    }

    private static Volume ForTheNight(Volume fluidInAll, DayFill? dayFill) => fluidInAll - (dayFill?.Volume ?? default);

    private IEnumerable<string> Groups()
    {
        for (var first = 0; first < Night.Length;)
        {
            var last = first;
            while (last < Night.Length && Night[last] == Night[first])
            {
                last++;
            }

            var own = Night[first].DwellTime is { } time ? $" (dwell {HoursAndMinutes(time)})" : "";
            yield return string.Create(
                CultureInfo.InvariantCulture, $"{last - first} × {Liters(Night[first].Fill)} {Night[first].Solution.Name}{own}");
            first = last;
        }
    }
}
