using static System.FormattableString;

namespace Transport.Analysis;

/// <summary>How much of the kidneys' own function a regimen needs to come up to its goals: below that it no longer does.</summary>
/// <remarks>
/// Peritoneal clearance does not depend on the kidneys as long as plasma is taken as it is, so that the arithmetic is exact: K_r = (goal − peritoneal Kt/V) V / 7,
/// urine = floor − ultrafiltration. The ratio of renal urea to creatinine clearance is taken to stay what it is, or 1 where there is none (choice).
/// </remarks>
public sealed record ResidualFunctionNeeded
{
    private ResidualFunctionNeeded(Clearance urea, Clearance filtration, Volume urine, ResidualFunction now)
    {
        (RenalUreaClearance, FiltrationRate, Urine) = (urea, filtration, urine);
        this.now = now;
    }

    private readonly ResidualFunction now;

    /// <summary>Renal urea clearance at which the clearance goal is just met; zero: it is met without.</summary>
    public Clearance RenalUreaClearance { get; }

    /// <summary>The mean of renal urea and creatinine clearance then.</summary>
    public Clearance FiltrationRate { get; }

    /// <summary>Urine in 24 h at which ultrafiltration and urine just remove what is wanted; zero: ultrafiltration does it alone.</summary>
    public Volume Urine { get; }

    /// <summary>Whether the patient's function now is enough for both; null: too little of it is known to say. What is not known counts as nothing, so that what is enough without it is enough.</summary>
    public bool? IsThereNow => Enough(now.FiltrationRate >= FiltrationRate, now.IsClearanceKnown) & Enough(now.UrineVolumePerDay >= Urine, now.IsUrineStated);

    /// <summary>Of a regimen, by its medians.</summary>
    /// <param name="outlook">The regimen.</param>
    /// <param name="weeklyUreaDose">Weekly total Kt/V that is wanted.</param>
    /// <param name="fluidRemoval">Ultrafiltration and urine that are wanted in 24 h; null: not said.</param>
    /// <exception cref="ArgumentOutOfRangeException">A goal is negative.</exception>
    public static ResidualFunctionNeeded Of(RegimenOutlook outlook, double weeklyUreaDose = 1.7, Volume? fluidRemoval = null)
    {
        ArgumentNullException.ThrowIfNull(outlook);
        Require.NotNegative(weeklyUreaDose, "");
        var patient = outlook.Outcome.Patient;
        var peritoneal = outlook[OutcomeMeasures.PeritonealKtOverV].Value!.Value.Median;
        var perDose = outlook.Options.BodyWaterLitersOf(patient);
        var urea = Clearance.FromLitersPerWeek(Math.Max(0, weeklyUreaDose - peritoneal) * perDose);
        var function = patient.ResidualFunction;
        var creatinineOverUrea = function.UreaClearance > default(Clearance) ? function.CreatinineClearance / function.UreaClearance : 1;
        var removed = outlook[OutcomeMeasures.Ultrafiltration].Value!.Value.Median;
        var wanted = fluidRemoval is { } floor ? Require.ZeroOrMore(floor, nameof(fluidRemoval)).Milliliters : 0;
        return new(urea, urea * (0.5 * (1 + creatinineOverUrea)), Volume.FromMilliliters(Math.Max(0, wanted - (fluidRemoval is null ? 0 : removed))), function);
    }

    /// <summary>The last day on which the function is enough for the clearance that is wanted, if it goes on to fall as stated; null: never comes, or is not there now as far as it is known.</summary>
    /// <param name="decline">How it falls, from the day on which the patient's function was measured.</param>
    public DateOnly? LastsUntil(RenalDecline decline)
    {
        ArgumentNullException.ThrowIfNull(decline);
        return FiltrationRate > default(Clearance) && now.FiltrationRate >= FiltrationRate ? decline.DayOf(FiltrationRate / now.FiltrationRate, now) : null;
    }

    /// <summary>In words, with the numbers.</summary>
    public override string ToString() => !now.IsClearanceKnown || IsThereNow is not { } isThere
        ? Invariant($"The goals ask for a filtration rate of {FiltrationRate.MillilitersPerMinute:0.0} mL/min and {Urine.Milliliters:0} mL of urine a day; {(now.IsClearanceKnown ? "urine" : now.Missing)} was not stated.")
        : Invariant(
        $"{(isThere ? "The goals are met down to" : "The goals are not met now; they would be with")} a filtration rate of {FiltrationRate.MillilitersPerMinute:0.0} mL/min (now {now.FiltrationRate.MillilitersPerMinute:0.0}) and {Urine.Milliliters:0} mL of urine a day (now {(now.IsUrineStated ? Invariant($"{now.UrineVolumePerDay.Milliliters:0}") : "not stated")}).");

    private static bool? Enough(bool isAsFarAsKnown, bool isKnown) => isAsFarAsKnown ? true : isKnown ? false : null;
}
