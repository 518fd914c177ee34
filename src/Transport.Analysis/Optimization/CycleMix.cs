using System.Collections.Immutable;

namespace Transport.Analysis;

/// <summary>How many cycles of each kind: least glucose for an ultrafiltration and a clearance within a time.</summary>
/// <remarks>
/// A linear programme over cycles that do not act on each other, as in the published method of two phases (Öberg, Perit Dial Int 2021, doi
/// 10.1177/08968608211010055, abstract read). With carried-over fluid it is a start value and a bound to measure a choice by.
/// </remarks>
/// <param name="Cycles">How many of each kind, in order; whole or not.</param>
/// <param name="Glucose">Absorbed, g.</param>
/// <param name="Minutes">Time.</param>
/// <param name="Ultrafiltration">mL.</param>
/// <param name="Clearance">Clearance.</param>
public sealed record CycleMix(ImmutableArray<double> Cycles, double Glucose, double Minutes, double Ultrafiltration, double Clearance)
{
    private const double Tolerance = 1e-9;

    /// <summary>The mix with parts of cycles allowed: no whole mix absorbs less. Null: nothing meets the goals.</summary>
    /// <param name="types">The kinds of cycle.</param>
    /// <param name="ultrafiltration">Least, mL.</param>
    /// <param name="clearance">Least.</param>
    /// <param name="minutes">Most; infinite where time does not matter.</param>
    /// <exception cref="ArgumentException">There are no kinds.</exception>
    public static CycleMix? Relaxed(IReadOnlyList<CycleType> types, double ultrafiltration, double clearance, double minutes = double.PositiveInfinity) =>
        Programme(types, ultrafiltration, clearance, minutes, double.PositiveInfinity).Solve([.. types.Select(type => type.Glucose)], isWhole: false) is { } cycles
            ? Of(types, cycles)
            : null;

    /// <summary>The mix of whole cycles with the least glucose; of equal glucose the shorter. Null: nothing meets the goals.</summary>
    /// <param name="types">The kinds of cycle.</param>
    /// <param name="ultrafiltration">Least, mL.</param>
    /// <param name="clearance">Least.</param>
    /// <param name="minutes">Most.</param>
    /// <param name="mostCycles">Most cycles in all.</param>
    /// <exception cref="ArgumentException">There are no kinds.</exception>
    public static CycleMix? Whole(IReadOnlyList<CycleType> types, double ultrafiltration, double clearance, double minutes = double.PositiveInfinity, int mostCycles = 20)
    {
        double[] glucose = [.. types.Select(type => type.Glucose)];
        if (Programme(types, ultrafiltration, clearance, minutes, mostCycles).Solve(glucose, isWhole: true) is not { } first)
        {
            return null;
        }

        var shorter = Programme(types, ultrafiltration, clearance, minutes, mostCycles);
        shorter.Add(glucose, double.NegativeInfinity, Of(types, first).Glucose + 1e-6);
        return Of(types, shorter.Solve([.. types.Select(type => type.Minutes)], isWhole: true) ?? first);
    }

    /// <summary>How much more glucose than the relaxed bound, as a share of it; null where the bound is zero or below and this is more: no share says that.</summary>
    public double? GapTo(CycleMix relaxed)
    {
        ArgumentNullException.ThrowIfNull(relaxed);
        return Glucose - relaxed.Glucose <= Tolerance ? 0 : relaxed.Glucose > Tolerance ? Glucose / relaxed.Glucose - 1 : null;
    }

    private static CycleMix Of(IReadOnlyList<CycleType> types, ImmutableArray<double> cycles) => new(
        cycles,
        Sum(type => type.Glucose, types, cycles),
        Sum(type => type.Minutes, types, cycles),
        Sum(type => type.Ultrafiltration, types, cycles),
        Sum(type => type.Clearance, types, cycles));

    private static double Sum(Func<CycleType, double> read, IReadOnlyList<CycleType> types, ImmutableArray<double> cycles) =>
        types.Zip(cycles, (type, number) => read(type) * number).Sum();

    private static MixProgramme Programme(IReadOnlyList<CycleType> types, double ultrafiltration, double clearance, double minutes, double mostCycles)
    {
        ArgumentNullException.ThrowIfNull(types);
        if (types.Count == 0)
        {
            throw new ArgumentException("Expected a kind of cycle or more.", nameof(types));
        }

        var programme = new MixProgramme(types.Count, mostCycles);
        programme.Add([.. types.Select(type => type.Ultrafiltration)], ultrafiltration, double.PositiveInfinity);
        programme.Add([.. types.Select(type => type.Clearance)], clearance, double.PositiveInfinity);
        programme.Add([.. types.Select(type => type.Minutes)], double.NegativeInfinity, minutes);
        return programme;
    }
}
