using MathNet.Numerics.LinearAlgebra;

namespace Transport.Analysis;

/// <summary>How large a change is that began on a night and comes from a cause: by each number of the book, since a large change leaves the straight lines that tie them.</summary>
/// <remarks>
/// A sudden change is an outlier until the level has followed, and what was cut off its first nights would be missing from its size: numbers are cut about the change instead. How likely a large
/// change is tells causes apart and is not held against its size: nights speak for that, and a change that is told too small is the worse mistake.
/// </remarks>
internal static class ChangeSizes
{
    /// <summary>Numbers with a size of their own: ultrafiltration, initial drain, first cycle, and the clock.</summary>
    public const int Numbers = 4;

    // By how much wider the prior of a size is where the size is told, than where causes are weighed (choice, by the bands of docs/studies/record-review.md).
    private const double Wider = 3;

    // The size by one number is the common one times one plus a normal of this deviation (choice, by the same bands).
    private const double Tie = 0.5;

    // A size is found by going about the one before, until it moves by less than so many of its standard deviations.
    private const double Settled = 0.2;
    private const int MostPasses = 4;

    /// <summary>The sizes by each number, in the units of the cause, with their deviations; of a number that is <see cref="IndexOf"/>.</summary>
    /// <param name="deviation">Of the size before any night was seen.</param>
    /// <param name="isOfBothSigns">Whether the size may be negative.</param>
    /// <param name="steps">The filter's steps from the night on which it began, with the index of their night.</param>
    /// <param name="signal">What a size of one does to a number on a night, where that may hold the day too.</param>
    public static (double Mean, double Deviation)[] Of(
        double deviation, bool isOfBothSigns, ReadOnlySpan<(int Night, FilterStep Step)> steps, Func<NightChannel, int, bool, double> signal)
    {
        var prior = Matrix<double>.Build.Dense(Numbers, Numbers, (i, j) => Wider * Wider * deviation * deviation * (i == j ? 1 + Tie * Tie : 1)).Inverse();
        var (seen, information) = Seen(steps, signal);
        var covariance = (prior + information).Inverse();
        var sizes = new (double Mean, double Deviation)[Numbers];
        for (var pass = 0; pass < MostPasses; pass++)
        {
            var means = covariance * Projection(steps, seen, sizes);
            var isSettled = pass > 0;
            for (var i = 0; i < Numbers; i++)
            {
                var spread = Math.Sqrt(covariance[i, i]);
                isSettled &= Math.Abs(means[i] - sizes[i].Mean) <= Settled * spread;
                sizes[i] = (means[i], spread);
            }

            if (isSettled)
            {
                break;
            }
        }

        return isOfBothSigns ? sizes : [.. sizes.Select(size => NotNegative(size.Mean, size.Deviation))];
    }

    /// <summary>Place of a number among the sizes.</summary>
    public static int IndexOf(NightChannel channel) => channel switch
    {
        NightChannel.Ultrafiltration => 0,
        NightChannel.InitialDrain => 1,
        NightChannel.FirstCycle => 2,
        _ => 3,
    };

    // What is seen in each innovation of a size of one by each number, and what it tells. Other numbers' sizes are seen too, by what the filter has learned of them.
    private static (double[] Seen, Matrix<double> Information) Seen(ReadOnlySpan<(int Night, FilterStep Step)> steps, Func<NightChannel, int, bool, double> signal)
    {
        var seen = new double[Numbers * steps.Length];
        var information = Matrix<double>.Build.Dense(Numbers, Numbers);
        var states = new double[]?[Numbers];
        for (var t = 0; t < steps.Length; t++)
        {
            var (night, step) = steps[t];
            if (step.Channel is not { } channel)
            {
                foreach (var passed in states)
                {
                    if (passed is not null)
                    {
                        NightFilter.Pass(passed, step);
                    }
                }

                continue;
            }

            var row = seen.AsSpan(Numbers * t, Numbers);
            row[IndexOf(channel)] = signal(channel, night, step.HoldsDay);
            for (var i = 0; i < Numbers; i++)
            {
                // Most causes move one number or two.
                if (states[i] is null && row[i] == 0)
                {
                    continue;
                }

                var state = states[i] ??= new double[NightFilter.Size];
                row[i] -= NightFilter.Along(step.Load, state);
                NightFilter.Follow(state, step.Gain, row[i]);
            }

            for (var i = 0; i < Numbers; i++)
            {
                for (var j = 0; j < Numbers && row[i] != 0; j++)
                {
                    information[i, j] += row[i] * row[j] / step.Variance;
                }
            }
        }

        return (seen, information);
    }

    // How far the nights speak for each size, with numbers cut off where they lie too far from a change of these sizes.
    private static Vector<double> Projection(ReadOnlySpan<(int Night, FilterStep Step)> steps, double[] seen, (double Mean, double Deviation)[] about)
    {
        var projection = Vector<double>.Build.Dense(Numbers);
        var behind = new double[NightFilter.Size];
        var isBehind = false;
        for (var t = 0; t < steps.Length; t++)
        {
            var step = steps[t].Step;
            if (step.Channel is null)
            {
                NightFilter.Pass(behind, step);
                continue;
            }

            var row = seen.AsSpan(Numbers * t, Numbers);
            var innovation = step.Innovation + step.CutOff - (isBehind ? NightFilter.Along(step.Load, behind) : 0);
            var expected = 0.0;
            for (var i = 0; i < Numbers; i++)
            {
                expected += about[i].Mean * row[i];
            }

            var beyond = innovation - expected - NightFilter.Within(innovation - expected, step.Variance);
            for (var i = 0; i < Numbers; i++)
            {
                projection[i] += row[i] * (innovation - beyond) / step.Variance;
            }

            // Until something is cut otherwise than it was, nothing lags behind.
            isBehind |= beyond != step.CutOff;
            if (isBehind)
            {
                NightFilter.Follow(behind, step.Gain, innovation - beyond - step.Innovation);
            }
        }

        return projection;
    }

    // A normal cut off at zero: the mean and deviation of what is left.
    private static (double Mean, double Deviation) NotNegative(double mean, double deviation)
    {
        var at = mean / deviation;
        var ratio = Math.Sqrt(2 / Math.PI) * Math.Exp(-ChangeSearch.EvidenceAt(at));
        return (deviation * (at + ratio), deviation * Math.Sqrt(Math.Max(0, 1 - ratio * (ratio + at))));
    }
}
