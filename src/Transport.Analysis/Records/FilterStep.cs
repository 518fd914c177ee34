namespace Transport.Analysis;

/// <summary>What the filter did with one number, or between two nights: enough to ask what a change would have looked like.</summary>
internal sealed record FilterStep(NightChannel? Channel, double[] Load, double[] Gain, double Variance, double Innovation)
{
    /// <summary>Share of the wander that is kept from the night before; only between nights.</summary>
    public double Kept { get; private init; }

    /// <summary>Whether what the last drain left is still known; only between nights.</summary>
    public bool IsNextNight { get; private init; }

    /// <summary>What was cut off the innovation because it lay beyond the furthest that a single number counts.</summary>
    public double CutOff { get; init; }

    /// <summary>Whether an ultrafiltration holds the day too.</summary>
    public bool HoldsDay { get; init; }

    /// <summary>Whether another day's exchange came, of which nothing is known yet; only between nights.</summary>
    public bool IsOtherDay { get; private init; }

    public static FilterStep Passing(double kept, bool isNextNight, bool isOtherDay) =>
        new(null, [], [], 0, 0) { Kept = kept, IsNextNight = isNextNight, IsOtherDay = isOtherDay };
}
