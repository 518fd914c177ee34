namespace Transport.Analysis;

/// <summary>Published means with 2 L of 7.5 % icodextrin (reference-data/icodextrin-fluid-courses, read).</summary>
public static class IcodextrinSeries
{
    /// <summary>A test of 4 h: 273 ± 137 mL (PubMed 17173249).</summary>
    public static VolumeTarget FourHours { get; } = Volume(4, 273, 137, 58);

    /// <summary>The day dwell of people on a cycler, 10 h: 352 ± 251 mL (Jeloka et al., Perit Dial Int 2006;26:336).</summary>
    public static VolumeTarget TenHours { get; } = Volume(10, 352, 251, 36);

    /// <summary>The same people, 14 h: 372 ± 258 mL.</summary>
    public static VolumeTarget FourteenHours { get; } = Volume(14, 372, 258, 36);

    /// <summary>A dwell of 16 h, volume by tracer: 729 ± 337 mL (Front Physiol 2019;10:1326).</summary>
    public static VolumeTarget SixteenHours { get; } = Volume(16, 729, 337, 20);

    private static VolumeTarget Volume(double hours, double mean, double deviation, int count) => new(
        TimeSpan.FromHours(hours), Transport.Volume.FromMilliliters(mean), Transport.Volume.FromMilliliters(deviation), count);
}
