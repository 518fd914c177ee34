namespace Transport.Reporting;

/// <summary>
/// A chart as data: what is shown, on which axes, in which units, and in words for those who cannot see it. It knows nothing of
/// how it is drawn; <see cref="PlotlyRenderer"/> draws it for a screen, <see cref="SvgRenderer"/> for paper.
/// </summary>
public sealed record Figure
{
    /// <summary>A figure of one or more panels.</summary>
    /// <param name="title">What is shown; not empty.</param>
    /// <param name="caption">What the reader must know to read it: source, band, doubt. May be empty.</param>
    /// <param name="altText">The content in words, for a reader who cannot see the chart; not empty.</param>
    /// <param name="panels">At least one, none of them empty; laid out in rows of <see cref="Columns"/>.</param>
    /// <exception cref="ArgumentException">No title, no alternative text, no panel, or a panel with nothing in it.</exception>
    public Figure(string title, string caption, string altText, params IReadOnlyList<Panel> panels)
    {
        ArgumentNullException.ThrowIfNull(caption);
        ArgumentNullException.ThrowIfNull(panels);
        Title = ChartChecks.Text(title, "The title of a figure");
        Caption = caption;
        AltText = ChartChecks.Text(altText, $"The alternative text of figure \"{title}\"");
        if (panels.Count == 0) throw new ArgumentException($"Figure \"{title}\" has no panel.");
        for (var i = 0; i < panels.Count; i++)
        {
            if (panels[i].Series.Count + panels[i].Bands.Count == 0)
                throw new ArgumentException(
                    FormattableString.Invariant($"Figure \"{title}\": panel {i + 1} of {panels.Count} has neither series nor bands."));
        }
        Panels = [.. panels];
        Columns = Math.Min(2, panels.Count);
        Key = panels.Count == 1 ? KeyPlacement.LineEnds : KeyPlacement.Below;
    }

    /// <summary>What is shown.</summary>
    public string Title { get; }

    /// <summary>What the reader must know to read it; may be empty.</summary>
    public string Caption { get; }

    /// <summary>The content in words.</summary>
    public string AltText { get; }

    /// <summary>The panels, row by row.</summary>
    public IReadOnlyList<Panel> Panels { get; private init; }

    /// <summary>Panels in a row, 1 to 4; up to two unless said otherwise.</summary>
    /// <exception cref="ArgumentException">Outside 1 to 4.</exception>
    public int Columns
    {
        get;
        init => field = value is >= 1 and <= 4
            ? value
            : throw new ArgumentException(FormattableString.Invariant($"Figure \"{Title}\": {value} columns are outside 1 to 4."));
    }

    /// <summary>Where the lines are named. Unless said otherwise: at their ends in a figure of one panel, below it in one of several.</summary>
    public KeyPlacement Key { get; init; }

    /// <summary>The same figure with other panels in the place of its own.</summary>
    internal Figure OnPanels(IEnumerable<Panel> panels) => this with { Panels = [.. panels] };
}
