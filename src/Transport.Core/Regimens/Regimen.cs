using System.Collections.Immutable;

namespace Transport;

/// <summary>Twenty-four hours of exchanges, of the night and of the day: what is repeated.</summary>
/// <remarks>
/// <para>The night length runs from the start of the first fill to the end of the last drain; the day is the rest. Exchanges without a dwell time of
/// their own share what fills and drains leave of their half. Where every exchange of the day has one and they do not fill it, the rest of it is
/// dry. The last drain of the day is complete and ends when the night begins.</para>
/// <para>So all of these are made of exchanges: cycles at night with a dry or a wet day, a midday exchange, cycles of different volume or strength,
/// tidal cycles, exchanges by hand, and those with a dry night. A regimen made with <c>with</c> may turn out impossible: <see cref="Findings"/> says so, and no simulation
/// accepts it.</para>
/// </remarks>
public sealed record Regimen
{
    /// <summary>A dwell below this is a caution, min (choice).</summary>
    internal const double ShortDwell = 20;

    // Fullness above this multiple of the largest fill is an overfill where nobody gave a limit (choice).
    private const double OverfillShare = 1.5;

    /// <summary>A regimen of any exchanges of the night.</summary>
    /// <param name="nightLength">From the start of the first fill to the end of the last drain.</param>
    /// <param name="night">The exchanges; those without a dwell time of their own share what remains of the night.</param>
    /// <param name="dayFill">What stays in for the day; null: a dry day.</param>
    /// <param name="settings">Belly, catheter and machine.</param>
    /// <exception cref="RegimenException">It cannot be carried out; all reasons are in it.</exception>
    public Regimen(TimeSpan nightLength, IEnumerable<Exchange> night, DayFill? dayFill = null, RegimenSettings? settings = null)
        : this(nightLength, [.. night], DayOf(dayFill), settings ?? RegimenSettings.Default, [])
    {
    }

    /// <summary>A regimen of any exchanges of night and day.</summary>
    /// <param name="nightLength">From the start of the first fill to the end of the last drain.</param>
    /// <param name="night">The exchanges; those without a dwell time of their own share what remains of the night.</param>
    /// <param name="day">The exchanges of the day, likewise.</param>
    /// <param name="settings">Belly, catheter and machine.</param>
    /// <exception cref="RegimenException">It cannot be carried out; all reasons are in it.</exception>
    public Regimen(TimeSpan nightLength, IEnumerable<Exchange> night, IEnumerable<Exchange> day, RegimenSettings? settings = null)
        : this(nightLength, [.. night], [.. day], settings ?? RegimenSettings.Default, [])
    {
    }

    // earlier: what was found before the exchanges could be made; if an error is among them the night is empty and is not judged.
    internal Regimen(
        TimeSpan nightLength, ImmutableArray<Exchange> night, ImmutableArray<Exchange> day, RegimenSettings settings, IReadOnlyCollection<Finding> earlier)
    {
        NightLength = nightLength;
        Night = night;
        Day = day;
        Settings = settings;
        var findings = earlier.Count == 0 ? Findings : [.. earlier, .. RegimenCheck.OfTheRest(this)];
        if (findings.Any(finding => finding.Severity == Severity.Error))
        {
            throw new RegimenException(findings);
        }
    }

    /// <summary>From the start of the first fill to the end of the last drain.</summary>
    public TimeSpan NightLength { get; init; }

    /// <summary>Clock time of the first fill of the night: for blood samples, and for the hours of patient, hands and carer in a search.</summary>
    public TimeOnly NightStart { get; init; } = new(22, 0);

    /// <summary>The exchanges of the night, in order; none: a dry night.</summary>
    public ImmutableArray<Exchange> Night { get; init => field = Require.Made(value, nameof(Night)); }

    /// <summary>The exchanges of the day, in order; none: a dry day.</summary>
    public ImmutableArray<Exchange> Day { get; init => field = Require.Made(value, nameof(Day)); }

