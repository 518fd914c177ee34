namespace Transport.Reporting;

/// <summary>
/// A remark on a panel: a reference line, a shaded range or a point, each with its label. It covers <see cref="X"/> by
/// <see cref="Y"/>; what is null reaches over the whole axis.
/// </summary>
public sealed record Mark
{
    private Mark(Extent? x, Extent? y, string label)
    {
        X = x;
        Y = y;
        Label = ChartChecks.Text(label, "The label of a mark");
    }

    /// <summary>Where on the x axis, in its unit; null for all of it.</summary>
    public Extent? X { get; }

    /// <summary>Where on the y axis, in its unit; null for all of it.</summary>
    public Extent? Y { get; }

    /// <summary>What is written beside it.</summary>
    public string Label { get; }

    /// <summary>The voice of the mark; neutral unless said otherwise.</summary>
    public Tone Tone { get; init; } = Tone.Neutral;

    /// <summary>Whether the mark is words alone, with no ring.</summary>
    public bool IsNote { get; private init; }

    /// <summary>A vertical line at <paramref name="x"/>.</summary>
    /// <exception cref="ArgumentException">A value that is not finite, or no label.</exception>
    public static Mark AtX(double x, string label) => new(new Extent(x, x), null, label);

    /// <summary>A horizontal line at <paramref name="y"/>.</summary>
    /// <exception cref="ArgumentException">A value that is not finite, or no label.</exception>
    public static Mark AtY(double y, string label) => new(null, new Extent(y, y), label);

    /// <summary>A ring around the point (<paramref name="x"/>, <paramref name="y"/>) with its label beside it.</summary>
    /// <exception cref="ArgumentException">A value that is not finite, or no label.</exception>
    public static Mark AtPoint(double x, double y, string label) => new(new Extent(x, x), new Extent(y, y), label);

    /// <summary>Words alone, centered on the point (<paramref name="x"/>, <paramref name="y"/>).</summary>
    /// <exception cref="ArgumentException">A value that is not finite, or no label.</exception>
    public static Mark Note(double x, double y, string label) =>
        new(new Extent(x, x), new Extent(y, y), label) { IsNote = true };

    /// <summary>Shade over <paramref name="range"/> of the x axis.</summary>
    /// <exception cref="ArgumentException">The range is a single value, or no label.</exception>
    public static Mark OverX(Extent range, string label) => new(Wide(range, label), null, label);

    /// <summary>Shade over <paramref name="range"/> of the y axis.</summary>
    /// <exception cref="ArgumentException">The range is a single value, or no label.</exception>
    public static Mark OverY(Extent range, string label) => new(null, Wide(range, label), label);

    private static Extent Wide(Extent range, string label) =>
        range.IsPoint
            ? throw new ArgumentException(
                FormattableString.Invariant($"Mark \"{label}\" shades the single value {range.Lower}; a shaded range has two ends."))
            : range;
}
