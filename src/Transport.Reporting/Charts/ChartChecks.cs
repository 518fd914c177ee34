namespace Transport.Reporting;

/// <summary>The checks that the nouns of a figure share. A message says what is wrong, where, and with which value.</summary>
internal static class ChartChecks
{
    public static string Text(string value, string what) =>
        string.IsNullOrWhiteSpace(value) ? throw new ArgumentException($"{what} is empty.") : value;

    public static double Finite(double value, string what) =>
        double.IsFinite(value)
            ? value
            : throw new ArgumentException(FormattableString.Invariant($"{what} is {value}; a chart takes finite numbers only."));

    /// <summary>A copy of the values, at least one, all finite.</summary>
    public static IReadOnlyList<double> Values(IReadOnlyList<double> values, string what)
    {
        ArgumentNullException.ThrowIfNull(values);
        if (values.Count == 0) throw new ArgumentException($"{what} has no values.");
        for (var i = 0; i < values.Count; i++) Finite(values[i], FormattableString.Invariant($"{what}[{i}]"));
        return [.. values];
    }

    public static void SameLength(int expected, int found, string whatExpected, string whatFound)
    {
        if (expected != found)
            throw new ArgumentException(
                FormattableString.Invariant($"{whatExpected} has {expected} values, {whatFound} has {found}; they must be equal in number."));
    }

    /// <summary>A logarithmic axis has no place for zero or less.</summary>
    public static void Fits(Axis axis, double value, string what)
    {
        if (axis.IsLogarithmic && value <= 0)
            throw new ArgumentException(
                FormattableString.Invariant($"{what} is {value}, but its axis \"{axis.Label}\" is logarithmic and needs values above zero."));
    }
}
