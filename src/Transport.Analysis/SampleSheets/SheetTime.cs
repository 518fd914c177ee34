using System.Globalization;
using System.Text.RegularExpressions;

namespace Transport.Analysis;

/// <summary>Dwell times and clock times. All in minutes.</summary>
internal static partial class SheetTime
{
    private const double Day = 24 * 60;

    // A clock time this long after the end of inflow was, in truth, before it.
    private const double Before = 18 * 60;

    /// <summary>Minutes of "h:mm", "hh:mm:ss" or "h:mm pm"; null where the text has another form.</summary>
    public static double? Clock(string text)
    {
        var match = ClockForm().Match(text.Trim());
        if (!match.Success)
        {
            return null;
        }

        var (hours, minutes) = (Number(match, "h"), Number(match, "m"));
        var half = match.Groups["half"].Value;
        if (minutes >= 60 || hours >= (half.Length > 0 ? 13 : 24))
        {
            return null;
        }

        hours = half.Length == 0 ? hours : hours % 12 + (half[0] is 'p' or 'P' ? 12 : 0);
        return 60 * hours + minutes + (match.Groups["s"].Success ? Number(match, "s") / 60 : 0);
    }

    /// <summary>
    /// Dwell time in minutes: a number (minutes, or with "min" or "h" behind it), or "h:mm", which is a clock time where the
    /// clock time of the end of inflow is known and a duration where it is not. Null where the text is none of these.
    /// </summary>
    public static double? SinceInflow(string text, double? endOfInflow, char? fileMark)
    {
        if (Clock(text) is { } clock)
        {
            return endOfInflow is { } end ? Elapsed(end, clock)
                : text.EndsWith('m') || text.EndsWith('M') || text.EndsWith('.') ? null
                : clock;
        }

        var match = LengthForm().Match(text.Trim());
        return match.Success && SheetNumber.TryRead(match.Groups["number"].Value, fileMark, out var value, out _)
            ? value * (match.Groups["unit"].Value.StartsWith('h') || match.Groups["unit"].Value.StartsWith('H') ? 60 : 1)
            : null;
    }

    /// <summary>From one clock time to another, across midnight where need be; negative where it was shortly before.</summary>
    public static double Elapsed(double from, double to)
    {
        var minutes = (to - from + Day) % Day;
        return minutes > Before ? minutes - Day : minutes;
    }

    private static double Number(Match match, string group) => double.Parse(match.Groups[group].Value, CultureInfo.InvariantCulture);

    [GeneratedRegex(@"^(?<h>[0-9]{1,2}):(?<m>[0-9]{2})(:(?<s>[0-9]{2}))?\s*((?<half>[aApP])\.?[mM]\.?)?$")]
    private static partial Regex ClockForm();

    [GeneratedRegex(@"^(?<number>.*?\d)\s*(?<unit>min|minutes?|h|hrs?|hours?)?\.?$", RegexOptions.IgnoreCase)]
    private static partial Regex LengthForm();
}
