namespace Transport.Analysis;

/// <summary>What went in on the morning before a night, and so comes out first in the evening.</summary>
internal static class NightBefore
{
    /// <summary>
    /// The regimen of the night before where that is written; the night's own across a gap, since what stays the same is usual; none where the book says that no
    /// treatment was done: then nothing was filled in the morning, and what drains in the evening has no expectation.
    /// </summary>
    public static NightResponse? Of(IReadOnlyList<NightRecord> nights, IReadOnlyList<NightResponse?> responses, int night) =>
        !IsWritten(nights, night) ? responses[night]
        : nights[night - 1].IsSkipped ? null
        : responses[night - 1] ?? responses[night];

    /// <summary>Whether the night before has a row.</summary>
    public static bool IsWritten(IReadOnlyList<NightRecord> nights, int night) => night > 0 && nights[night].Date.DayNumber - nights[night - 1].Date.DayNumber == 1;
}
