using System.Collections.Immutable;

namespace Transport.Analysis;

/// <summary><see cref="DailyDoubt.ModelForm"/> for rings of exchanges: what does not depend on the membrane is looked up once.</summary>
internal sealed class RingDoubt
{
    private readonly bool holds;
    private readonly ImmutableArray<Entry> entries;

    /// <summary>Of each exchange, what is added in proportion to what it removes.</summary>
    public ImmutableArray<double> Gains { get; }

    public RingDoubt(IReadOnlyList<CycleKind> kinds, RegimenSearchOptions options)
    {
        holds = options.Layers.HoldsModelForm;
        var made = ImmutableArray.CreateBuilder<Entry>(kinds.Count);
        foreach (var kind in kinds)
        {
            if (kind.Solution is not { } solution)
            {
                made.Add(new(false, -1, ModelDiscrepancy.None, ModelDiscrepancy.None, 0, 0));
                continue;
            }

            var discrepancy = options.Layers.Of(solution, options.Tested, ExchangeMode.Alone);
            var ofCycle = options.Layers.Of(solution, options.Tested, ExchangeMode.Cycle);
            made.Add(new(kind.IsNight, (int)DoubtDraws.Of(solution), discrepancy, ofCycle, kind.Fill, kind.Dwell));
        }

        entries = made.MoveToImmutable();
        Gains = [.. entries.Select(entry => entry.Alone.GainedOf(1))];
    }

    /// <summary>What to add to the ultrafiltration and how sure that is, mL.</summary>
    /// <param name="ring">The exchanges.</param>
    /// <param name="drained">What each drained, mL.</param>
    /// <param name="late">How late each began, min.</param>
    public ModelMiss Of(ReadOnlySpan<int> ring, ReadOnlySpan<double> drained, ReadOnlySpan<double> late)
    {
        if (!holds)
        {
            return default;
        }

        Span<double> deviations = stackalloc double[4];
        deviations.Clear();
        var nightly = 0;
        foreach (var kind in ring)
        {
            nightly += entries[kind].IsNight && entries[kind].Part >= 0 ? 1 : 0;
        }

        var (offset, gained) = (0.0, 0.0);
        for (var k = 0; k < ring.Length; k++)
        {
            var entry = entries[ring[k]];
            if (entry.Part < 0)
            {
                continue;
            }

            var dwell = TimeSpan.FromMinutes(Math.Max(0, entry.Dwell - late[k]));
            var discrepancy = entry.IsNight && DailyDoubt.ModeOf(nightly) == ExchangeMode.Cycle ? entry.OfCycle : entry.Alone;
            offset += discrepancy.OffsetAt(dwell);
            gained += discrepancy.GainedOf(drained[k] - entry.Fill);
            deviations[entry.Part] += discrepancy.DeviationAt(dwell);
        }

        var variance = 0.0;
        foreach (var deviation in deviations)
        {
            variance += deviation * deviation;
        }

        return new(offset, gained, Math.Sqrt(variance));
    }

    private readonly record struct Entry(bool IsNight, int Part, ModelDiscrepancy Alone, ModelDiscrepancy OfCycle, double Fill, double Dwell);
}
