namespace Transport.Analysis;

/// <summary>What drains that leave a share behind do to a night's numbers, for a share of one: by conservation of volume, and by what is left behind diluting the next fill.</summary>
internal static class DrainSignal
{
    // Minutes by which a drain grows for a share of one (choice: the slow part of a drain runs at 40 to 50 mL/min, read).
    private const double DrainTimeOfAll = 50;

    /// <summary>The share that charts watch for. What is left adds to what is in before the next drain, so effects are no line in the share; the line is taken here.</summary>
    public const double UsualShare = 0.1;

    /// <param name="night">The night.</param>
    /// <param name="response">What its regimen returns.</param>
    /// <param name="before">The regimen whose day came first.</param>
    /// <param name="channel">Which number.</param>
    /// <param name="isFirst">Whether drains began to leave a share behind on this night.</param>
    /// <param name="holdsDay">Whether its ultrafiltration is of night and day in one number.</param>
    /// <param name="isTakenUp">Whether a dry day takes up what the morning left, so that none of it comes out in the evening.</param>
    public static double Of(NightRecord night, NightResponse response, NightResponse? before, NightChannel channel, bool isFirst, bool holdsDay, bool isTakenUp = false)
    {
        // Left in the morning, and in the evening: of a wet day's fluid, or of what is still there after a dry one.
        var isWet = before?.DayFill > 0;
        var morning = response.FullestInside / (1 - UsualShare);
        var stillThere = isFirst || (isTakenUp && !isWet) ? 0 : morning;
        var evening = isWet ? (before!.InitialDrain + before.Residual) / (1 - UsualShare) : UsualShare * stillThere;

        // Each fill of a night meets what the drain before it left, the first what the evening left.
        var dilution = response.DilutionOfFill * (response.IsByHand ? response.Exchanges * morning : evening + (response.Exchanges - 1) * morning);
        return channel switch
        {
            NightChannel.InitialDrain => stillThere - evening,
            NightChannel.FirstCycle => (1 + response.DilutionOfFill) * (evening - morning),
            NightChannel.Ultrafiltration when holdsDay => stillThere - morning + dilution,
            NightChannel.Ultrafiltration => evening - morning + dilution,
            NightChannel.AverageDwell => DwellTime.IsOfDrains(night) ? 0 : -DrainTimeOfAll,
            _ => DrainTimeOfAll,
        };
    }
}
