using System.Globalization;
using MathNet.Numerics.Statistics;

namespace Transport.Analysis;

/// <summary>Empty weight beside the target that the book carries, and whether that is of long ago.</summary>
internal static class TargetWeight
{
    private const double DaysOfMonth = 30.44;

    /// <summary>How far the last week's empty weight is from the target, kg above; null where either is not known.</summary>
    public static double? DistanceKilograms(IReadOnlyList<ReviewedNight> reviewed) =>
        reviewed.Count > 0 && reviewed[^1].Record.TargetWeight is { } target && Recent(reviewed) is { } weight ? weight - target.Kilograms : null;

    /// <summary>Whether the target's date is not known or older than the limit.</summary>
    public static bool IsOld(NightRecord last, ReviewLimits limits) =>
        last.TargetWeight is not null && (last.TargetWeightOn is not { } date || last.Date.DayNumber - date.DayNumber > limits.TargetMonths.Value * DaysOfMonth);

    /// <summary>The distance in words, with the target's date and whether it may have had its time.</summary>
    public static string Words(IReadOnlyList<ReviewedNight> reviewed, double distance, ReviewLimits limits)
    {
        var how = Math.Abs(distance) < 0.05 ? "at" : string.Create(CultureInfo.InvariantCulture, $"{Math.Abs(distance):0.0} kg {(distance > 0 ? "above" : "below")}");
        return string.Create(CultureInfo.InvariantCulture, $"about {Recent(reviewed):0.0} kg, {how} the {Named(reviewed[^1].Record, limits)}");
    }

    /// <summary>"target weight of 68.0 kg of 2025-01-10, which is older than 3 months: ask whether it still holds".</summary>
    public static string Named(NightRecord last, ReviewLimits limits) => string.Create(
        CultureInfo.InvariantCulture,
        $"target weight of {last.TargetWeight!.Value.Kilograms:0.0} kg {(last.TargetWeightOn is { } date ? $"of {date:yyyy-MM-dd}" : "without a date")}{(!IsOld(last, limits) ? "" : last.TargetWeightOn is null ? ": ask of when it is and whether it holds" : $", older than {limits.TargetMonths.Value:0} months: ask whether it still holds")}");

    private static double? Recent(IReadOnlyList<ReviewedNight> reviewed) =>
        reviewed.Where(night => night.EmptyWeight is not null && night.Record.Date.DayNumber > reviewed[^1].Record.Date.DayNumber - 14).TakeLast(7).Select(night => night.EmptyWeight!.Value.Kilograms).ToList()
            is { Count: > 0 } weights ? weights.Median() : null;
}
