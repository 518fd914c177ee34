using System.Globalization;

namespace Transport.Analysis;

/// <summary>Regimens as the statements that make them again.</summary>
internal static class RegimenRows
{
    public static List<RegimenRow> Of(RegimenFile file)
    {
        List<RegimenRow> rows = [];
        HashSet<DialysisSolution> described = [];
        foreach (var regimen in file.Regimens)
        {
            Add(rows, regimen, described);
        }

        if (file.Week is { } week)
        {
            var names = week.Days.Select(day => day is null ? RegimenDraft.NoTreatment : NameOf(file.Regimens.First(named => named.Regimen == day)));
            rows.Add(new("", RegimenItem.Week, string.Join(' ', names), ""));
        }

        return rows;
    }

    private static string NameOf(NamedRegimen regimen) => regimen.Name.Length > 0 ? regimen.Name : RegimenDraft.OnlyRegimen;

    private static void Add(List<RegimenRow> rows, NamedRegimen named, HashSet<DialysisSolution> described)
    {
        var (name, regimen, settings) = (named.Name, named.Regimen, named.Regimen.Settings);
        Fact("night length", Minutes(regimen.NightLength), "min");
        Fact("night start", regimen.NightStart.ToString("HH:mm:ss.FFFFFFF", CultureInfo.InvariantCulture).TrimEnd('.'), "");
        Fact("fill flow", Number(settings.FillFlow.MillilitersPerMinute), "mL/min");
        Drain(settings.Drain);
        Given("longest drain", settings.LongestDrain is { } longest ? Minutes(longest) : null, "min");
        Given("line volume", settings.LineVolume.Milliliters > 0 ? Number(settings.LineVolume.Milliliters) : null, "mL");
        Given("residual volume", Milliliters(settings.Residual), "mL");
        Given("largest fill", Milliliters(settings.LargestFill), "mL");
        Given("largest volume", Milliliters(settings.LargestVolume), "mL");
        rows.AddRange(regimen.Night.Select(exchange => Row(name, RegimenItem.NightExchange, exchange)));
        rows.AddRange(regimen.Day.Select(exchange => Row(name, RegimenItem.DayExchange, exchange)));
        rows.AddRange(named.Bags.Select(bag => new RegimenRow(name, bag.IsForDay ? RegimenItem.DayBag : RegimenItem.Bag, Number(bag.Volume.Milliliters), "mL")
        {
            Solution = SolutionWords.Of(bag.Solution),
        }));

        // A solution is described once in a file, where it is used first.
        foreach (var solution in regimen.Exchanges.SelectMany(exchange => exchange.Solution.Bags).Select(bag => bag.Solution).Concat(named.Bags.Select(bag => bag.Solution)).Where(described.Add))
        {
            rows.AddRange(SolutionWords.Described(solution).Select(row => row with { Regimen = name }));
        }

        void Fact(string item, string value, string unit) => rows.Add(new(name, item, value, unit));

        void Given(string item, string? value, string unit)
        {
            if (value is not null)
            {
                Fact(item, value, unit);
            }
        }

        void Drain(DrainProfile drain)
        {
            if (drain.WholeDrain is { } whole)
            {
                Fact("drain time", Minutes(whole), "min");
                return;
            }

            Fact("drain fast flow", Number(drain.Fast.MillilitersPerMinute), "mL/min");
            Fact("drain slow flow", Number(drain.Slow.MillilitersPerMinute), "mL/min");
            if (drain.TransitionVolume is { } transition)
            {
                Fact("drain transition volume", Number(transition.Milliliters), "mL");
            }
            else
            {
                Fact("drain fast share", Number(drain.BreakShare), "");
            }
        }
    }

    private static RegimenRow Row(string name, string item, Exchange exchange) => new(name, item, Number(exchange.Fill.Milliliters), "mL")
    {
        Solution = SolutionWords.Of(exchange.Solution),
        Dwell = exchange.DwellTime is { } dwell ? Minutes(dwell) : "",
        Drain = exchange.PartialDrain is { } drain ? Number(drain.Volume.Milliliters) : "",
        Expected = exchange.PartialDrain is { ExpectedUltrafiltration: var more } && more > default(Volume) ? Number(more.Milliliters) : "",
    };

    private static string? Milliliters(Volume? volume) => volume is { } given ? Number(given.Milliliters) : null;

    // So that reading gives the same number back, to the bit.
    private static string Number(double value) => value.ToString("R", CultureInfo.InvariantCulture);

    private static string Minutes(TimeSpan time) => Number((double)time.Ticks / TimeSpan.TicksPerMinute);
}
