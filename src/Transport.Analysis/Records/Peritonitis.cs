namespace Transport.Analysis;

/// <summary>Which nights a peritonitis takes out of the charts: transfer rises and ultrafiltration falls for weeks, and that is no drift of the membrane.</summary>
internal static class Peritonitis
{
    /// <summary>Nights as these limits read them: where they leave out more days than the words were read with, a peritonitis within those days is not of the past.</summary>
    public static IReadOnlyList<NightRecord> Read(IReadOnlyList<NightRecord> nights, ReviewLimits limits)
    {
        var days = limits.PeritonitisDays.Value;
        return days < BookText.LongAgoDays
            ? nights
            : [.. nights.Select(night => BookText.Of(night.Words, night.Day, days).Symptoms.Contains(Symptom.CloudyFluid) ? night with { Symptoms = [.. night.Symptoms.Append(Symptom.CloudyFluid).Distinct()] } : night)];
    }

    /// <summary>For each night why it is left out; empty where it is not.</summary>
    /// <param name="nights">The nights by date.</param>
    /// <param name="inDoubt">Rows that are no nights, each with the day of its place.</param>
    /// <param name="limits">The limits.</param>
    public static string[] DaysLeftOut(IReadOnlyList<NightRecord> nights, IReadOnlyList<NightRecord> inDoubt, ReviewLimits limits)
    {
        var reasons = new string[nights.Count];
        var signs = nights.Concat(inDoubt).Where(IsSign).Select(night => night.Date.DayNumber).Order().ToList();
        var (next, last) = (0, (int?)null);
        for (var t = 0; t < nights.Count; t++)
        {
            var day = nights[t].Date.DayNumber;
            while (next < signs.Count && signs[next] <= day)
            {
                last = signs[next++];
            }

            reasons[t] = last is { } sign && day - sign <= limits.PeritonitisDays.Value
                ? day == sign ? "cloudy fluid or peritonitis" : "within weeks of a cloudy bag or peritonitis"
                : "";
        }

        return reasons;
    }

    /// <summary>Whether a night has a cloudy bag or a peritonitis, in its column or in words.</summary>
    public static bool IsSign(NightRecord night) => IsByColumn(night) || night.Symptoms.Contains(Symptom.CloudyFluid) || IsOfStool(night);

    /// <summary>Whether its fluid is brown or smells of stool.</summary>
    public static bool IsOfStool(NightRecord night) => night.Effluent == EffluentLook.Brown || night.Symptoms.Contains(Symptom.StoolInFluid);

    /// <summary>Whether a sign is one by free words, which may speak of another day.</summary>
    public static bool IsOfWordsAlone(NightRecord night) => IsSign(night) && !IsByColumn(night);

    private static bool IsByColumn(NightRecord night) => night.HasPeritonitis || night.Effluent is EffluentLook.Cloudy or EffluentLook.Brown;
}
