namespace Transport.Reporting;

/// <summary>Which part of a text stands at its position.</summary>
internal enum TextAnchor
{
    Start,
    Middle,
    End,
}

/// <summary>
/// A label at (<paramref name="X"/>, <paramref name="Y"/>) in pixels from the upper left corner of the plot area; Y is the middle
/// of its height.
/// </summary>
internal sealed record ChartText(string Text, double X, double Y, TextAnchor Anchor, Tone Tone)
{
    public const double FontSize = 12;
    public const double LineHeight = 15;
}
