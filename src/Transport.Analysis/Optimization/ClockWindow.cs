using System.Globalization;

namespace Transport.Analysis;

/// <summary>A stretch of the clock, over midnight where it has to be: "22:00 to 07:00".</summary>
/// <param name="From">When it begins.</param>
/// <param name="To">When it ends; the same as the beginning: 24 h.</param>
public readonly record struct ClockWindow(TimeOnly From, TimeOnly To)
{
    /// <summary>How long it is, more than 0 and at most 24 h.</summary>
    public TimeSpan Length => To == From ? TimeSpan.FromDays(1) : To - From;

    /// <summary>Whether something that begins at a time and takes so long lies within.</summary>
    public bool Contains(TimeOnly start, TimeSpan length) => Since(start) + length <= Length;

    /// <summary>"22:00 to 07:00".</summary>
    public override string ToString() => string.Create(CultureInfo.InvariantCulture, $"{From:HH:mm} to {To:HH:mm}");

    private TimeSpan Since(TimeOnly start) => start == From ? TimeSpan.Zero : start - From;
}
