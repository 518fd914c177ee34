namespace Transport;

/// <summary>The three borders between the four classes of an index, and to which side a value on the upper border belongs.</summary>
/// <remarks>
/// Classes are half-open on unrounded values. Borders, not mean ± SD, are stored: the published 1987 borders are not symmetric.
/// Mirrored in reference-data/twardowski-1987-categories and warady-1996-children.
/// </remarks>
public sealed record CategoryCuts
{
    /// <summary>Borders in the order of transfer: rising for D/P, falling for D/D0 and dialysate glucose.</summary>
    /// <param name="slowBorder">Between slow and slow-average.</param>
    /// <param name="middleBorder">Between slow-average and fast-average.</param>
    /// <param name="fastBorder">Between fast-average and fast.</param>
    /// <exception cref="ArgumentOutOfRangeException">A border is not a positive number, or the three neither rise nor fall.</exception>
    public CategoryCuts(double slowBorder, double middleBorder, double fastBorder)
    {
        SlowBorder = Require.Positive(slowBorder, "");
        MiddleBorder = Require.Positive(middleBorder, "");
        FastBorder = Require.Positive(fastBorder, "");
        if (!(slowBorder < middleBorder && middleBorder < fastBorder) && !(slowBorder > middleBorder && middleBorder > fastBorder))
        {
            throw new ArgumentOutOfRangeException(nameof(middleBorder), middleBorder, FormattableString.Invariant($"Expected borders that rise or fall from {slowBorder} to {fastBorder}."));
        }
    }

    /// <summary>What is classed, and whose classes these are.</summary>
    public required string Name { get; init; }

    /// <summary>Border between slow and slow-average; a value on it is on the side with the larger value.</summary>
    public double SlowBorder { get; }

    /// <summary>Border between slow-average and fast-average; a value on it is on the side with the larger value.</summary>
    public double MiddleBorder { get; }

    /// <summary>Border between fast-average and fast; see <see cref="IsFastBorderFast"/>.</summary>
    public double FastBorder { get; }

    /// <summary>
    /// Whether a rising index exactly on the upper border is fast. False follows the textbook (0.81 is High-average); a
    /// national registry does the opposite ("0.81 and over").
    /// </summary>
    public bool IsFastBorderFast { get; init; }

    /// <summary>Whether the index falls as transfer gets faster, as D/D0 glucose does.</summary>
    public bool IsFalling => FastBorder < SlowBorder;

    /// <summary>Largest value that is classed; above it something else is wrong.</summary>
    /// <exception cref="ArgumentOutOfRangeException">Zero, negative or not finite.</exception>
    public double LargestValue { get; init => field = Require.Positive(value, ""); } = 1.10;

    /// <summary>How the borders are known.</summary>
    public required Evidence Evidence { get; init; }

    /// <summary>Where they come from.</summary>
    public required string Source { get; init; }

    /// <summary>Adults, 4-h D/P creatinine, corrected: below 0.50, 0.65, up to 0.81, above.</summary>
    public static CategoryCuts Twardowski1987Creatinine { get; } = new(0.50, 0.65, 0.81)
    {
        Name = "4-h D/P creatinine, adults, 1987",
        Evidence = Evidence.Read,
        Source = "Twardowski et al., Perit Dial Bull 1987;7:138-147, as printed in a secondary source",
    };

    /// <summary>Adults, 4-h D/D0 glucose at 2.27 %, and at no other strength: below 0.26, 0.38, 0.49.</summary>
    public static CategoryCuts Twardowski1987Glucose { get; } = new(0.49, 0.38, 0.26)
    {
        Name = "4-h D/D0 glucose at 2.27 %, adults, 1987",
        LargestValue = 1.0,
        Evidence = Evidence.Memory,
        Source = "Twardowski et al., Perit Dial Bull 1987;7:138-147",
    };

    /// <summary>
    /// Adults, fast form: absolute dialysate glucose after 4 h at 2.27 %, mmol/L, from 502, 723 and 945 mg/dL. No D0 is needed.
    /// </summary>
    public static CategoryCuts TwardowskiFastGlucose { get; } = new(945 * 0.055507, 723 * 0.055507, 502 * 0.055507)
    {
        Name = "4-h dialysate glucose at 2.27 %, mmol/L, adults, fast form",
        LargestValue = 126.0,
        Evidence = Evidence.Memory,
        Source = "Twardowski et al., Perit Dial Bull 1987;7:138-147, and Semin Dial 1990;3:141-142",
    };

    /// <summary>Children filled with 1100 mL/m², 4-h D/P creatinine.</summary>
    public static CategoryCuts Warady1996Creatinine { get; } = new(0.51, 0.64, 0.77)
    {
        Name = "4-h D/P creatinine, children, 1996",
        Evidence = Evidence.Memory,
        Source = "Warady et al., J Am Soc Nephrol 1996;7:2385-2391",
    };

    /// <summary>Children filled with 1100 mL/m², 4-h D/D0 glucose at 2.27 %, and at no other strength.</summary>
    public static CategoryCuts Warady1996Glucose { get; } = new(0.43, 0.33, 0.22)
    {
        Name = "4-h D/D0 glucose at 2.27 %, children, 1996",
        LargestValue = 1.0,
        Evidence = Evidence.Memory,
        Source = "Warady et al., J Am Soc Nephrol 1996;7:2385-2391",
    };

    /// <summary>Which side a value on the upper border belongs to, as a sentence for a report.</summary>
    public string BorderRule => FormattableString.Invariant(
        $"{FastBorder:0.00} itself counts as {(IsFalling || !IsFastBorderFast ? TransportCategory.FastAverage : TransportCategory.Fast).Name()}");

    /// <summary>The class of a value.</summary>
    /// <param name="value">The index, unrounded.</param>
    /// <exception cref="ArgumentOutOfRangeException">Not a number, negative, or above <see cref="LargestValue"/>.</exception>
    public TransportCategory Of(double value)
    {
        Require.InRange(value, 0.0, LargestValue, "");
        return IsFalling
            ? value < FastBorder ? TransportCategory.Fast
                : value < MiddleBorder ? TransportCategory.FastAverage
                : value < SlowBorder ? TransportCategory.SlowAverage
                : TransportCategory.Slow
            : value > FastBorder || (IsFastBorderFast && value == FastBorder) ? TransportCategory.Fast
                : value >= MiddleBorder ? TransportCategory.FastAverage
                : value >= SlowBorder ? TransportCategory.SlowAverage
                : TransportCategory.Slow;
    }

    /// <summary>How probable each class is when the true value is normal around the measured one.</summary>
    /// <param name="value">The index.</param>
    /// <param name="standardDeviation">Standard deviation of the error, above zero.</param>
    /// <exception cref="ArgumentOutOfRangeException">The value is out of range, or the standard deviation not positive.</exception>
    public CategoryProbabilities ProbabilitiesOf(double value, double standardDeviation)
    {
        Require.InRange(value, 0.0, LargestValue, "");
        Require.Positive(standardDeviation, "");
        var slower = IsFalling ? -1.0 : 1.0;
        double Slower(double border) => NormalDistribution.Cumulative(slower * (border - value) / standardDeviation);
        var (slow, average, fast) = (Slower(SlowBorder), Slower(MiddleBorder), Slower(FastBorder));
        return new(slow, average - slow, fast - average, 1.0 - fast);
    }

    /// <summary>Distance to the nearest border.</summary>
    internal double DistanceToBorder(double value) =>
        Math.Min(Math.Abs(value - SlowBorder), Math.Min(Math.Abs(value - MiddleBorder), Math.Abs(value - FastBorder)));
}
