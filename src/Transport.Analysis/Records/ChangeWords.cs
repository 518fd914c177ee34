using static System.FormattableString;

namespace Transport.Analysis;

/// <summary>Explanations and channels in words, and the test that would separate two of them.</summary>
public static class ChangeWords
{
    // Days within which a beginning has to be dated to be told as sudden (choice).
    private const int AtOnceDays = 7;

    /// <summary>"faster transfer of the membrane".</summary>
    /// <exception cref="ArgumentOutOfRangeException">Not one of the causes.</exception>
    public static string Name(ChangeCause cause) => cause switch
    {
        ChangeCause.FasterTransfer => "faster transfer of the membrane",
        ChangeCause.LowerConductance => "lower osmotic conductance",
        ChangeCause.MoreFluidLoss => "more fluid taken up or leaking",
        ChangeCause.DrainTrouble => "incomplete drains (catheter, position, constipation)",
        ChangeCause.LostDwell => "dwell time lost that is not written down",
        ChangeCause.RunDiffers => "what was run differs from the prescription, or the book does",
        ChangeCause.DayDiffers => "a change of the day's exchange (its fill, fluid or hours, or what the day takes up)",
        ChangeCause.HighPlasmaGlucose => "high plasma glucose",
        ChangeCause.BookCountsOtherwise => "the book counting otherwise than before",
        _ => throw new ArgumentOutOfRangeException(nameof(cause), cause, "Expected a cause that exists."),
    };

    /// <summary>"initial drain"; of the chart of drains, which has no single channel, "initial drain and ultrafiltration".</summary>
    /// <exception cref="ArgumentOutOfRangeException">Not one of the channels.</exception>
    public static string Name(NightChannel? channel) => channel switch
    {
        null => "initial drain and ultrafiltration",
        NightChannel.InitialDrain => "initial drain",
        NightChannel.FirstCycle => "first cycle",
        NightChannel.Ultrafiltration => "ultrafiltration",
        NightChannel.DrainTime => "drain time",
        NightChannel.AverageDwell => "average dwell",
        _ => throw new ArgumentOutOfRangeException(nameof(channel), channel, "Expected a channel that exists."),
    };

    /// <summary>What would tell two explanations apart, in one sentence.</summary>
    /// <remarks>By the model's own courses at 3.86 % (notebook 12 draws such): at 4 h more surface, lower conductance and more fluid loss look alike; 1 h and 8 h, sodium at 60 min and D/P part them.</remarks>
    public static string Separation(ChangeCause first, ChangeCause second)
    {
        if (IsMembrane(first) && IsMembrane(second))
        {
            return (first, second) switch
            {
                (ChangeCause.MoreFluidLoss, _) or (_, ChangeCause.MoreFluidLoss) =>
                    "An equilibration test with sodium at 60 min would separate them: D/P and the sodium dip stay as they were where fluid is taken up or leaks; a look for swelling of belly, groin and legs belongs to it.",
                _ => "An equilibration test with sodium at 60 min would separate them: D/P creatinine rises with faster transfer; with lower conductance it stays and free water falls. Short cycles are nearly spared in faster transfer, not in lower conductance.",
            };
        }

        // Of two that are no membrane's, what is looked at is the more compatible.
        return (IsMembrane(first) ? second : first) switch
        {
            ChangeCause.LostDwell => "The clock times of a few nights (begin and end, alarms and pauses, each drain), with average dwell or dwell deviation written down, would separate them before any test.",
            ChangeCause.RunDiffers => "Looking at the bags in use and at the programme as it is set, with the person and the book, would separate them before any test.",
            ChangeCause.DayDiffers => "The day's bag, its fill and the hours it stays, written down for a few days, would separate them before any test.",
            ChangeCause.HighPlasmaGlucose => "Blood glucose at the times of treatment, and the long-term value, would separate them.",
            ChangeCause.BookCountsOtherwise => "Asking what the number in the book counts, on one night with all volumes, would separate them.",
            _ => "A drain watched in two positions, its time and what is left behind would separate them, after constipation is dealt with; an equilibration test only after that.",
        };
    }

    /// <summary>What a nurse reads of a change: what moved, when, by how much, what it is compatible with and what would tell.</summary>
    internal static string Sentence(ChangeFound change)
    {
        var what = (change.Channel, change.IsDownward) switch
        {
            (null, _) => "Initial drain and ultrafiltration move together in a way that drains which leave fluid behind, among others, would explain",
            (NightChannel.InitialDrain, false) => "The initial drain is larger than was expected",
            (NightChannel.InitialDrain, true) => "The initial drain is smaller than was expected",
            (NightChannel.FirstCycle, false) => "The first cycle returns more beside the others than was expected",
            (NightChannel.FirstCycle, true) => "The first cycle returns less beside the others than was expected",
            (NightChannel.DrainTime, false) => "Drains take longer than was expected",
            (NightChannel.DrainTime, true) => "Drains take less time than was expected",
            (NightChannel.AverageDwell, false) => "The average dwell is longer than was expected",
            (NightChannel.AverageDwell, true) => "The average dwell is shorter than was expected",
            (_, false) => "Nights return more than was expected",
            (_, true) => "Nights return less than was expected",
        };
        var (first, second) = (change.Explanations[0], change.Explanations[1]);
        var began = change.BeganEarliest == change.BeganLatest
            ? Invariant($"on {change.Began:yyyy-MM-dd}")
            : Invariant($"around {change.Began:yyyy-MM-dd} ({change.BeganEarliest:yyyy-MM-dd} to {change.BeganLatest:yyyy-MM-dd})");
        return Invariant($"{what}, signalled on {change.SignalledOn:yyyy-MM-dd}. It may have begun {began}{Sizes(change)}. Most compatible: {Name(first.Cause)}, or {Name(second.Cause)}.{AtOnce(change)} {change.Separation}");
    }

    // A membrane changes over weeks.
    private static string AtOnce(ChangeFound change) => IsMembrane(change.Explanations[0].Cause) && change.BeganLatest.DayNumber - change.BeganEarliest.DayNumber <= AtOnceDays
        ? " It came within days, which a membrane seldom does: look at drains, leaks, bags and the book first."
        : "";

    private static string Sizes(ChangeFound change)
    {
        var drain = change is { Channel: null or NightChannel.InitialDrain, InitialDrainSize: { } ofDrain } ? $"the initial drain had changed by about {Size(ofDrain)}" : null;
        var night = change.Size is not { } ofNight ? null
            : $"{(change.HoldsDay ? "the ultrafiltration of night and day" : "a night's ultrafiltration")} {(drain is null ? "had changed " : "")}by about {Size(ofNight)}";
        return drain is null && night is null ? "" : Invariant($"; by {change.LookedAtUntil:yyyy-MM-dd} {string.Join(", ", new[] { drain, night }.OfType<string>())}");
    }

    private static string Size(Band<Volume> size) =>
        Invariant($"{size.Median.Milliliters:+0;−0;0} mL ({size.Low.Milliliters:+0;−0;0} to {size.High.Milliliters:+0;−0;0} mL)");

    private static bool IsMembrane(ChangeCause cause) => cause is ChangeCause.FasterTransfer or ChangeCause.LowerConductance or ChangeCause.MoreFluidLoss;
}
