namespace Transport.Analysis;

/// <summary>What drains that leave a share behind do to a night's numbers, for a share of one, by conservation of volume.</summary>
internal static class DrainSignal
{
    // Minutes by which a drain grows for a share of one (choice: the slow part of a drain runs at 40 to 50 mL/min, read).
    private const double DrainTimeOfAll = 50;

    public static double Of(NightRecord night, NightResponse response, NightResponse? before, NightChannel channel, bool isFirst, bool holdsDay)
    {
        // Left in the morning, and in the evening of a wet day; a dry day's evening leaves a share of a share.
        var morning = response.FullestOfCycle;
        var evening = before?.DayFill > 0 ? before.InitialDrain : 0;
        var dilution = response.OfNight(NightLever.Residual) * morning;
        return channel switch
        {
            NightChannel.InitialDrain => (isFirst ? 0 : morning) - evening,
            NightChannel.FirstCycle => evening - morning,
            NightChannel.Ultrafiltration when holdsDay => (isFirst ? -morning : 0) + dilution,
            NightChannel.Ultrafiltration => evening - morning + dilution,
            NightChannel.AverageDwell => DwellTime.IsOfDrains(night) ? 0 : -DrainTimeOfAll,
            _ => DrainTimeOfAll,
        };
    }
}
