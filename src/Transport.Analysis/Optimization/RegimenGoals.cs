using System.Collections.Immutable;

namespace Transport.Analysis;

/// <summary>What a regimen is to do for a patient, and what it must not.</summary>
/// <remarks>
/// The fluid range, the clearance goal and the limits are judged at the ensemble's center; <see cref="Bounds"/> over its members. The model is too gentle on
/// pressure, so that large fills look too good: fill is limited by surface and, where a limit is given, by pressure.
/// </remarks>
public sealed record RegimenGoals
{
    /// <summary>Goals around a fluid target.</summary>
    public RegimenGoals(FluidTarget fluid)
    {
        ArgumentNullException.ThrowIfNull(fluid);
        Fluid = fluid;
    }

    /// <summary>24-h ultrafiltration, day and night together.</summary>
    public FluidTarget Fluid
    {
        get;
        init
        {
            ArgumentNullException.ThrowIfNull(value);
            field = value;
        }
    }

    /// <summary>Clearance; null: none is asked for.</summary>
    public ClearanceGoal? Clearance { get; init; } = ClearanceGoal.Usual;

    /// <summary>Further bounds, each as expected value or as a probability.</summary>
    public ImmutableArray<RegimenBound> Bounds { get; init; } = [];

    /// <summary>What is to be as little or as much as the rest allows. Litres and cycles count as costs besides, always.</summary>
    /// <exception cref="ArgumentException">A measure is there twice.</exception>
    public ImmutableArray<RegimenObjective> Objectives
    {
        get;
        init => field = value.Select(objective => objective.Measure).Distinct().Count() == value.Length
            ? value
            : throw new ArgumentException("Expected each measure once.", nameof(Objectives));
    }
    = [.. RegimenObjective.Usual];

    /// <summary>The longest night the patient wants.</summary>
    /// <exception cref="ArgumentOutOfRangeException">Not between 1 and 24 h.</exception>
    public TimeSpan LongestNight
    {
        get;
        init
        {
            Require.InRange(value.TotalHours, 1, 24, "h", nameof(LongestNight));
            field = value;
        }
    }
    = TimeSpan.FromHours(10);

    /// <summary>
    /// Largest fill per m² of body surface, mL. Contact is complete at about 1400 mL/m² (Fischbach 2016, read); above, the model overstates ultrafiltration.
    /// </summary>
    /// <exception cref="ArgumentOutOfRangeException">Not between 200 and 3000 mL.</exception>
    public double LargestFillPerSquareMeter
    {
        get;
        init => field = Require.InRange(value, 200, 3000, "mL/m²", nameof(LargestFillPerSquareMeter));
    }
    = BeyondTheTest.FullContactPerSquareMeter;

    /// <summary>The clinic's own largest fill; null: the surface alone decides.</summary>
    /// <exception cref="ArgumentOutOfRangeException">Zero or negative.</exception>
    public Volume? LargestFill
    {
        get;
        init => field = value is { } volume ? Require.MoreThanZero(volume, nameof(LargestFill)) : null;
    }

    /// <summary>Most volume in the cavity; null: not limited.</summary>
    /// <exception cref="ArgumentOutOfRangeException">Zero or negative.</exception>
    public Volume? LargestVolume
    {
        get;
        init => field = value is { } volume ? Require.MoreThanZero(volume, nameof(LargestVolume)) : null;
    }

    /// <summary>Highest pressure at the fullest moment; null: not limited. Usual is 10 to 16 cmH2O, never above 18 (read).</summary>
    /// <exception cref="ArgumentOutOfRangeException">Zero or negative.</exception>
    public Pressure? HighestPressure
    {
        get;
        init => field = value is { } pressure ? Require.MoreThanZero(pressure, nameof(HighestPressure)) : null;
    }

    /// <summary>Pressure against volume: the patient's own measurement, or the population's.</summary>
    public CavityPressure Pressure { get; init; } = CavityPressure.Population;

    /// <summary>How many exchanges in 24 h may have a strongest glucose (above 180 mmol/L); null: not limited.</summary>
    /// <exception cref="ArgumentOutOfRangeException">Negative.</exception>
    public int? MostStrongestExchanges
    {
        get;
        init => field = value is null or >= 0 ? value : throw new ArgumentOutOfRangeException(nameof(MostStrongestExchanges), value, "Expected 0 or more.");
    }

