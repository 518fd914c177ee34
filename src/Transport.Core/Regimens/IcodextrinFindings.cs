using System.Globalization;

namespace Transport;

/// <summary>What to be careful about where a regimen holds icodextrin.</summary>
internal static class IcodextrinFindings
{
    // The usual dwell is 8 to 16 h, once a day (memory).
    private const double ShortestUsual = 8 * 60;

    public static IEnumerable<Finding> Of(Regimen regimen, RegimenSchedule schedule)
    {
        if (regimen.Polymer is null)
        {
            yield break;
        }

        List<double> dwells =
        [
            .. regimen.Night.Zip(schedule.Night).Concat(regimen.Day.Zip(schedule.Day)).Where(pair => pair.First.Solution.Polymer is not null)
                .Select(pair => pair.Second.Dwell),
        ];
        var polymers = regimen.Exchanges.Select(exchange => exchange.Solution.Polymer);
        if (polymers.Where(polymer => polymer is not null).Distinct().Count() > 1)
        {
            yield return new(Severity.Error, "two-polymers", "Two different polymers in one day cannot be simulated.");
        }

        yield return new(
            Severity.Warning,
            "icodextrin-in-use",
            DialysisSolution.Icodextrin.Caution + " How much it removes is known of populations, not of this patient.");
        if (dwells.Min() < ShortestUsual)
        {
            yield return new(
                Severity.Warning,
                "icodextrin-dwell-short",
                string.Create(
                    CultureInfo.InvariantCulture,
                    $"A dwell of icodextrin of {dwells.Min() / 60:0.0} h is below the usual 8 to 16 h: its ultrafiltration grows through the whole of a long dwell."));
        }

        if (dwells.Count > 1)
        {
            yield return new(
                Severity.Warning,
                "icodextrin-more-than-once",
                string.Create(CultureInfo.InvariantCulture, $"{dwells.Count} dwells of icodextrin a day; usual is one, and labels commonly allow no more (memory)."));
        }
    }
}