    /// <summary>What runs in after the last drain of the night; null: a dry day. To set it is to make it the only exchange of the day.</summary>
    public DayFill? DayFill
    {
        get => Day is [var first, ..] ? new(first.Solution, first.Fill) : null;
        init => Day = DayOf(value);
    }

    /// <summary>Belly, catheter and machine.</summary>
    public RegimenSettings Settings { get; init; }

    /// <summary>How many cycles the night has.</summary>
    public int Cycles => Night.Length;

    /// <summary>The exchanges of night and day.</summary>
    public IEnumerable<Exchange> Exchanges => Night.Concat(Day);

    /// <summary>Everything that is infused in 24 h.</summary>
    public Volume FluidInAll => Exchanges.Aggregate(default(Volume), (sum, exchange) => sum + exchange.Fill);

    /// <summary>The fill of a cycle; null where the cycles differ.</summary>
    public Volume? VolumePerCycle => Night is [var first, ..] && Night.All(exchange => exchange.Fill == first.Fill) ? first.Fill : null;

    /// <summary>The planned dwell time of each cycle, given or shared out.</summary>
    /// <remarks>As for a person of 1.73 m² where the residual is not given and the drain has two slopes.</remarks>
    /// <exception cref="RegimenException">The regimen cannot be carried out.</exception>
    public ImmutableArray<TimeSpan> DwellTimes => [.. OrThrow().UsualSchedule.Night.Select(leg => TimeSpan.FromMinutes(leg.Dwell))];

    /// <summary>The planned dwell time of each exchange of the day, given or shared out.</summary>
    /// <exception cref="RegimenException">The regimen cannot be carried out.</exception>
    public ImmutableArray<TimeSpan> DayDwellTimes => [.. OrThrow().UsualSchedule.Day.Select(leg => TimeSpan.FromMinutes(leg.Dwell))];

    /// <summary>What stands against it and what to be careful about; problems first.</summary>
    public IReadOnlyList<Finding> Findings => RegimenCheck.Of(this, UsualResidual);

    /// <summary>The polymer of its icodextrin; null where there is none.</summary>
    internal PolymerDistribution? Polymer => Exchanges.Select(exchange => exchange.Solution.Polymer).FirstOrDefault(polymer => polymer is not null);

    /// <summary>Whether it is of exchanges by hand: a night of one whose dwell is stated, or that is dry.</summary>
    internal bool IsByHand => Night is [] or [{ DwellTime: not null }];

    /// <summary>More than this in the cavity is an overfill: the limit that was given, or one and a half times the largest fill (choice).</summary>
    internal Volume VolumeLimit => Settings.LargestVolume ?? Exchanges.Max(exchange => exchange.Fill) * OverfillShare;

    /// <summary>The volume left after a drain in a person of 1.73 m², mL.</summary>
    internal double UsualResidual => Settings.Residual?.Milliliters ?? RegimenSettings.UsualResidual;

    internal RegimenSchedule UsualSchedule => new(this, UsualResidual);

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
        if (found.Count > 0)
        {
            RegimenCheck.FillLimit(volumePerCycle, settings ?? RegimenSettings.Default, found);
        }

