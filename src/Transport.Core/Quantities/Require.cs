using System.Collections.Immutable;
using System.Globalization;
using System.Runtime.CompilerServices;

namespace Transport;

/// <summary>Checks at the door: what passes is finite and in range, so no value inside the library has to be checked again.</summary>
internal static class Require
{
    /// <exception cref="ArgumentOutOfRangeException">The value is NaN or infinite.</exception>
    public static double Finite(double value, string unit, [CallerArgumentExpression(nameof(value))] string? name = null) =>
        double.IsFinite(value) ? value : throw OutOfRange(value, unit, "a finite number", name);

    /// <exception cref="ArgumentOutOfRangeException">The value is NaN, infinite or negative.</exception>
    public static double NotNegative(double value, string unit, [CallerArgumentExpression(nameof(value))] string? name = null) =>
        double.IsFinite(value) && value >= 0 ? value : throw OutOfRange(value, unit, "zero or more", name);

    /// <exception cref="ArgumentOutOfRangeException">The value is NaN, infinite, zero or negative.</exception>
    public static double Positive(double value, string unit, [CallerArgumentExpression(nameof(value))] string? name = null) =>
        double.IsFinite(value) && value > 0 ? value : throw OutOfRange(value, unit, "more than zero", name);

    /// <exception cref="ArgumentOutOfRangeException">The value is NaN or outside the closed range.</exception>
    public static double InRange(
        double value, double low, double high, string unit, [CallerArgumentExpression(nameof(value))] string? name = null) =>
        value >= low && value <= high
            ? value
            : throw OutOfRange(value, unit, string.Create(CultureInfo.InvariantCulture, $"{low} to {high}"), name);

    /// <summary>For a quantity, whose default value is its zero.</summary>
    /// <exception cref="ArgumentOutOfRangeException">The quantity is negative.</exception>
    public static T ZeroOrMore<T>(T value, string name)
        where T : struct, IComparable<T> =>
        value.CompareTo(default) >= 0 ? value : throw new ArgumentOutOfRangeException(name, value, "Expected zero or more.");

    /// <summary>For a quantity, whose default value is its zero.</summary>
    /// <exception cref="ArgumentOutOfRangeException">The quantity is zero or negative.</exception>
    public static T MoreThanZero<T>(T value, string name)
        where T : struct, IComparable<T> =>
        value.CompareTo(default) > 0 ? value : throw new ArgumentOutOfRangeException(name, value, "Expected more than zero.");

    /// <summary>For a list of which the default value is no list at all.</summary>
    /// <exception cref="ArgumentException">The list was never made.</exception>
    public static ImmutableArray<T> Made<T>(ImmutableArray<T> value, string name) =>
        value.IsDefault ? throw new ArgumentException("Expected a list, if need be an empty one; this one was never made.", name) : value;

    /// <summary>The ratio of two quantities: like a factor that is no number, one that does not exist goes no further.</summary>
    /// <exception cref="DivideByZeroException">The ratio is NaN or infinite.</exception>
    public static double Ratio<T>(double left, double right, T one, T other)
        where T : struct =>
        left / right is var ratio && double.IsFinite(ratio)
            ? ratio
            : throw new DivideByZeroException($"There is no ratio of {one} to {other} ({typeof(T).Name}).");

    private static ArgumentOutOfRangeException OutOfRange(double value, string unit, string expected, string? name) =>
        new(name, value, $"Expected {expected}{(unit.Length == 0 ? "" : " " + unit)}.");
}