    /// <summary>Most cycles that the machine's set or the patient's sleep allows; null: not limited.</summary>
    /// <exception cref="ArgumentOutOfRangeException">Less than 1.</exception>
    public int? MostCycles
    {
        get;
        init => field = value is null or >= 1 ? value : throw new ArgumentOutOfRangeException(nameof(MostCycles), value, "Expected 1 or more.");
    }

    /// <summary>Most fluid in 24 h that machine and store allow; null: not limited.</summary>
    /// <exception cref="ArgumentOutOfRangeException">Zero or negative.</exception>
    public Volume? MostFluid
    {
        get;
        init => field = value is { } volume ? Require.MoreThanZero(volume, nameof(MostFluid)) : null;
    }

    /// <summary>The bags there are: what is not on the shelf is not offered. Null: everything can be had.</summary>
    public BagShelf? Shelf { get; init; }

    /// <summary>When the night may take place, from the first fill to the end of the last drain; null: at any time.</summary>
    public ClockWindow? NightWindow { get; init; }

    /// <summary>When an exchange by hand may begin by day; empty: at any time.</summary>
    public ImmutableArray<ClockWindow> HandWindows { get; init => field = Require.Made(value, nameof(HandWindows)); } = [];

    /// <summary>When the one is there who connects and disconnects, for a patient who cannot alone: night's begin, its end and exchanges by hand; empty: at any time.</summary>
    public ImmutableArray<ClockWindow> CarerWindows { get; init => field = Require.Made(value, nameof(CarerWindows)); } = [];

    /// <summary>Most exchanges by hand by day; null: not limited.</summary>
    /// <exception cref="ArgumentOutOfRangeException">Negative.</exception>
    public int? MostHandExchanges
    {
        get;
        init => field = value is null or >= 0 ? value : throw new ArgumentOutOfRangeException(nameof(MostHandExchanges), value, "Expected 0 or more.");
    }

    /// <summary>Whether the day has to stay dry.</summary>
    public bool IsDayDry { get; init; }

    /// <summary>Shortest dwell of icodextrin, at most one of which a day is looked at; null: no icodextrin.</summary>
    /// <value>The default is 8 h; usual are 8 to 16 h, once a day (memory). 6 h only by choice.</value>
    /// <exception cref="ArgumentOutOfRangeException">Below 4 h or above 24 h.</exception>
    public TimeSpan? ShortestIcodextrin
    {
        get;
        init
        {
            if (value is { } time)
            {
                Require.InRange(time.TotalHours, 4, 24, "h", nameof(ShortestIcodextrin));
            }

            field = value;
        }
    }
    = TimeSpan.FromHours(8);

    /// <summary>Everything that is asked for, and every limit.</summary>
    public override string ToString()
    {
        List<string> parts =
        [
            $"{Fluid} of ultrafiltration in 24 h",
            .. Clearance is { } goal ? [Text($"weekly Kt/V about {goal.WeeklyUreaDose:0.##} ± {100 * goal.Noise:0.#} %")] : Array.Empty<string>(),
            .. Bounds.Select(bound => bound.ToString()),
            .. Objectives.Select(objective => $"{(objective.LessIsBetter ? "least" : "most")} {RegimenBound.Name(objective.Measure)}"),
            Text($"nights of at most {LongestNight.TotalHours:0.##} h"),
            Text($"fills of at most {LargestFillPerSquareMeter:0} mL/m²"),
            .. If(LargestFill, fill => $"{fill} a fill"),
            .. If(LargestVolume, volume => $"{volume} in the cavity"),
            .. If(HighestPressure, pressure => $"{pressure} by {Pressure.Pressure} at {Pressure.Volume}"),
            .. If(MostStrongestExchanges, number => Text($"at most {number} strongest")),
            .. If(MostCycles, number => Text($"at most {number} cycles")),
            .. If(MostFluid, fluid => $"at most {fluid} of fluid"),
            .. Shelf is { } shelf ? [$"bags: {shelf}"] : Array.Empty<string>(),
            .. If(NightWindow, window => $"the night within {window}"),
            .. HandWindows.IsEmpty ? [] : new[] { $"exchanges by hand within {string.Join(" or ", HandWindows)}" },
            .. CarerWindows.IsEmpty ? [] : new[] { $"a carer there within {string.Join(" or ", CarerWindows)}" },
            .. If(MostHandExchanges, number => Text($"at most {number} by hand")),
            .. IsDayDry ? ["a dry day"] : Array.Empty<string>(),
            ShortestIcodextrin is { } shortest ? Text($"icodextrin for {shortest.TotalHours:0.##} h or more") : "no icodextrin",
        ];
        return string.Join(", ", parts);

        static string[] If<T>(T? limit, Func<T, string> words)
            where T : struct => limit is { } value ? [words(value)] : [];
    }

