namespace Transport.Analysis;

/// <summary>A weekly Kt/V of urea, kidneys included, that options should come up to. A number to talk about, not a tick.</summary>
/// <param name="WeeklyUreaDose">Total weekly Kt/V.</param>
/// <param name="Noise">Share by which one measurement scatters; an option within it counts as coming up to the goal.</param>
/// <param name="Source">Who says so, and how strongly.</param>
public sealed record ClearanceGoal(double WeeklyUreaDose, double Noise, string Source)
{
    /// <summary>Total weekly Kt/V.</summary>
    /// <exception cref="ArgumentOutOfRangeException">Not between 0 and 10, or 0.</exception>
    public double WeeklyUreaDose
    {
        get;
        init => field = Require.InRange(Require.Positive(value, "", nameof(WeeklyUreaDose)), 0, 10, "", nameof(WeeklyUreaDose));
    }
    = Require.InRange(Require.Positive(WeeklyUreaDose, ""), 0, 10, "");

    /// <summary>Share by which one measurement scatters.</summary>
    /// <exception cref="ArgumentOutOfRangeException">Not between 0 and 0.5.</exception>
    public double Noise
    {
        get;
        init => field = Require.InRange(value, 0, 0.5, "", nameof(Noise));
    }
    = Require.InRange(Noise, 0, 0.5, "");

    /// <summary>1.7 with a noise of 5 %.</summary>
    public static ClearanceGoal Usual { get; } = new(
        1.7,
        0.05,
        "Weekly Kt/V 1.7: ISPD 2006 and KDOQI 2006 (read in part); ISPD 2020 (Perit Dial Int 2020;40:244, read in part) asks for several measures and shared goals and " +
        "calls the evidence for 1.7 weak. One 24-h collection scatters by 4 to 6 % (read).");

    /// <summary>The least that counts as coming up to it.</summary>
    internal double Least => WeeklyUreaDose * (1 - Noise);
}
