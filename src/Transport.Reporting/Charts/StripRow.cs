namespace Transport.Reporting;

/// <summary>One row of a strip plot: an observed value with its uncertainty beside the range of a population, all in one unit.</summary>
public sealed record StripRow
{
    /// <summary>A row.</summary>
    /// <param name="name">The index, such as "D/P creatinine, 4 h"; not empty.</param>
    /// <param name="unit">Its unit as printed; empty for a dimensionless number.</param>
    /// <param name="value">What was observed, finite.</param>
    /// <param name="uncertainty">How far the true value may lie from it; contains <paramref name="value"/>.</param>
    /// <param name="population">The range of the population, such as mean − SD to mean + SD; not a single value.</param>
    /// <param name="center">The population's mean or median; inside <paramref name="population"/>.</param>
    /// <exception cref="ArgumentException">No name, a value that is not finite, or one outside the range that must hold it.</exception>
    public StripRow(string name, string unit, double value, Extent uncertainty, Extent population, double center)
    {
        ArgumentNullException.ThrowIfNull(unit);
        Name = ChartChecks.Text(name, "The name of a strip row");
        Unit = unit;
        Value = ChartChecks.Finite(value, $"Strip row \"{name}\": value");
        Center = ChartChecks.Finite(center, $"Strip row \"{name}\": center");
        Uncertainty = uncertainty;
        Population = population;
        if (population.IsPoint)
            throw new ArgumentException(
                FormattableString.Invariant($"Strip row \"{name}\": the population range is the single value {center}."));
        Inside(uncertainty, value, "value", "uncertainty");
        Inside(population, center, "center", "population range");
    }

    /// <summary>The index.</summary>
    public string Name { get; }

    /// <summary>Its unit as printed; empty for a dimensionless number.</summary>
    public string Unit { get; }

    /// <summary>What was observed, in <see cref="Unit"/>.</summary>
    public double Value { get; }

    /// <summary>How far the true value may lie, in <see cref="Unit"/>.</summary>
    public Extent Uncertainty { get; }

    /// <summary>The range of the population, in <see cref="Unit"/>.</summary>
    public Extent Population { get; }

    /// <summary>Mean or median of the population, in <see cref="Unit"/>.</summary>
    public double Center { get; }

    /// <summary>Digits after the point in the printed numbers, 0 to 6; 2 unless said otherwise.</summary>
    /// <exception cref="ArgumentException">Outside 0 to 6.</exception>
    public int Decimals
    {
        get;
        init => field = value is >= 0 and <= 6
            ? value
            : throw new ArgumentException(FormattableString.Invariant($"Strip row \"{Name}\": {value} decimals are outside 0 to 6."));
    } = 2;

    private void Inside(Extent range, double value, string what, string whichRange)
    {
        if (value < range.Lower || value > range.Upper)
            throw new ArgumentException(FormattableString.Invariant(
                $"Strip row \"{Name}\": its {what}, {value}, lies outside its {whichRange}, {range.Lower} to {range.Upper}."));
    }
}
