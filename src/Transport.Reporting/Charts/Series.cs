namespace Transport.Reporting;

/// <summary>Points in the units of the panel's axes, joined by a line or standing alone, with or without whiskers.</summary>
public sealed record Series
{
    /// <summary>A series of points (x[i], y[i]).</summary>
    /// <param name="name">What the reader sees in the key; series and bands of one name share one entry.</param>
    /// <param name="x">At least one finite value. Lines are drawn in the order given.</param>
    /// <param name="y">As many values as <paramref name="x"/>.</param>
    /// <exception cref="ArgumentException">No name, no values, unequal numbers of values, or a value that is not finite.</exception>
    public Series(string name, IReadOnlyList<double> x, IReadOnlyList<double> y)
    {
        Name = ChartChecks.Text(name, "The name of a series");
        X = ChartChecks.Values(x, $"Series \"{name}\": x");
        Y = ChartChecks.Values(y, $"Series \"{name}\": y");
        ChartChecks.SameLength(X.Count, Y.Count, $"Series \"{name}\": x", "y");
    }

    /// <summary>What the reader sees in the key.</summary>
    public string Name { get; }

    /// <summary>Horizontal positions in the unit of the panel's x axis.</summary>
    public IReadOnlyList<double> X { get; }

    /// <summary>Vertical positions in the unit of the panel's y axis; as many as <see cref="X"/>.</summary>
    public IReadOnlyList<double> Y { get; }

    /// <summary>How the points are joined; solid unless said otherwise.</summary>
    public LinePattern Pattern { get; init; } = LinePattern.Solid;

    /// <summary>What stands at each point; nothing unless said otherwise.</summary>
    public MarkerShape Marker { get; init; } = MarkerShape.None;

    /// <summary>The voice of the series; strong unless said otherwise.</summary>
    public Tone Tone { get; init; } = Tone.Strong;

    /// <summary>Thickness of the line and of whiskers in CSS pixels, 0.5 to 20; 2 unless said otherwise.</summary>
    /// <exception cref="ArgumentException">Outside 0.5 to 20.</exception>
    public double Weight
    {
        get;
        init => field = value is >= 0.5 and <= 20
            ? value
            : throw new ArgumentException(
                FormattableString.Invariant($"Series \"{Name}\": weight {value} is outside 0.5 to 20 pixels."));
    } = 2;

    /// <summary>The horizontal reach of each point, on the x axis; null for none.</summary>
    /// <exception cref="ArgumentException">Not as many as there are points.</exception>
    public IReadOnlyList<Extent>? XWhiskers
    {
        get;
        init => field = OnePerPoint(value, "x whiskers");
    }

    /// <summary>The vertical reach of each point, on the y axis; null for none.</summary>
    /// <exception cref="ArgumentException">Not as many as there are points.</exception>
    public IReadOnlyList<Extent>? YWhiskers
    {
        get;
        init => field = OnePerPoint(value, "y whiskers");
    }

    /// <summary>A sentence for each point, shown on hovering in the interactive chart; null for none.</summary>
    /// <exception cref="ArgumentException">Not as many as there are points.</exception>
    public IReadOnlyList<string>? Notes
    {
        get;
        init => field = OnePerPoint(value, "notes");
    }

    private IReadOnlyList<T>? OnePerPoint<T>(IReadOnlyList<T>? values, string what)
    {
        if (values is null) return null;
        ChartChecks.SameLength(X.Count, values.Count, $"Series \"{Name}\": x", what);
        return [.. values];
    }
}
