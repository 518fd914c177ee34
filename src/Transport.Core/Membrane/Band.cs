using System.Globalization;

namespace Transport;

/// <summary>A result over an ensemble: its median and the interval that holds a share of it.</summary>
/// <typeparam name="T">A quantity, or a dimensionless double.</typeparam>
/// <param name="Median">Half of the ensemble is below.</param>
/// <param name="Low">Lower end of the central interval.</param>
/// <param name="High">Upper end of the central interval.</param>
/// <param name="Coverage">Share of the ensemble inside the interval, 0 to 1; 0.90 unless said otherwise.</param>
/// <param name="Doubt">Which layers of doubt it holds.</param>
public readonly record struct Band<T>(T Median, T Low, T High, double Coverage, Doubt Doubt)
    where T : struct
{
    /// <summary>The band of something that rises with this: each of its three values, the same share and doubt.</summary>
    /// <typeparam name="TOther">A quantity, or a dimensionless double.</typeparam>
    /// <param name="rising">What it is of a value.</param>
    /// <exception cref="ArgumentNullException"><paramref name="rising"/> is null.</exception>
    /// <exception cref="ArgumentException">It falls: low would stand above high.</exception>
    public Band<TOther> Select<TOther>(Func<T, TOther> rising)
        where TOther : struct, IComparable<TOther>
    {
        ArgumentNullException.ThrowIfNull(rising);
        var (median, low, high) = (rising(Median), rising(Low), rising(High));
        return low.CompareTo(median) <= 0 && median.CompareTo(high) <= 0
            ? new(median, low, high, Coverage, Doubt)
            : throw new ArgumentException($"Expected what rises with the value; found {low} of the low end, {median} of the median and {high} of the high end.", nameof(rising));
    }

    /// <summary>"540 mL (420 mL to 660 mL)".</summary>
    public override string ToString() => string.Create(CultureInfo.InvariantCulture, $"{Said(Median)} ({Said(Low)} to {Said(High)})");

    // A ratio with four digits, a time in minutes; a quantity says itself.
    private static string Said(T value) => value switch
    {
        double number => number.ToString("G4", CultureInfo.InvariantCulture),
        TimeSpan time => string.Create(CultureInfo.InvariantCulture, $"{time.TotalMinutes:0} min"),
        _ => value.ToString()!,
    };
}
