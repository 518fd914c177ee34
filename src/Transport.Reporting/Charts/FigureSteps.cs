using System.Globalization;

namespace Transport.Reporting;

/// <summary>
/// A figure for each position of a knob, worked out beforehand, so that a reader can turn it on a page that computes nothing. All steps
/// share their axes: what moves is the result, not the scale.
/// </summary>
public sealed record FigureSteps
{
    private const double Margin = 0.04;

    /// <summary>A knob and its positions, in order.</summary>
    /// <param name="knob">What is turned, such as "fill volume"; not empty.</param>
    /// <param name="start">Which step is seen first, from zero.</param>
    /// <param name="steps">1 to 12 (one has nothing to turn to, and is shown as it is), their figures with equal numbers of panels.</param>
    /// <exception cref="ArgumentException">No name, no or more than 12 steps, no such first step, or figures that differ in their panels.</exception>
    public FigureSteps(string knob, int start, params IReadOnlyList<FigureStep> steps)
    {
        ArgumentNullException.ThrowIfNull(steps);
        Knob = ChartChecks.Text(knob, "The name of a knob");
        if (steps.Count is 0 or > 12) throw new ArgumentException(FormattableString.Invariant($"The knob \"{knob}\" has {steps.Count} positions; expected 1 to 12."));
        if (start < 0 || start >= steps.Count) throw new ArgumentException(FormattableString.Invariant($"The knob \"{knob}\" starts at position {start} of 0 to {steps.Count - 1}."));
        var panels = steps[0].Figure.Panels.Count;
        if (steps.Any(step => step.Figure.Panels.Count != panels)) throw new ArgumentException($"The figures of the knob \"{knob}\" differ in their number of panels.");
        Start = start;
        Steps = OnCommonAxes(steps);
    }

    /// <summary>What is turned.</summary>
    public string Knob { get; }

    /// <summary>Which step is seen first, from zero.</summary>
    public int Start { get; }

    /// <summary>The steps, in order, on common axes.</summary>
    public IReadOnlyList<FigureStep> Steps { get; }

    /// <summary>A knob over numbers.</summary>
    /// <param name="knob">What is turned.</param>
    /// <param name="unit">Its unit as printed; empty for a dimensionless number.</param>
    /// <param name="values">1 to 12 positions, in order.</param>
    /// <param name="start">The value seen first; one of <paramref name="values"/>.</param>
    /// <param name="draw">The figure at a value.</param>
    /// <exception cref="ArgumentException">As of the constructor, or <paramref name="start"/> is none of the values.</exception>
    public static FigureSteps Over(string knob, string unit, IReadOnlyList<double> values, double start, Func<double, Figure> draw)
    {
        ArgumentNullException.ThrowIfNull(values);
        ArgumentNullException.ThrowIfNull(draw);
        var first = values.ToList().IndexOf(start);
        return new(knob, first, [.. values.Select(value => new FigureStep((value.ToString("0.####", CultureInfo.InvariantCulture) + " " + unit).TrimEnd(), draw(value)))]);
    }

    private static FigureStep[] OnCommonAxes(IReadOnlyList<FigureStep> steps)
    {
        var panels = Enumerable.Range(0, steps[0].Figure.Panels.Count).Select(i => steps.Select(step => step.Figure.Panels[i]).ToList()).ToList();
        var x = panels.Select(same => Common(same, panel => panel.XAxis, panel => panel.XReach(), 0)).ToList();
        var y = panels.Select(same => Common(same, panel => panel.YAxis, panel => panel.YReach(), Margin)).ToList();
        return [.. steps.Select(step => step with { Figure = step.Figure.OnPanels(step.Figure.Panels.Select((panel, i) => panel.OnAxes(x[i], y[i]))) })];
    }

    // A range that the figures chose themselves stays.
    private static Extent? Common(List<Panel> panels, Func<Panel, Axis> axis, Func<Panel, Extent> reach, double margin)
    {
        if (panels.Any(panel => axis(panel) is { Range: not null } or { IsLogarithmic: true })) return null;
        var all = panels.Select(reach).ToList();
        var (lower, upper) = (all.Min(extent => extent.Lower), all.Max(extent => extent.Upper));
        var room = margin * (upper - lower);
        return upper > lower ? new Extent(lower - room, upper + room) : null;
    }
}
