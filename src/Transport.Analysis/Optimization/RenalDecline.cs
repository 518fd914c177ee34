using System.Globalization;

namespace Transport.Analysis;

/// <summary>How residual kidney function is expected to fall, as the user states it: so much clearance a month, urine and creatinine clearance in proportion.</summary>
/// <param name="Measured">The day of the function that the patient has on record.</param>
/// <param name="FiltrationRateLostPerMonth">Mean of renal urea and creatinine clearance that is lost in 30 days.</param>
public sealed record RenalDecline(DateOnly Measured, Clearance FiltrationRateLostPerMonth)
{
    private const double Month = 30;

    /// <summary>Mean of renal urea and creatinine clearance that is lost in 30 days.</summary>
    /// <exception cref="ArgumentOutOfRangeException">Negative.</exception>
    public Clearance FiltrationRateLostPerMonth
    {
        get;
        init => field = Require.ZeroOrMore(value, nameof(FiltrationRateLostPerMonth));
    }
    = Require.ZeroOrMore(FiltrationRateLostPerMonth, nameof(FiltrationRateLostPerMonth));

    /// <summary>Share of today's function that is left on a day, 0 to 1.</summary>
    internal double ShareOn(DateOnly day, ResidualFunction today) => today.FiltrationRate > default(Clearance)
        ? Math.Clamp(1 - (day.DayNumber - Measured.DayNumber) / Month * (FiltrationRateLostPerMonth / today.FiltrationRate), 0, 1)
        : 1;

    /// <summary>The day on which only a share of today's function is left; null: not within fifty years.</summary>
    internal DateOnly? DayOf(double share, ResidualFunction today)
    {
        if (!(FiltrationRateLostPerMonth > default(Clearance)) || !(today.FiltrationRate > default(Clearance)))
        {
            return null;
        }

        var days = (1 - share) * (today.FiltrationRate / FiltrationRateLostPerMonth) * Month;
        return days is >= 0 and < 50 * 365.25 ? Measured.AddDays((int)Math.Floor(days)) : null;
    }

    internal static string Words(DateOnly day) => day.ToString("d MMMM yyyy", CultureInfo.InvariantCulture);
}
