namespace Transport;

/// <summary>One computed index, with what it was computed from.</summary>
public sealed record IndexValue
{
    /// <summary>An index.</summary>
    /// <exception cref="ArgumentOutOfRangeException">The value is not finite, or the standard deviation negative.</exception>
    public IndexValue(string name, double value, string unit, string formula, string source, double? standardDeviation = null)
    {
        Name = name;
        Value = Require.Finite(value, unit);
        Unit = unit;
        Formula = formula;
        Source = source;
        StandardDeviation = standardDeviation is { } spread ? Require.NotNegative(spread, unit, nameof(standardDeviation)) : null;
    }

    /// <summary>What it is, for a table.</summary>
    public string Name { get; }

    /// <summary>The value.</summary>
    public double Value { get; }

    /// <summary>Unit of <see cref="Value"/>; empty where it is a ratio.</summary>
    public string Unit { get; }

    /// <summary>Standard deviation from the assays, in the same unit; null where unknown.</summary>
    public double? StandardDeviation { get; }

    /// <summary>What it was computed from, with the numbers and every choice made.</summary>
    public string Formula { get; }

    /// <summary>Where the formula comes from, with its mark.</summary>
    public string Source { get; }

    /// <summary>"net ultrafiltration 380 mL", invariant culture.</summary>
    public override string ToString() => FormattableString.Invariant($"{Name} {Value:0.###}{(Unit.Length == 0 ? "" : " ")}{Unit}");
}
