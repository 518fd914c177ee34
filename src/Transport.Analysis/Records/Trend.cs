using MathNet.Numerics;

namespace Transport.Analysis;

/// <summary>A straight line through a month of daily values.</summary>
/// <param name="SlopePerDay">Change a day.</param>
/// <param name="Error">Its standard error, widened for days that follow each other.</param>
internal sealed record Trend(double SlopePerDay, double Error)
{
    private const int FewestDays = 14;

    /// <summary>Of the last so many days; null with fewer than fourteen values.</summary>
    public static Trend? Of(IEnumerable<(int Day, double Value)> values, int days)
    {
        var all = values.ToList();
        if (all.Count == 0)
        {
            return null;
        }

        var recent = all.Where(value => value.Day > all[^1].Day - days).ToList();
        if (recent.Count < FewestDays)
        {
            return null;
        }

        double[] x = [.. recent.Select(value => (double)value.Day)], y = [.. recent.Select(value => value.Value)];
        var (intercept, slope) = Fit.Line(x, y);
        var residuals = x.Zip(y, (day, value) => value - intercept - slope * day).ToArray();
        var mean = x.Average();
        var variance = residuals.Sum(residual => residual * residual) / (x.Length - 2) / x.Sum(day => (day - mean) * (day - mean));

        // Days resemble their neighbours: the error of independent ones times √((1 + r)/(1 − r)).
        var total = residuals.Sum(residual => residual * residual);
        var lag = total > 0 ? Math.Clamp(residuals.Skip(1).Zip(residuals, (one, other) => one * other).Sum() / total, 0, 0.9) : 0;
        return new(slope, Math.Sqrt(variance * (1 + lag) / (1 - lag)));
    }
}
