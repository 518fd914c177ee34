using System.Collections.Immutable;

namespace Transport.Analysis;

/// <summary><see cref="DailyDoubt.ModelForm"/> for rings of exchanges: what does not depend on the membrane is looked up once.</summary>
internal sealed class RingDoubt
{
    private readonly bool holds;
    private readonly ImmutableArray<Entry> entries;
    private readonly int strengths;

    public RingDoubt(IReadOnlyList<CycleKind> kinds, RegimenSearchOptions options)
    {
        holds = options.HoldsModelForm;
        List<Concentration> glucose = [];
        var made = ImmutableArray.CreateBuilder<Entry>(kinds.Count);
        foreach (var kind in kinds)
        {
            if (kind.Solution is not { } solution)
            {
                made.Add(new(-1, ModelDiscrepancy.None, 0, 0));
                continue;
            }

            if (!glucose.Contains(solution.Glucose))
            {
                glucose.Add(solution.Glucose);
            }

            made.Add(new(glucose.IndexOf(solution.Glucose), ModelDiscrepancy.Of(solution, options.Tested), kind.Fill, kind.Dwell));
        }

        entries = made.MoveToImmutable();
        strengths = glucose.Count;
    }

    /// <summary>What to add to the ultrafiltration and how sure that is, mL.</summary>
    /// <param name="ring">The exchanges.</param>
    /// <param name="drained">What each drained, mL.</param>
    /// <param name="late">How late each began, min.</param>
    public (double Shift, double Deviation) Of(ReadOnlySpan<int> ring, ReadOnlySpan<double> drained, ReadOnlySpan<double> late)
    {
        if (!holds)
        {
            return (0, 0);
        }

        Span<double> deviations = stackalloc double[strengths];
        deviations.Clear();
        var shift = 0.0;
        for (var k = 0; k < ring.Length; k++)
        {
            var entry = entries[ring[k]];
            if (entry.Strength < 0)
            {
                continue;
            }

            var share = entry.Discrepancy.GrowthAt(TimeSpan.FromMinutes(Math.Max(0, entry.Dwell - late[k])));
            shift += (entry.Discrepancy.Gain - 1) * (drained[k] - entry.Fill) + share * entry.Discrepancy.Offset.Milliliters;
            deviations[entry.Strength] += share * entry.Discrepancy.Deviation.Milliliters;
        }

        var variance = 0.0;
        foreach (var deviation in deviations)
        {
            variance += deviation * deviation;
        }

        return (shift, Math.Sqrt(variance));
    }

    private readonly record struct Entry(int Strength, ModelDiscrepancy Discrepancy, double Fill, double Dwell);
}
