namespace Transport.Reporting;

/// <summary>
/// The colors of every figure: ink, one hue (a deep teal) in three lightnesses, grey, one accent. On white they have a contrast
/// of 10, 4.7, 3.1 (the three lightnesses), 3.8 (grey) and 5.9 (accent), and they stay apart in grey print.
/// </summary>
/// <remarks>
/// A page may rename them: each is also a CSS custom property, and the value here is what is drawn where a page sets none.
/// The properties are --figure-ink, -axis, -grid, -paper, -strong, -middle, -light, -neutral and -attention.
/// </remarks>
internal static class ChartColors
{
    public const string Ink = "#1d2b33";
    public const string Axis = "#68757c";
    public const string Grid = "#e3e8ea";
    public const string Paper = "#ffffff";

    /// <summary>How much of its color a band or a shaded range keeps.</summary>
    public const double BandOpacity = 0.16;

    /// <summary>How much of its color a bar keeps.</summary>
    public const double BarOpacity = 0.4;

    /// <summary>A whisker at least this thick, in pixels, is a bar and lets what lies on it shine through.</summary>
    public const double BarWeight = 5;

    /// <summary>Name of the custom property (after "--figure-"), value on light paper, value on dark paper.</summary>
    public static IReadOnlyList<(string Name, string Light, string Dark)> All { get; } =
    [
        ("ink", Ink, "#dfe7ea"),
        ("axis", Axis, "#8b979d"),
        ("grid", Grid, "#2c373d"),
        ("paper", Paper, "#12181b"),
        ("strong", Of(Tone.Strong), "#c3e9ed"),
        ("middle", Of(Tone.Middle), "#6bb8c2"),
        ("light", Of(Tone.Light), "#3d8893"),
        ("neutral", Of(Tone.Neutral), "#98a4aa"),
        ("attention", Of(Tone.Attention), "#ea9a7c"),
    ];

    public static string Of(Tone tone) => tone switch
    {
        Tone.Strong => "#0b4651",
        Tone.Middle => "#237f8c",
        Tone.Light => "#559ca8",
        Tone.Neutral => "#7a858b",
        Tone.Attention => "#a8452f",
        _ => throw new ArgumentOutOfRangeException(nameof(tone), tone, "Not a tone."),
    };

    /// <summary>The color of words in a tone: where a line of that color is plain enough, small letters need more contrast.</summary>
    public static string OfText(Tone tone) => tone switch
    {
        Tone.Light => Of(Tone.Middle),
        Tone.Neutral => Axis,
        _ => Of(tone),
    };

    /// <summary>Dashes and gaps in pixels; empty for a solid line.</summary>
    public static IReadOnlyList<double> Dashes(LinePattern pattern) => pattern switch
    {
        LinePattern.Dash => [8, 4],
        LinePattern.Dot => [2, 3],
        LinePattern.DashDot => [9, 3, 2, 3],
        _ => [],
    };
}
