namespace Transport.Reporting;

/// <summary>A closed range on an axis, in the unit of that axis: what an axis shows, what a whisker spans, what a mark shades.</summary>
/// <remarks><c>default(Extent)</c> is the point at zero.</remarks>
public readonly record struct Extent
{
    /// <summary>The range from <paramref name="lower"/> to <paramref name="upper"/>; both may be the same value.</summary>
    /// <exception cref="ArgumentException">An end is not finite, or the ends are in the wrong order.</exception>
    public Extent(double lower, double upper)
    {
        Lower = ChartChecks.Finite(lower, "The lower end of an extent");
        Upper = ChartChecks.Finite(upper, "The upper end of an extent");
        if (lower > upper)
            throw new ArgumentException(
                FormattableString.Invariant($"The lower end of an extent, {lower}, is above its upper end, {upper}."));
    }

    /// <summary>The smaller end.</summary>
    public double Lower { get; }

    /// <summary>The larger end.</summary>
    public double Upper { get; }

    /// <summary>Upper minus lower end; never negative.</summary>
    public double Width => Upper - Lower;

    /// <summary>Whether the two ends are one value.</summary>
    public bool IsPoint => Lower == Upper;
}
