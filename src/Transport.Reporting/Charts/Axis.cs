namespace Transport.Reporting;

/// <summary>An axis: what it measures, in which unit, and, where the data should not decide, how far it reaches.</summary>
public sealed record Axis
{
    // Days beside the first and the last; before the first so much of all that its name does not come under the numbers of the other axis.
    private const double LeastMargin = 0.7;
    private const double RoomForDate = 0.035;

    /// <summary>An axis titled "label (unit)".</summary>
    /// <param name="label">What is measured; not empty.</param>
    /// <param name="unit">The unit as printed, such as "mL"; empty for a dimensionless number.</param>
    /// <exception cref="ArgumentException"><paramref name="label"/> is empty.</exception>
    public Axis(string label, string unit)
    {
        ArgumentNullException.ThrowIfNull(unit);
        Label = ChartChecks.Text(label, "The label of an axis");
        Unit = unit;
    }

    private Axis(IReadOnlyList<string> categories)
    {
        Label = "";
        Unit = "";
        TickValues = [.. Enumerable.Range(0, categories.Count).Select(i => (double)i)];
        TickLabels = [.. categories];
        Range = new Extent(-0.5, categories.Count - 0.5);
    }

    private Axis(DateOnly first, DateOnly last)
    {
        var days = last.DayNumber - first.DayNumber;
        var step = days <= 45 ? 7 : days <= 140 ? 14 : 61;
        Label = "";
        Unit = "";
        TickValues = [.. Enumerable.Range(0, days / step + 1).Select(i => (double)(i * step))];
        TickLabels = [.. TickValues.Select(value => first.AddDays((int)value).ToString("d MMM", System.Globalization.CultureInfo.InvariantCulture))];
        Range = new Extent(-Math.Max(LeastMargin, RoomForDate * days), days + LeastMargin);
    }

    private Axis(string label, Extent range) : this(label, "")
    {
        TickValues = [];
        TickLabels = [];
        Range = range;
    }

    /// <summary>What is measured. Empty only on an axis of categories or days, whose tick labels speak for themselves.</summary>
    public string Label { get; }

    /// <summary>The unit as printed; empty for a dimensionless number.</summary>
    public string Unit { get; }

    /// <summary>What is shown, in <see cref="Unit"/>; null leaves it to the data.</summary>
    /// <exception cref="ArgumentException">The range is a single point, or reaches zero or less on a logarithmic axis.</exception>
    public Extent? Range
    {
        get;
        init
        {
            if (value is { IsPoint: true } point)
                throw new ArgumentException(
                    FormattableString.Invariant($"The axis \"{Label}\" cannot show the single value {point.Lower}; a range has two ends."));
            if (value is { } range) ChartChecks.Fits(this, range.Lower, "The lower end of the range");
            field = value;
        }
    }

    /// <summary>Whether equal distances are equal ratios; then every value on the axis must be above zero.</summary>
    public bool IsLogarithmic
    {
        get;
        init
        {
            field = value;
            if (Range is { } range) ChartChecks.Fits(this, range.Lower, "The lower end of the range");
        }
    }

    /// <summary>Positions of the ticks where they are fixed, as on an axis of categories (0, 1, 2 ...); null lets the renderer
    /// choose round numbers.</summary>
    public IReadOnlyList<double>? TickValues { get; }

    /// <summary>The text at each of <see cref="TickValues"/>, same number and order; a line break starts a second line.</summary>
    public IReadOnlyList<string>? TickLabels { get; }

    /// <summary>The title as drawn: "label (unit)", or the label alone for a dimensionless number.</summary>
    public string Title => Unit.Length == 0 ? Label : $"{Label} ({Unit})";

    /// <summary>An axis of names: the first stands at 0, the second at 1, and so on.</summary>
    /// <exception cref="ArgumentException">There is no category, or one of them is empty.</exception>
    public static Axis OfCategories(params IReadOnlyList<string> categories)
    {
        ArgumentNullException.ThrowIfNull(categories);
        if (categories.Count == 0) throw new ArgumentException("An axis of categories has no category.");
        foreach (var category in categories) ChartChecks.Text(category, "A category of an axis");
        return new Axis(categories);
    }

    /// <summary>An axis of days: the first stands at 0, the next at 1; every week, fortnight or second month is named.</summary>
    /// <exception cref="ArgumentException">The last day is not after the first.</exception>
    public static Axis OfDays(DateOnly first, DateOnly last) => last > first
        ? new Axis(first, last)
        : throw new ArgumentException(FormattableString.Invariant($"An axis of days from {first:yyyy-MM-dd} to {last:yyyy-MM-dd} has no length."));

    /// <summary>An axis without numbers, for positions that mean something only beside the marks drawn on it.</summary>
    internal static Axis OfPosition(string label, Extent range) => new(label, range);
}
