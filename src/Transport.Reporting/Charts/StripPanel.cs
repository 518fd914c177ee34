using System.Globalization;

namespace Transport.Reporting;

/// <summary>
/// A strip plot: one row per index, each on a scale of its own on which the population's range has the same length in every row.
/// The numbers themselves stand beside the marks, so a reader never has to convert.
/// </summary>
public static class StripPanel
{
    /// <summary>The panel, first row on top.</summary>
    /// <param name="rows">At least one row.</param>
    /// <param name="populationName">What the grey bars are, such as "population, mean ± SD"; for the key.</param>
    /// <param name="observedName">What the points are, such as "observed, 90 % interval"; for the key.</param>
    /// <exception cref="ArgumentException">No row, or an empty name.</exception>
    public static Panel Of(IReadOnlyList<StripRow> rows, string populationName, string observedName)
    {
        ArgumentNullException.ThrowIfNull(rows);
        if (rows.Count == 0) throw new ArgumentException("A strip plot has no row.");

        var bottomUp = rows.Reverse().ToArray();
        double[] y = [.. bottomUp.Select((_, i) => (double)i)];
        var population = new Series(populationName, [.. bottomUp.Select(r => At(r, r.Center))], y)
        {
            Pattern = LinePattern.None,
            Marker = MarkerShape.Tick,
            Tone = Tone.Neutral,
            Weight = 9,
            XWhiskers = [.. bottomUp.Select(_ => new Extent(-1, 1))],
            Notes = [.. bottomUp.Select(r => $"{r.Name}: {Number(r, r.Population.Lower)} to {Number(r, r.Population.Upper)}, " +
                                             $"center {Number(r, r.Center)}{Suffix(r)}")],
        };
        var observed = new Series(observedName, [.. bottomUp.Select(r => At(r, r.Value))], y)
        {
            Pattern = LinePattern.None,
            Marker = MarkerShape.Circle,
            XWhiskers = [.. bottomUp.Select(r => new Extent(At(r, r.Uncertainty.Lower), At(r, r.Uncertainty.Upper)))],
            Notes = [.. bottomUp.Select(r => $"{r.Name}: {Observed(r)}")],
        };

        // Room for the farthest mark and for half a number beyond it; never less than the bar and half its length on each side.
        var reach = observed.XWhiskers.Aggregate(new Extent(-2, 2),
            (all, w) => new Extent(Math.Min(all.Lower, w.Lower), Math.Max(all.Upper, w.Upper)));
        var margin = 0.05 * reach.Width;
        var scale = Axis.OfPosition("each row on its own scale", new Extent(reach.Lower - margin, reach.Upper + margin));

        return new Panel(scale, Axis.OfCategories([.. bottomUp.Select(r => $"{r.Name}\n{Observed(r)}")]))
        {
            RelativeHeight = Math.Clamp(0.3 + 0.17 * rows.Count, 0.4, 4),
            Series = [population, observed],
            Marks = [.. bottomUp.SelectMany((r, i) => new[]
            {
                Mark.Note(-1, i - 0.33, Number(r, r.Population.Lower)),
                Mark.Note(1, i - 0.33, Number(r, r.Population.Upper)),
            })],
        };
    }

    /// <summary>Position on the row's own scale: the population's range reaches from -1 to 1.</summary>
    private static double At(StripRow row, double value) =>
        (value - row.Population.Lower) / row.Population.Width * 2 - 1;

    private static string Observed(StripRow row) =>
        row.Uncertainty.IsPoint
            ? $"{Number(row, row.Value)}{Suffix(row)}"
            : $"{Number(row, row.Value)} ({Number(row, row.Uncertainty.Lower)} to {Number(row, row.Uncertainty.Upper)}){Suffix(row)}";

    private static string Suffix(StripRow row) => row.Unit.Length == 0 ? "" : " " + row.Unit;

    private static string Number(StripRow row, double value) =>
        value.ToString("F" + row.Decimals.ToString(CultureInfo.InvariantCulture), CultureInfo.InvariantCulture).Replace('-', '−');
}
