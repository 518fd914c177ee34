using MathNet.Numerics.Statistics;
using static System.FormattableString;

namespace Transport.Analysis;

/// <summary>Numbers that can be a unit's alone which the book does not name: litres among millilitres, pounds among kilograms, a decimal mark that slipped, two columns that were swapped.</summary>
/// <remarks>They are set aside and told. None is put right: whoever reads the page would take a guess for what was written.</remarks>
internal static class BookUnits
{
    // No drain or fill of a body is so little, and none so many litres (choice).
    private const double MostLiters = 20;

    // Of an ultrafiltration, whose number may be small by itself, a fraction tells: nobody weighs a tenth of a millilitre.
    private const double MostLitersTakenOff = 8;

    // And none of a row of millilitres is all below this.
    private const double LeastMilliliters = 100;

    // Nobody's weight differs so much from that of the fortnight before (choice).
    private const double MostOfWeight = 0.25;
    private const int WeightsBefore = 14;
    private const int FewestWeights = 5;
    private const int FewestFills = 12;
    private const double PoundsPerKilogram = 2.2046;
    private const double Alike = 0.06;

    /// <param name="nights">The nights by date.</param>
    /// <param name="findings">Where each row's is told.</param>
    /// <returns>The nights without these numbers.</returns>
    public static IEnumerable<NightRecord> SetAside(IEnumerable<NightRecord> nights, List<Finding> findings)
    {
        var all = nights.ToList();
        var (weights, refused) = (new Queue<(DateOnly Date, double Kilograms)>(), new List<double>());
        var fill = UsualFill(all);
        foreach (var night in all)
        {
            yield return WithoutWeight(WithoutSwap(WithoutLiters(night, findings), fill, findings), weights, refused, findings);
        }
    }

    // What most exchanges by hand are filled with, mL; null where none is usual.
    private static double? UsualFill(List<NightRecord> nights)
    {
        var fills = nights.SelectMany(night => night.Exchanges).Select(exchange => exchange.Filled?.Milliliters).OfType<double>().ToList();
        var usual = fills.GroupBy(fill => fill).MaxBy(group => group.Count());
        return fills.Count >= FewestFills && 2 * usual!.Count() > fills.Count ? usual!.Key : null;
    }

    // In several exchanges of a day the usual fill stands where a drain should, and another number where it should.
    private static NightRecord WithoutSwap(NightRecord night, double? fill, List<Finding> findings)
    {
        // Drains scatter. One round number in place of the fill is another bag.
        var swapped = night.Exchanges.Where(exchange => exchange.Drained?.Milliliters == fill && exchange.Filled is { } filled && filled.Milliliters != fill).Select(exchange => exchange.Filled!.Value.Milliliters).ToList();
        if (fill is null || swapped.Distinct().Count() < 2 || swapped.Count < night.Exchanges.Length - 1)
        {
            return night;
        }

        findings.Add(new(Severity.Warning, "book-fill-drain-swapped", Invariant($"Drained is the usual fill of {fill:0} mL in {swapped.Count} exchanges, and filled is not: the two columns may be swapped. These volumes are left out."))
        {
            Row = night.Row,
            Field = BookWords.Drained.Name,
        });
        return WithoutVolumes(night);
    }

    // Only where no volume of the row can be millilitres: a drain of 15 mL among others is one that stopped.
    private static NightRecord WithoutLiters(NightRecord night, List<Finding> findings)
    {
        double[] drains = [.. night.CycleDrains.Select(drain => drain.Milliliters), .. night.Exchanges.SelectMany(exchange => new[] { exchange.Filled?.Milliliters, exchange.Drained?.Milliliters }).OfType<double>()];
        double[] others = [.. new[] { night.InitialDrain?.Milliliters, night.WrittenUltrafiltration?.Milliliters }.OfType<double>().Select(Math.Abs)];
        var drain = drains.Length > 0 && drains.Max() is > 0 and < MostLiters and var most ? most : (double?)null;
        var initial = night.InitialDrain?.Milliliters is { } small and > 0 and < MostLitersTakenOff && small % 1 != 0 ? small : (double?)null;
        var total = night.WrittenUltrafiltration?.Milliliters is { } net && Math.Abs(net) < MostLitersTakenOff && net % 1 != 0 ? net : (double?)null;
        if ((total ?? drain ?? initial) is not { } shown || drains.Any(value => value >= LeastMilliliters) || drain is null && others.Any(value => value >= LeastMilliliters))
        {
            return night;
        }

        findings.Add(new(Severity.Warning, "book-unit-doubtful", Invariant($"{shown:0.###} mL of {(total is not null ? "ultrafiltration" : "fluid")} may be litres; the row's volumes are left out. Write the unit in the header or the cell."))
        {
            Row = night.Row,
            Field = (total is not null ? BookWords.TotalUltrafiltration : drain is null ? BookWords.InitialDrain : night.CycleDrains.Length > 0 ? BookWords.CycleDrains : BookWords.Drained).Name,
        });
        return WithoutVolumes(night);
    }

    private static NightRecord WithoutVolumes(NightRecord night) =>
        night with { WrittenUltrafiltration = null, InitialDrain = null, CycleDrains = [], Exchanges = [.. night.Exchanges.Select(exchange => exchange with { Filled = null, Drained = null })] };

    private static NightRecord WithoutWeight(NightRecord night, Queue<(DateOnly Date, double Kilograms)> before, List<double> refused, List<Finding> findings)
    {
        if (night.Weight?.Kilograms is not { } weight)
        {
            return night;
        }

        while (before.Count > 0 && night.Date.DayNumber - before.Peek().Date.DayNumber > WeightsBefore)
        {
            before.Dequeue();
        }

        // Several that agree with each other are another level, or those before were the slip.
        var usual = before.Count < FewestWeights ? weight : before.Select(one => one.Kilograms).Median();
        var isUsual = Math.Abs(weight / usual - 1) <= MostOfWeight;
        if (isUsual || refused.Count >= FewestWeights && refused.TrueForAll(one => Math.Abs(one / weight - 1) < Alike))
        {
            if (!isUsual)
            {
                before.Clear();
            }

            refused.Clear();
            before.Enqueue((night.Date, weight));
            return night;
        }

        refused.Add(weight);
        if (refused.Count > FewestWeights)
        {
            refused.RemoveAt(0);
        }

        var why = Is(PoundsPerKilogram) ? "it may be pounds" : Is(1 / PoundsPerKilogram) ? "those before may be pounds" : Is(10) || Is(0.1) || Is(100) || Is(0.01) ? "a decimal mark may have slipped" : "a slip, another unit, or another person";
        findings.Add(new(Severity.Warning, "book-weight-doubtful", Invariant($"{weight:0.0#} kg is not the weight of somebody who weighed {usual:0.0} kg in the two weeks before: {why}. It is left out."))
        {
            Row = night.Row,
            Field = BookWords.Weight.Name,
        });
        return night with { Weight = null };

        bool Is(double times) => Math.Abs(weight / usual / times - 1) < Alike;
    }
}
