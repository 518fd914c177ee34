using System.Globalization;

namespace Transport.Reporting;

/// <summary>Numbers as a reader wants them.</summary>
internal static class Digits
{
    /// <summary>A number with three or so significant digits, never in exponent form between 0.0001 and a million.</summary>
    public static string Of(double value, int significant = 3)
    {
        var size = Math.Abs(value);
        if (size == 0)
        {
            return "0";
        }

        if (size is < 1e-4 or >= 1e6)
        {
            return value.ToString("0.##E+0", CultureInfo.InvariantCulture);
        }

        var places = significant - 1 - (int)Math.Floor(Math.Log10(size));
        if (places < 0)
        {
            var unit = Math.Pow(10, -places);
            return Signed((Math.Round(value / unit) * unit).ToString("F0", CultureInfo.InvariantCulture));
        }

        var decimals = Math.Min(places, 6);
        return Signed(Math.Round(value, decimals).ToString("F" + decimals, CultureInfo.InvariantCulture));
    }

    /// <summary>A number with as many decimals as its standard deviation has, which has two significant digits; without one, as above.</summary>
    public static string Beside(double value, double? deviation) => deviation is > 0
        ? Fixed(value, Math.Clamp(1 - (int)Math.Floor(Math.Log10(deviation.Value)), 0, 6))
        : Of(value);

    /// <summary>A number with fixed decimals.</summary>
    public static string Fixed(double value, int decimals) => Signed(value.ToString("F" + decimals, CultureInfo.InvariantCulture));

    /// <summary>"55 %".</summary>
    public static string Percent(double share) => Fixed(100 * share, 0) + " %";

    /// <summary>"4 h" or "4 h 20 min".</summary>
    public static string Hours(TimeSpan time)
    {
        var minutes = (int)Math.Round(time.TotalMinutes);
        var (hours, rest) = Math.DivRem(minutes, 60);
        return (hours, rest) switch
        {
            (0, _) => $"{rest} min",
            (_, 0) => $"{hours} h",
            _ => $"{hours} h {rest} min",
        };
    }

    /// <summary>A number with the minus sign of print, and no "-0"; other words as they are.</summary>
    public static string Signed(string number) => number is not ['-', >= '0' and <= '9', ..] ? number
        : number.All(sign => sign is '-' or '0' or '.') ? number[1..]
        : "−" + number[1..];
}
