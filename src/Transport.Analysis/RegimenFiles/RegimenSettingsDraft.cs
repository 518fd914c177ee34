namespace Transport.Analysis;

/// <summary>Belly, catheter and machine as a regimen file states them; what is not stated, or cannot be read, is as by default.</summary>
internal static class RegimenSettingsDraft
{
    private static readonly string[] TwoSlopes = ["drain fast flow", "drain slow flow", "drain fast share", "drain transition volume"];

    /// <summary>On what the times of fills and drains hang.</summary>
    public static IReadOnlyList<string> OfTimes { get; } = ["fill flow", "longest drain", "line volume", "residual volume", "drain time", .. TwoSlopes];

    public static RegimenSettings Of(Dictionary<string, (RegimenItem Item, RegimenRow Row)> facts, RegimenValues values)
    {
        var settings = RegimenSettings.Default;
        Set("fill flow", value => settings = settings with { FillFlow = FlowRate.FromMillilitersPerMinute(value) });
        Set("longest drain", value => settings = settings with { LongestDrain = RegimenValues.Minutes(value) });
        Set("line volume", value => settings = settings with { LineVolume = Volume.FromMilliliters(value) });
        Set("residual volume", value => settings = settings with { Residual = Volume.FromMilliliters(value) });
        Set("largest fill", value => settings = settings with { LargestFill = Require.MoreThanZero(Volume.FromMilliliters(value), "") });
        Set("largest volume", value => settings = settings with { LargestVolume = Require.MoreThanZero(Volume.FromMilliliters(value), "") });
        Set("drain time", value => settings = settings with { Drain = DrainProfile.Within(RegimenValues.Minutes(value)) });
        if (!TwoSlopes.Any(facts.ContainsKey))
        {
            return settings;
        }

        // Each of the four is tried by itself, beside others that can be: so each that cannot be is told, with its own row.
        var (fast, slow, share, transition) = (FlowRate.FromMillilitersPerMinute(200), FlowRate.FromMillilitersPerMinute(45), 0.8, (Volume?)null);
        Set("drain fast flow", value => fast = DrainProfile.TwoSlope(FlowRate.FromMillilitersPerMinute(value), slow, share).Fast);
        Set("drain slow flow", value => slow = DrainProfile.TwoSlope(fast, FlowRate.FromMillilitersPerMinute(value), share).Slow);
        Set("drain fast share", value => share = DrainProfile.TwoSlope(fast, slow, value).BreakShare);
        Set("drain transition volume", value => transition = DrainProfile.TwoSlopeAt(fast, slow, Volume.FromMilliliters(value)).TransitionVolume);
        if (TwoSlopes[..2].FirstOrDefault(item => !facts.ContainsKey(item)) is { } missing)
        {
            values.Bad(facts[TwoSlopes.First(facts.ContainsKey)].Row, "A drain of two slopes needs both flows.", missing);
        }

        return settings with { Drain = transition is { } volume ? DrainProfile.TwoSlopeAt(fast, slow, volume) : DrainProfile.TwoSlope(fast, slow, share) };

        void Set(string item, Action<double> set)
        {
            if (!facts.TryGetValue(item, out var fact) || values.Number(fact.Item, fact.Row) is not { } value)
            {
                return;
            }

            try
            {
                set(value);
            }
            catch (ArgumentOutOfRangeException problem)
            {
                values.Bad(fact.Row, "This is outside what is possible.", problem.Message.Split(" (Parameter")[0].Replace("Expected ", "", StringComparison.Ordinal).TrimEnd('.'));
            }
        }
    }
}
