using MathNet.Numerics.Statistics;
using static System.FormattableString;

namespace Transport.Analysis;

/// <summary>How a book is kept, as its own numbers show it: what total ultrafiltration counts, and whether weight is taken full.</summary>
internal static class BookHabits
{
    private const double ChangeCost = 12;
    private const double MostCost = 8;
    private const double BagError = 30;
    private const double LeastFill = 0.8;
    private const double CertainDeviations = 3;

    private static readonly UltrafiltrationCount[] Ways = [UltrafiltrationCount.Night, UltrafiltrationCount.NightAndDay, UltrafiltrationCount.NightAndInitialDrain];

    /// <summary>The way of counting on each night: the cheapest course through all nights, where a change has a price (Viterbi).</summary>
    /// <remarks>
    /// With all volumes it is arithmetic. Without, only a whole initial drain that comes in or goes out is taken for a habit, where that is far more than nights
    /// differ; a day counted in might as well be a loss of ultrafiltration, and is left to the charts, where the book is one explanation among others.
    /// </remarks>
    public static UltrafiltrationCount[] Counts(IReadOnlyList<NightRecord> nights, NightResponse?[] responses, List<Finding> findings)
    {
        var offset = Offset(nights, responses);
        var ways = new UltrafiltrationCount[nights.Count];
        var costs = Ways.Select(way => nights.Count > 0 && Stated(nights[0]) == way ? 0 : ChangeCost).ToArray();
        var from = new int[nights.Count, Ways.Length];
        for (var t = 0; t < nights.Count; t++)
        {
            // What the book says it changes to costs nothing to believe.
            var said = t > 0 && nights[t].Counts is { } now && now != nights[t - 1].Counts ? now : (UltrafiltrationCount?)null;
            var next = new double[Ways.Length];
            for (var way = 0; way < Ways.Length; way++)
            {
                var best = Enumerable.Range(0, Ways.Length).MinBy(before => costs[before] + Price(before, way));
                from[t, way] = best;
                next[way] = costs[best] + Price(best, way) + Misfit(nights, responses, t, Ways[way], offset);
            }

            costs = next;

            double Price(int before, int after) => said is { } way ? (Ways[after] == way ? 0 : ChangeCost) : before == after ? 0 : ChangeCost;
        }

        var last = costs.Index().MinBy(pair => pair.Item).Index;
        for (var t = nights.Count - 1; t >= 0; t--)
        {
            ways[t] = Ways[last];
            last = from[t, last];
        }

        for (var t = 0; t < nights.Count; t++)
        {
            if (ways[t] != (t == 0 ? Stated(nights[0]) : ways[t - 1]) && !(nights[t].Counts == ways[t] && t > 0 && nights[t - 1].Counts != ways[t]))
            {
                findings.Add(new(
                    Severity.Warning,
                    "record-uf-counts-otherwise",
                    Invariant($"From {nights[t].Date:yyyy-MM-dd} total UF looks as if it counted {Words(ways[t])}{(t == 0 ? "" : ", and no longer " + Words(ways[t - 1]))}; nights are read that way. A habit of the book, no change of the membrane. Ask once and write it down."))
                {
                    Row = nights[t].Row,
                    Field = "uf counts",
                });
            }
        }

        return ways;
    }

    /// <summary>Weights with an empty belly. A step by the day fill is a habit, not fluid of the body.</summary>
    public static Mass?[] EmptyWeights(IReadOnlyList<NightRecord> nights, List<Finding> findings)
    {
        var weights = new Mass?[nights.Count];
        var recent = new List<double>();
        WeighingHabit? before = null;
        for (var t = 0; t < nights.Count; t++)
        {
            if (nights[t].Weight is not { } weight)
            {
                continue;
            }

            var fill = FillOf(nights[t]) / 1000;
            var habit = nights[t].Weighed ?? WeighingHabit.Empty;
            if (fill >= LeastFill && recent.Count >= 5)
            {
                habit = IsFull(nights[t], recent.TakeLast(5).Median()) ? WeighingHabit.Full : WeighingHabit.Empty;
            }

            var empty = weight.Kilograms - (habit == WeighingHabit.Full ? fill : 0);
            recent.Add(empty);
            weights[t] = Mass.FromKilograms(empty);
            var lasts = before is not null && habit != before && Lasts(nights, t, habit, recent);
            if (before is null || lasts)
            {
                if (before is not null && nights[t].Weighed != habit)
                {
                    findings.Add(new(
                        Severity.Note,
                        "record-weighed-otherwise",
                        Invariant($"From {nights[t].Date:yyyy-MM-dd} weight is {fill:0.0} kg {(habit == WeighingHabit.Full ? "higher" : "lower")}, as much as the day fill: it looks as if it were taken {(habit == WeighingHabit.Full ? "full" : "empty")}. Read as a habit, not as fluid of the body. Ask."))
                    {
                        Row = nights[t].Row,
                        Field = "weighed",
                    });
                }

                before = habit;
            }
        }

        return weights;
    }

