namespace Transport.Analysis;

/// <summary>What a night's dwells are set beside, and what of them is lost, by as much as the book says.</summary>
internal static class DwellTime
{
    /// <summary>Whether drain times are all that the book says of the night's clock: then the dwell that is expected is what they leave of the plan.</summary>
    public static bool IsOfDrains(NightRecord night) => night is { LostDwell: null, DrainTime: not null };

    /// <summary>Whether average dwell says what was lost, since no other column does.</summary>
    public static bool IsLossOfAverage(NightRecord night) => night is { LostDwell: null, AverageDwell: not null, IsByHand: false };

    /// <summary>Average dwell by the plan, less what is written as lost, or else what drains took longer, min.</summary>
    public static double Expected(NightRecord night, NightResponse response) => response.AverageDwell - (
        night.LostDwell is { } lost ? lost.TotalMinutes / response.Regimen.Cycles
        : night.DrainTime is { } drain ? drain.TotalMinutes - response.DrainTime
        : 0);

    /// <summary>Dwell lost in the whole night, min: as written, or else by the average dwell; 0 where neither is.</summary>
    public static double Lost(NightRecord night, NightResponse response) => night.LostDwell?.TotalMinutes
        ?? (IsLossOfAverage(night) ? response.Regimen.Cycles * (response.AverageDwell - night.AverageDwell!.Value.TotalMinutes) : 0);
}
