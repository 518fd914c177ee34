namespace Transport.Analysis;

/// <summary>Belly, catheter and machine as a regimen file states them; what is not stated is as by default.</summary>
internal static class RegimenSettingsDraft
{
    /// <summary>The settings; null where a statement cannot be.</summary>
    public static RegimenSettings? Of(Dictionary<string, (RegimenItem Item, RegimenRow Row)> facts, RegimenValues values)
    {
        RegimenSettings? settings = RegimenSettings.Default;
        Set("fill flow", (one, value) => one with { FillFlow = FlowRate.FromMillilitersPerMinute(value) });
        Set("longest drain", (one, value) => one with { LongestDrain = RegimenValues.Minutes(value) });
        Set("line volume", (one, value) => one with { LineVolume = Volume.FromMilliliters(value) });
        Set("residual volume", (one, value) => one with { Residual = Volume.FromMilliliters(value) });
        Set("largest fill", (one, value) => one with { LargestFill = Require.MoreThanZero(Volume.FromMilliliters(value), "") });
        Set("largest volume", (one, value) => one with { LargestVolume = Require.MoreThanZero(Volume.FromMilliliters(value), "") });
        Set("drain time", (one, value) => one with { Drain = DrainProfile.Within(RegimenValues.Minutes(value)) });
        var (fast, slow, share, transition) = (Flow("drain fast flow"), Flow("drain slow flow"), values.NumberOf(facts, "drain fast share"), values.VolumeOf(facts, "drain transition volume"));
        if (fast is { } quick && slow is { } late)
        {
            Set("drain slow flow", (one, _) => one with { Drain = transition is { } volume ? DrainProfile.TwoSlopeAt(quick, late, volume) : DrainProfile.TwoSlope(quick, late, share ?? 0.8) });
        }
        else if ((fast ?? slow) is not null && (facts.GetValueOrDefault("drain fast flow").Row ?? facts.GetValueOrDefault("drain slow flow").Row) is { } row)
        {
            values.Bad(row, "A drain of two slopes needs both flows.", "drain fast flow and drain slow flow");
            settings = null;
        }

        return settings;

        FlowRate? Flow(string item) => values.NumberOf(facts, item) is { } value ? FlowRate.FromMillilitersPerMinute(value) : null;

        void Set(string item, Func<RegimenSettings, double, RegimenSettings> set)
        {
            if (!facts.TryGetValue(item, out var fact))
            {
                return;
            }

            if (values.Number(fact.Item, fact.Row) is not { } value)
            {
                settings = null;
                return;
            }

            try
            {
                settings = settings is null ? null : set(settings, value);
            }
            catch (ArgumentOutOfRangeException problem)
            {
                values.Bad(fact.Row, "This cannot be.", problem.Message.Split(" (Parameter")[0].Replace("Expected ", "", StringComparison.Ordinal).TrimEnd('.'));
                settings = null;
            }
        }
    }
}