        ImmutableArray<Exchange> night = found.Count > 0 ? [] : [.. Enumerable.Repeat(new Exchange(solution, volumePerCycle), cycles)];
        return new(nightLength, night, DayOf(dayFill), settings ?? RegimenSettings.Default, found);
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
        return new AutomatedPrescription(nightLength, solution)
        {
            FluidInAll = fluidInAll,
            VolumePerCycle = volumePerCycle,
            Spare = spare,
            DayFill = dayFill,
            Settings = settings ?? RegimenSettings.Default,
        }.ToRegimen();
    }

    /// <summary>Tidal cycles through the night.</summary>
    /// <param name="nightLength">From the start of the first fill to the end of the last drain.</param>
    /// <param name="cycles">How many, the full first one included.</param>
    /// <param name="plan">How much is drained and refilled.</param>
    /// <param name="solution">The solution of each.</param>
    /// <param name="dayFill">What stays in for the day; null: a dry day.</param>
    /// <param name="settings">Belly, catheter and machine.</param>
    /// <exception cref="RegimenException">It cannot be carried out; all reasons are in it.</exception>
    public static Regimen Tidal(
        TimeSpan nightLength, int cycles, TidalPlan plan, DialysisSolution solution, DayFill? dayFill = null, RegimenSettings? settings = null)
    {
        ArgumentNullException.ThrowIfNull(plan);
        ArgumentNullException.ThrowIfNull(solution);
        List<Finding> found = [];
        RegimenCheck.Cycles(cycles, found);
        ImmutableArray<Exchange> night = found.Count > 0 ? [] : [.. plan.Exchanges(cycles, solution)];
        return new(nightLength, night, DayOf(dayFill), settings ?? RegimenSettings.Default, found);
    }

    /// <summary>Exchanges by hand at clock times: each stays in until the next begins.</summary>
    /// <remarks>
    /// The one that stays in over midnight is the night; with a dry part of the day that part is, and the exchanges are the day's. Of the initial transient,
    /// see <see cref="TransientUse.EveryFill"/>: a membrane that was fitted to a test with it has it in long dwells too.
    /// </remarks>
    /// <param name="exchanges">In any order; at least two, or one where a part of the day is dry.</param>
    /// <param name="settings">Belly and catheter.</param>
    /// <param name="dryFrom">Clock time at which the last one is drained and nothing filled; null: never dry.</param>
    /// <exception cref="ArgumentException">There are too few.</exception>
    /// <exception cref="RegimenException">It cannot be carried out; all reasons are in it.</exception>
    public static Regimen Ambulatory(IEnumerable<HandExchange> exchanges, RegimenSettings? settings = null, TimeOnly? dryFrom = null)
    {
        ArgumentNullException.ThrowIfNull(exchanges);
        return ByHand.Of([.. exchanges], settings ?? RegimenSettings.Default, dryFrom);
    }

    /// <summary>What of a supply of fluid this regimen leaves in the bags.</summary>
    public Volume SpareOf(Volume fluidInAll) => fluidInAll - FluidInAll;

    /// <summary>Throws if the regimen cannot be carried out.</summary>
    /// <exception cref="RegimenException">It cannot; all reasons are in it.</exception>
    public Regimen OrThrow() => OrThrow(UsualResidual);

    /// <summary>The same for a person whose drains leave this behind, mL.</summary>
    internal Regimen OrThrow(double residual)
    {
        var findings = RegimenCheck.Of(this, residual);
        return findings.Any(finding => finding.Severity == Severity.Error) ? throw new RegimenException(findings) : this;
    }

    /// <summary>
    /// "8 h 30 min at night: 5 × 2.0 L glucose 1.36 %; day: 2.0 L glucose 2.27 %"; "2 exchanges by hand: by day 2.0 L glucose 1.36 % (dwell 11 h 35 min); overnight 2.0 L glucose 2.27 % (dwell
    /// 11 h 35 min)".
    /// </summary>
    public string Describe() => RegimenWords.Of(this);

    /// <summary>The same as <see cref="Describe"/>.</summary>
    public override string ToString() => Describe();

    /// <summary>Equal if every exchange, the night's length and start, and the settings are.</summary>
    public bool Equals(Regimen? other) =>
        other is not null && NightLength == other.NightLength && NightStart == other.NightStart && Night.SequenceEqual(other.Night)
        && Day.SequenceEqual(other.Day) && Settings.Equals(other.Settings);

    /// <inheritdoc/>
    public override int GetHashCode() => HashCode.Combine(NightLength, Night.Length, Night.IsEmpty ? null : Night[0], Day.IsEmpty ? null : Day[0]);

    /// <summary>Volume left after a drain, mL.</summary>
    internal double ResidualFor(Patient patient) => Settings.Residual?.Milliliters ?? RegimenSettings.UsualResidual * patient.SurfaceFactor;

    internal double FillMinutes(double milliliters) => milliliters / Settings.FillFlow.MillilitersPerMinute;

    private static ImmutableArray<Exchange> DayOf(DayFill? fill) => fill is null ? [] : [new(fill.Solution, fill.Volume)];
}
