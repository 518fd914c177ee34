using System.Globalization;

namespace Transport.Analysis;

/// <summary>What further samples are expected to tell: each alone, the best after the best, and the fewest for a wanted precision.</summary>
public sealed class TestAdvice
{
    private readonly Func<IReadOnlyList<PlannedSample>, ExpectedPrecision> precision;
    private readonly IReadOnlyList<PlannedSample> feasible;

    internal TestAdvice(DesignTarget target, IReadOnlyList<PlannedSample> feasible, Func<IReadOnlyList<PlannedSample>, ExpectedPrecision> precision)
    {
        Target = target;
        this.feasible = feasible;
        this.precision = precision;
        Now = precision([]);
        Each = [.. feasible.Select(sample => precision([sample])).OrderBy(one => one.Target)];
        Path = Greedy();
    }

    /// <summary>What is to become more precise.</summary>
    public DesignTarget Target { get; }

    /// <summary>What is known now.</summary>
    public ExpectedPrecision Now { get; }

    /// <summary>Each feasible sample alone, the most telling first.</summary>
    public IReadOnlyList<ExpectedPrecision> Each { get; }

    /// <summary>The most telling sample, alone.</summary>
    public ExpectedPrecision BestNext => Each[0];

    /// <summary>Nothing, the best sample, the best one after it, and so on: precision against the number of samples.</summary>
    public IReadOnlyList<ExpectedPrecision> Path { get; }

    /// <summary>The advice in words; tentative, no order.</summary>
    public string Words
    {
        get
        {
            var least = Path[^1];
            var unit = Target.Unit.Length > 0 ? " " + Target.Unit : "";
            return string.Create(CultureInfo.InvariantCulture, $"Of what could be sampled next, {BestNext.Samples[0].Name} would tell most of the {Target.Name}: its standard deviation is expected to fall from {Number(Now.Target)} to {Number(BestNext.Target)}{unit}; all {feasible.Count} together would leave {Number(least.Target)}{unit}.");

            static string Number(double value) => value.ToString(value >= 10 ? "0" : "0.00", CultureInfo.InvariantCulture);
        }
    }

    /// <summary>The fewest samples with which the target is expected to be as precise as wanted; null where all together do not suffice.</summary>
    /// <param name="deviation">Wanted standard deviation of the target, in its unit.</param>
    /// <remarks>Every combination is looked at, the small ones first; of equal size the most precise is taken.</remarks>
    public ExpectedPrecision? Smallest(double deviation)
    {
        if (Now.Target <= deviation)
        {
            return Now;
        }

        if (Path[^1].Target > deviation)
        {
            return null;
        }

        for (var size = 1; size <= feasible.Count; size++)
        {
            var best = Subsets(size, 0).Select(precision).MinBy(one => one.Target)!;
            if (best.Target <= deviation)
            {
                return best;
            }
        }

        return null;
    }

    private List<ExpectedPrecision> Greedy()
    {
        var path = new List<ExpectedPrecision> { Now };
        while (path.Count <= feasible.Count)
        {
            var chosen = path[^1].Samples;
            path.Add(feasible.Except(chosen).Select(sample => precision([.. chosen, sample])).MinBy(one => one.Target)!);
        }

        return path;
    }

    private IEnumerable<IReadOnlyList<PlannedSample>> Subsets(int size, int from)
    {
        if (size == 0)
        {
            yield return [];
            yield break;
        }

        for (var i = from; i <= feasible.Count - size; i++)
        {
            foreach (var rest in Subsets(size - 1, i + 1))
            {
                yield return [feasible[i], .. rest];
            }
        }
    }
}
