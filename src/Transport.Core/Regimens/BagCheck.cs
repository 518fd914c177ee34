using System.Globalization;

namespace Transport;

/// <summary>Whether the bags that are hung hold what a regimen takes.</summary>
internal static class BagCheck
{
    // Bags are labelled to the mL; half of one is rounding of a shared-out fill.
    private const double Rounding = 0.5;

    public static IReadOnlyList<Finding> Of(Regimen regimen, IReadOnlyCollection<FluidBag> bags)
    {
        List<Finding> findings = [];
        foreach (var exchange in regimen.Day)
        {
            foreach (var (solution, share) in exchange.Solution.Bags)
            {
                var own = bags.Where(bag => bag.IsForDay && bag.Solution == solution).ToList();
                var fill = share * exchange.Fill.Milliliters;
                if (own.Count > 0 && own.Max(bag => bag.Volume) is var largest && fill > largest.Milliliters + Rounding)
                {
                    RegimenCheck.Error(
                        findings,
                        "day-fill-larger-than-bag",
                        $"A day fill of {fill:0} mL is larger than its bag of {largest.Milliliters:0} mL of {solution.Name}.");
                }
            }
        }

        foreach (var (part, isDay, exchanges) in new[] { ("night", false, regimen.Night), ("day", true, regimen.Day) })
        {
            var hung = bags.Where(bag => bag.IsForDay == isDay).ToList();
            if (hung.Count == 0)
            {
                continue;
            }

            var needs = exchanges.SelectMany(exchange => exchange.Solution.Bags.Select(bag => (bag.Solution, Volume: bag.Share * exchange.Fill.Milliliters))).ToList();
            foreach (var need in needs.GroupBy(one => one.Solution))
            {
                var (needed, supplied) = (need.Sum(one => one.Volume), Supplied(hung, need.Key));
                if (supplied < needed - Rounding)
                {
                    RegimenCheck.Error(
                        findings,
                        "bags-do-not-add-up",
                        $"The {part} takes {needed:0} mL of {need.Key.Name}, and its bags hold {supplied:0} mL: {needed - supplied:0} mL are missing.");
                }
            }

            foreach (var unused in hung.Select(bag => bag.Solution).Distinct().Except(needs.Select(need => need.Solution)))
            {
                findings.Add(new(
                    Severity.Warning,
                    "bag-not-used",
                    Text($"Bags for the {part} hold {Supplied(hung, unused):0} mL of {unused.Name}, of which nothing is prescribed.")));
            }
        }

        return findings;
    }

    private static double Supplied(IEnumerable<FluidBag> bags, DialysisSolution solution) =>
        bags.Where(bag => bag.Solution == solution).Sum(bag => bag.Volume.Milliliters);

    private static string Text(FormattableString message) => message.ToString(CultureInfo.InvariantCulture);
}
