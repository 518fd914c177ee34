namespace Transport.Analysis;

/// <summary>Where in a file the statement stands that a reason against a regimen is about.</summary>
/// <param name="regimen">The regimen's name; empty where the file has one.</param>
/// <param name="statements">Its statements.</param>
internal sealed class RegimenPlaces(string regimen, IReadOnlyList<(string Item, RegimenRow Row)> statements)
{
    // The first of these items that is stated.
    private static readonly Dictionary<string, string[]> Items = new()
    {
        ["night-length"] = ["night length"],
        ["night-too-long"] = ["night length"],
        ["night-too-short"] = ["night length"],
        ["night-not-filled"] = ["night length"],
        ["short-dwell"] = ["night length"],
        ["cycles"] = ["cycles", "fluid in all", RegimenItem.NightExchange],
        ["fill-not-positive"] = ["volume per cycle"],
        ["fill-above-limit"] = ["volume per cycle", "largest fill"],
        ["day-fill-above-limit"] = [RegimenItem.DayFill, "largest fill"],
        ["day-fill-larger-than-bag"] = [RegimenItem.DayBag],
        ["bags-do-not-add-up"] = [RegimenItem.Bag, RegimenItem.DayBag],
        ["bag-not-used"] = [RegimenItem.Bag, RegimenItem.DayBag],
        ["fluid-does-not-add-up"] = ["fluid in all"],
        ["fluid-left-over"] = ["fluid in all"],
        ["prescription-incomplete"] = ["fluid in all", "volume per cycle", "cycles"],
        ["tidal-share"] = ["tidal share"],
        ["tidal-without-base-fill"] = ["tidal share"],
        ["tidal-numbers"] = ["expected ultrafiltration", "complete drain every"],
        ["hand-exchanges-too-close"] = [RegimenItem.HandExchange],
    };

    // What a reason hangs on: where one of these could not be read, something stands in for it and the reason may be none. Reasons that are not listed hang on their own
    // statement alone, and that was read.
    private static readonly string[] Fluid = ["fluid in all", "volume per cycle", "cycles", RegimenItem.DayFill, "spare fluid", "tidal share", "complete drain every", RegimenItem.NightExchange];
    private static readonly string[] Times = ["night length", .. RegimenSettingsDraft.OfTimes];
    private static readonly Dictionary<string, string[]> HangsOn = new()
    {
        ["night-length"] = ["night length"],
        ["night-too-long"] = [.. Times, RegimenItem.DayFill, RegimenItem.DayExchange],
        ["night-too-short"] = [.. Times, .. Fluid, "expected ultrafiltration"],
        ["night-not-filled"] = [.. Times, .. Fluid],
        ["short-dwell"] = [.. Times, .. Fluid],
        ["hand-exchanges-too-close"] = Times,
        ["cycles"] = ["cycles"],
        ["fill-not-positive"] = ["volume per cycle"],
        ["fill-above-limit"] = ["largest fill", "volume per cycle"],
        ["day-fill-above-limit"] = ["largest fill", RegimenItem.DayFill],
        ["fluid-does-not-add-up"] = Fluid,
        ["fluid-left-over"] = Fluid,
        ["bags-do-not-add-up"] = [.. Fluid, "night solution", RegimenItem.DayExchange, RegimenItem.Bag, RegimenItem.DayBag],
        ["bag-not-used"] = [.. Fluid, "night solution", RegimenItem.DayExchange, RegimenItem.Bag, RegimenItem.DayBag],
        ["day-fill-larger-than-bag"] = [RegimenItem.DayFill, RegimenItem.DayExchange, RegimenItem.DayBag],
        ["mix-not-possible"] = ["night solution", RegimenItem.NightExchange, RegimenItem.DayExchange],
    };

    /// <summary>Whether a reason against the regimen, in which something stands in for what could not be read, stands all the same.</summary>
    public bool Stands(Finding reason, Func<RegimenRow, bool> isUnread)
    {
        var hangsOn = HangsOn.GetValueOrDefault(reason.Code, []);

        // A volume per cycle that is not stated comes of the fluid.
        return !statements.Any(one => isUnread(one.Row)
            && (hangsOn.Contains(one.Item) || (reason.Code == "fill-above-limit" && Fluid.Contains(one.Item) && statements.All(other => other.Item != "volume per cycle"))));
    }

    /// <summary>The reason with its place: the statement, or the regimen where no single one is meant.</summary>
    public Finding Of(Finding finding)
    {
        var row = finding.Code == "mix-not-possible" ? statements.FirstOrDefault(one => SolutionWords.IsMix(one.Item == "night solution" ? one.Row.Value : one.Row.Solution)).Row
            : Items.GetValueOrDefault(finding.Code, []).Select(item => statements.FirstOrDefault(one => one.Item == item).Row).FirstOrDefault(row => row is not null);
        return row is not null
            ? finding with { Row = row.Row, Field = RegimenDraft.Place(row), Found = finding.Code == "mix-not-possible" ? finding.Found : $"{row.Value} {row.Unit}".TrimEnd() }
            : finding with { Row = finding.Severity == Severity.Error && statements.Count > 0 ? statements[0].Row.Row : null, Field = regimen.Length > 0 ? regimen : null };
    }
}
