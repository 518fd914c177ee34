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

    /// <summary>Whether the reason may be another with other settings.</summary>
    public static bool HangsOnSettings(Finding finding) =>
        finding.Code is "night-too-short" or "night-not-filled" or "night-too-long" or "short-dwell" or "fill-above-limit" or "day-fill-above-limit" or "hand-exchanges-too-close";

    /// <summary>The reason with its place: the statement, or the regimen where no single one is meant.</summary>
    public Finding Of(Finding finding)
    {
        var row = Items.GetValueOrDefault(finding.Code, []).Select(item => statements.FirstOrDefault(one => one.Item == item).Row).FirstOrDefault(row => row is not null);
        return row is not null
            ? finding with { Row = row.Row, Field = RegimenDraft.Place(row), Found = $"{row.Value} {row.Unit}".TrimEnd() }
            : finding with { Row = finding.Severity == Severity.Error && statements.Count > 0 ? statements[0].Row.Row : null, Field = regimen.Length > 0 ? regimen : null };
    }
}
