using System.Globalization;
using MathNet.Numerics.Distributions;

namespace Transport.Analysis;

/// <summary>A mean over patients and the interval in which it lies with 95 % confidence (Student's t).</summary>
/// <param name="Mean">Mean.</param>
/// <param name="Low">Lower end.</param>
/// <param name="High">Upper end.</param>
public readonly record struct MeanInterval(double Mean, double Low, double High)
{
    /// <summary>Of two values or more; of paired differences it is the paired interval.</summary>
    /// <exception cref="ArgumentException">Fewer than two values, or one that is not finite.</exception>
    public static MeanInterval Of(IEnumerable<double> values)
    {
        double[] all = [.. values];
        if (all.Length < 2 || !all.All(double.IsFinite))
        {
            throw new ArgumentException("Expected two finite values or more.", nameof(values));
        }

        var mean = all.Average();
        var error = Math.Sqrt(all.Sum(value => (value - mean) * (value - mean)) / (all.Length - 1) / all.Length);
        var half = StudentT.InvCDF(0, 1, all.Length - 1, 0.975) * error;
        return new(mean, mean - half, mean + half);
    }

    /// <summary>"4.0 (3.6 to 4.4)".</summary>
    public override string ToString() => string.Create(CultureInfo.InvariantCulture, $"{Mean:0.0} ({Low:0.0} to {High:0.0})");
}
