using static System.FormattableString;

namespace Transport;

/// <summary>One index of one person over several tests: its trend, and which change is larger than chance.</summary>
public sealed record SerialIndex
{
    /// <summary>What it is.</summary>
    public required string Name { get; init; }

    /// <summary>Its values in order of date, two or more.</summary>
    public required IReadOnlyList<SerialPoint> Points { get; init; }

    /// <summary>Standard deviation of one test within the person, in the unit of the index.</summary>
    public required IndexValue WithinPerson { get; init; }

    /// <summary>Smallest change between two tests that is more than chance with 95 % probability: 2.77 times the standard deviation of one test.</summary>
    public IndexValue MinimalDetectableChange => new(
        $"minimal detectable change of {Name}", 1.96 * Math.Sqrt(2) * WithinPerson.Value, WithinPerson.Unit,
        Invariant($"1.96 × √2 × {WithinPerson.Value:0.###}"), WithinPerson.Source);

    /// <summary>Last value less first.</summary>
    public IndexValue ChangeFromFirst => Change(Points[0], Points[^1]);

    /// <summary>Last value less the one before.</summary>
    public IndexValue ChangeFromPrevious => Change(Points[^2], Points[^1]);

    /// <summary>Slope per year by least squares, with its error from the within-person deviation; null where all dates are within a month.</summary>
    public IndexValue? SlopePerYear
    {
        get
        {
            double[] years = [.. Points.Select(point => (point.Date.DayNumber - Points[0].Date.DayNumber) / 365.25)];
            var (x, y) = (years.Average(), Points.Average(point => point.Index.Value));
            var spread = years.Sum(one => (one - x) * (one - x));
            return years[^1] < 1 / 12.0
                ? null
                : new($"{Name}, per year", years.Zip(Points).Sum(pair => (pair.First - x) * (pair.Second.Index.Value - y)) / spread,
                    (WithinPerson.Unit.Length == 0 ? "" : WithinPerson.Unit) + "/year", Invariant($"least squares over {Points.Count} tests"), "computed",
                    WithinPerson.Value / Math.Sqrt(spread));
        }
    }

    /// <summary>Whether a change is larger than the minimal detectable one.</summary>
    public bool IsReal(IndexValue change)
    {
        ArgumentNullException.ThrowIfNull(change);
        return Math.Abs(change.Value) > MinimalDetectableChange.Value;
    }

    /// <summary>Decimals that its scatter between two tests leaves a meaning to: 0 of a volume, 2 of a ratio, else 1.</summary>
    public int Decimals => WithinPerson.Unit switch { "mL" => 0, "" => 2, _ => 1 };

    // "7.5", with the minus sign of print.
    internal string Digits(double value) =>
        (Math.Round(value, Decimals) + 0.0).ToString($"F{Decimals}", System.Globalization.CultureInfo.InvariantCulture).Replace('-', '−');

    private IndexValue Change(SerialPoint from, SerialPoint to) => new(
        $"change of {Name}", to.Index.Value - from.Index.Value, WithinPerson.Unit,
        Invariant($"from {Digits(from.Index.Value)} on {from.Date:yyyy-MM-dd} to {Digits(to.Index.Value)} on {to.Date:yyyy-MM-dd}"), "difference",
        Math.Sqrt(2) * WithinPerson.Value);
}