    // Whether most of the next weights show the habit too.
    private static bool Lasts(IReadOnlyList<NightRecord> nights, int from, WeighingHabit habit, List<double> recent)
    {
        var usual = recent.SkipLast(1).TakeLast(5).Median();
        var next = nights.Skip(from).Where(night => night.Weight is not null).Take(5).ToList();
        return next.Count(night => IsFull(night, usual) == (habit == WeighingHabit.Full)) > next.Count / 2;
    }

    // Nobody gains two litres overnight, but a kilogram in a week is nothing unusual.
    private static bool IsFull(NightRecord night, double usual) => night.Weight!.Value.Kilograms - usual > 0.65 * FillOf(night) / 1000;

    private static double FillOf(NightRecord night) => night.Regimen?.DayFill?.Volume.Milliliters ?? 0;

    private static UltrafiltrationCount Stated(NightRecord night) => night.Counts ?? UltrafiltrationCount.Night;

    // What a way adds to the night, mL.
    private static double Added(IReadOnlyList<NightRecord> nights, NightResponse?[] responses, int t, UltrafiltrationCount way) => way switch
    {
        UltrafiltrationCount.NightAndInitialDrain => nights[t].InitialDrain!.Value.Milliliters,
        UltrafiltrationCount.NightAndDay => nights[t].InitialDrain!.Value.Milliliters - (NightBefore.Of(nights, responses, t)?.DayFill ?? 0),
        _ => 0,
    };

    private static double Misfit(IReadOnlyList<NightRecord> nights, NightResponse?[] responses, int t, UltrafiltrationCount way, double offset)
    {
        if (nights[t] is not { WrittenUltrafiltration: { } written, InitialDrain: not null })
        {
            return 0;
        }

        if (nights[t].CycleDrains.Length > 0 && nights[t].UltrafiltrationByBags is { } bags)
        {
            return Cost((written - bags).Milliliters - Added(nights, responses, t, way), BagError);
        }

        if (responses[t] is not { } response)
        {
            return 0;
        }

        var deviation = NightVariation.StartingMilliliters(response.Night);
        var stated = Added(nights, responses, t, Stated(nights[0]));
        var added = Added(nights, responses, t, way);
        var countsWhole = way == UltrafiltrationCount.NightAndInitialDrain != (Stated(nights[0]) == UltrafiltrationCount.NightAndInitialDrain);
        return way != Stated(nights[0]) && !(countsWhole && Math.Abs(added - stated) >= CertainDeviations * deviation)
            ? MostCost
            : Cost(written.Milliliters - response.Night - offset - added, deviation);
    }

    private static double Cost(double difference, double deviation) => Math.Min(MostCost, 0.5 * difference * difference / (deviation * deviation));

    // How far the first nights are from the model, counted as the book says.
    private static double Offset(IReadOnlyList<NightRecord> nights, NightResponse?[] responses)
    {
        var first = Enumerable.Range(0, nights.Count)
            .Where(t => responses[t] is not null && nights[t] is { WrittenUltrafiltration: not null, InitialDrain: not null })
            .Take(14)
            .Select(t => nights[t].WrittenUltrafiltration!.Value.Milliliters - responses[t]!.Night - Added(nights, responses, t, Stated(nights[0])))
            .ToList();
        return first.Count == 0 ? 0 : Math.Clamp(first.Median(), -500, 500);
    }

    private static string Words(UltrafiltrationCount count) => count switch
    {
        UltrafiltrationCount.Night => "the night alone",
        UltrafiltrationCount.NightAndDay => "night and day",
        _ => "the night and the whole initial drain",
    };
}
