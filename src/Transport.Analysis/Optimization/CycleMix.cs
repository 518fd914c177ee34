using System.Collections.Immutable;
using MathNet.Numerics.LinearAlgebra;

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
    /// <remarks>The optimum of a linear programme lies where as many limits meet as there are kinds; all of those points are looked at.</remarks>
    /// <param name="types">The kinds of cycle.</param>
    /// <param name="ultrafiltration">Least, mL.</param>
    /// <param name="clearance">Least.</param>
    /// <param name="minutes">Most; infinite where time does not matter.</param>
    /// <exception cref="ArgumentException">There are no kinds, or more than 6.</exception>
    public static CycleMix? Relaxed(IReadOnlyList<CycleType> types, double ultrafiltration, double clearance, double minutes = double.PositiveInfinity)
    {
        Check(types);

        // a x ≥ b
        List<(double[] Row, double Limit)> limits =
        [
            ([.. types.Select(type => type.Ultrafiltration)], ultrafiltration),
            ([.. types.Select(type => type.Clearance)], clearance),
            .. double.IsFinite(minutes) ? new[] { (types.Select(type => -type.Minutes).ToArray(), -minutes) } : [],
            .. Enumerable.Range(0, types.Count).Select(k => (Enumerable.Range(0, types.Count).Select(j => j == k ? 1.0 : 0).ToArray(), 0.0)),
        ];
        CycleMix? best = null;
        foreach (var meeting in Choose(limits.Count, types.Count))
        {
            var matrix = Matrix<double>.Build.DenseOfRowArrays(meeting.Select(k => limits[k].Row));
            if (Math.Abs(matrix.Determinant()) < Tolerance)
            {
                continue;
            }

            var point = matrix.Solve(Vector<double>.Build.DenseOfEnumerable(meeting.Select(k => limits[k].Limit)));
            var isInside = limits.All(limit => limit.Row.Zip(point, (a, x) => a * x).Sum() >= limit.Limit - Tolerance * Math.Max(1, Math.Abs(limit.Limit)));
            if (isInside && Of(types, [.. point.Select(x => Math.Max(0, x))]) is var mix && !(best?.Glucose <= mix.Glucose))
            {
                best = mix;
            }
        }

        return best;
    }

    /// <summary>The mix of whole cycles, of all there are; of equal glucose the shorter. Null: nothing meets the goals.</summary>
    /// <param name="types">The kinds of cycle.</param>
    /// <param name="ultrafiltration">Least, mL.</param>
    /// <param name="clearance">Least.</param>
    /// <param name="minutes">Most.</param>
    /// <param name="mostCycles">Most cycles in all.</param>
    /// <exception cref="ArgumentException">There are no kinds, or more than 6.</exception>
    public static CycleMix? Whole(IReadOnlyList<CycleType> types, double ultrafiltration, double clearance, double minutes = double.PositiveInfinity, int mostCycles = 20)
    {
        Check(types);
        return Counts(types.Count, mostCycles)
            .Select(counts => Of(types, counts))
            .Where(mix => mix.Ultrafiltration >= ultrafiltration - Tolerance && mix.Clearance >= clearance - Tolerance && mix.Minutes <= minutes + Tolerance)
            .OrderBy(mix => mix.Glucose)
            .ThenBy(mix => mix.Minutes)
            .ThenBy(mix => string.Join(',', mix.Cycles), StringComparer.Ordinal)
            .FirstOrDefault();
    }

    /// <summary>How much more glucose than the relaxed bound, as a share of it.</summary>
    public double GapTo(CycleMix relaxed)
    {
        ArgumentNullException.ThrowIfNull(relaxed);
        return Glucose / relaxed.Glucose - 1;
    }

    private static CycleMix Of(IReadOnlyList<CycleType> types, ImmutableArray<double> cycles) => new(
        cycles,
        Sum(type => type.Glucose, types, cycles),
        Sum(type => type.Minutes, types, cycles),
        Sum(type => type.Ultrafiltration, types, cycles),
        Sum(type => type.Clearance, types, cycles));

    private static double Sum(Func<CycleType, double> read, IReadOnlyList<CycleType> types, ImmutableArray<double> cycles) =>
        types.Zip(cycles, (type, number) => read(type) * number).Sum();

    private static IEnumerable<ImmutableArray<double>> Counts(int types, int most)
    {
        if (types == 0)
        {
            yield return [];
            yield break;
        }

        for (var number = 0; number <= most; number++)
        {
            foreach (var rest in Counts(types - 1, most - number))
            {
                yield return rest.Insert(0, number);
            }
        }
    }

    private static IEnumerable<ImmutableArray<int>> Choose(int from, int count, int first = 0)
    {
        if (count == 0)
        {
            yield return [];
            yield break;
        }

        for (var k = first; k <= from - count; k++)
        {
            foreach (var rest in Choose(from, count - 1, k + 1))
            {
                yield return rest.Insert(0, k);
            }
        }
    }

    private static void Check(IReadOnlyList<CycleType> types)
    {
        ArgumentNullException.ThrowIfNull(types);
        if (types.Count is < 1 or > 6)
        {
            throw new ArgumentException($"Expected 1 to 6 kinds of cycle; found {types.Count}.", nameof(types));
        }
    }
}