    /// <summary>
    /// What a treated day has to do where only some nights a week are treated, so that the week comes to these goals: what the peritoneum removes is needed in fewer
    /// days, and the kidneys go on. On a day off the body may take up what a drain left behind; floors are raised by that, so that they hold. The ceiling of a treated day is
    /// raised as well, to 7/nights of the day's: whether so much in one day dries the patient out is for the prescriber to say.
    /// </summary>
    /// <param name="nights">Treated nights a week, 1 to 7, spread evenly.</param>
    /// <param name="patient">Whose kidneys go on.</param>
    /// <param name="settings">Belly and catheter, for what a drain leaves; null: the usual.</param>
    /// <exception cref="ArgumentOutOfRangeException">Not between 1 and 7 nights, or a floor comes to lie above its ceiling.</exception>
    public RegimenGoals OnNights(int nights, Patient patient, RegimenSettings? settings = null)
    {
        ArgumentNullException.ThrowIfNull(patient);
        var more = 7 / Require.InRange(nights, 1, 7, "nights");
        var left = settings?.Residual?.Milliliters ?? RegimenSettings.UsualResidual * patient.SurfaceFactor;
        var takenUp = left * Math.Min(nights, 7 - nights) / 7;
        var renalDose = patient.ResidualFunction.UreaClearance.LitersPerWeek / patient.BodyWater.Liters;
        var renalCreatinine = patient.ResidualFunction.FiltrationRate.LitersPerWeek / patient.SurfaceFactor;
        return this with
        {
            Fluid = FluidTarget.Between((Fluid.Floor + Volume.FromMilliliters(takenUp)) * more, Fluid.Ceiling * more),

            // Without a peritoneal share there is nothing to ask for.
            Clearance = Clearance is { } goal && goal.Least > renalDose ? Asked(goal) : null,
            Bounds = [.. Bounds.Select(bound => bound.Measure switch
            {
                RegimenMeasure.UreaDose => bound.Moved(value => renalDose + more * (value - renalDose)),
                RegimenMeasure.CreatinineClearance => bound.Moved(value => renalCreatinine + more * (value - renalCreatinine)),
                RegimenMeasure.Ultrafiltration => bound.Moved(value => more * (value + takenUp), value => more * value),
                RegimenMeasure.SodiumRemoved or RegimenMeasure.PhosphateClearance or RegimenMeasure.Beta2MicroglobulinClearance
                    or RegimenMeasure.GlucoseAbsorbed => bound.Moved(value => more * value),
                _ => bound,
            })],
        };

        // The noise stays that of the whole week's figure.
        ClearanceGoal Asked(ClearanceGoal goal)
        {
            var dose = renalDose + more * (goal.WeeklyUreaDose - renalDose);
            return goal with { WeeklyUreaDose = dose, Noise = more * goal.WeeklyUreaDose * goal.Noise / dose };
        }
    }

    /// <summary>Counts bags where a bound or an objective asks for them.</summary>
    internal BagCounter? ToBagCounter() =>
        Bounds.Select(bound => bound.Measure).Concat(Objectives.Select(objective => objective.Measure)).Any(measure => measure is RegimenMeasure.Bags or RegimenMeasure.FluidOpened)
            ? new(Shelf ?? BagShelf.Usual)
            : null;

    private static string Text(FormattableString text) => FormattableString.Invariant(text);

    /// <summary>The largest fill for a patient: the smallest of the limits by surface, clinic and pressure.</summary>
    public Volume LargestFillOf(Patient patient)
    {
        ArgumentNullException.ThrowIfNull(patient);
        var largest = Volume.FromMilliliters(LargestFillPerSquareMeter * patient.BodySurface.SquareMeters);
        if (LargestFill is { } own && own < largest)
        {
            largest = own;
        }

        if (HighestPressure is { } limit)
        {
            var room = (limit.CentimetersOfWater - Pressure.Pressure.CentimetersOfWater) / Pressure.CentimetersOfWaterPerLiter;
            var byPressure = Pressure.Volume + Volume.FromLiters(room);
            largest = byPressure < largest ? byPressure : largest;
        }

        return largest;
    }
}
