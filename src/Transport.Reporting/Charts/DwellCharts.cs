namespace Transport.Reporting;

/// <summary>Charts of dwells.</summary>
public static class DwellCharts
{
    // One hue: strengths are told apart by lightness and by the name at the line's end, never by the colors of bag caps.
    private static readonly Tone[] Tones = [Tone.Light, Tone.Middle, Tone.Strong];

    /// <summary>Net ultrafiltration against dwell time at each strength, with its 90 % band; untested strengths are dashed.</summary>
    public static Figure Ultrafiltration(IReadOnlyList<DwellCurve> curves)
    {
        ArgumentNullException.ThrowIfNull(curves);
        var caption = $"Shaded: 90 % band of {curves.Aggregate(Doubt.None, (all, curve) => all | curve.NetUltrafiltration.Doubt).Words()}."
            + (curves.Any(curve => !curve.IsTested && !curve.IsOfPopulation) ? " Dashed: not tested in this patient; its band alone holds that of model form: how far the model misses published series." : "")
            + Population(curves);
        return new(
            "Net ultrafiltration against dwell time",
            caption,
            "Net ultrafiltration in mL against dwell time in hours. " + string.Join(" ", curves.Select(curve =>
                $"{curve.Solution.Name}: most {Digits.Fixed(curve.PeakUltrafiltration.Milliliters, 0)} mL between {Digits.Hours(curve.PeakWindow.From)} and {Digits.Hours(curve.PeakWindow.To)}; "
                + (curve.ReturnToZero is { } zero ? $"zero at {Digits.Hours(zero)}." : "zero not reached."))),
            Panel(curves, "net ultrafiltration", "mL", curve => curve.NetUltrafiltration) with { Marks = [Mark.AtY(0, "nothing gained")] });
    }

    /// <summary>Sodium removed and glucose absorbed against dwell time.</summary>
    public static Figure SodiumAndGlucose(IReadOnlyList<DwellCurve> curves)
    {
        ArgumentNullException.ThrowIfNull(curves);
        return new(
            "What the same dwells remove and cost",
            "Shaded: 90 % band of the parameters. Sodium as the model gives it for one dwell; of whole nights on a cycler published series report less." + Population(curves),
            "Two panels against dwell time in hours: sodium removed in mmol and glucose absorbed in g, for each solution.",
            Panel(curves, "sodium removed", "mmol", curve => curve.SodiumRemoved),
            Panel(curves, "glucose absorbed", "g", curve => curve.GlucoseAbsorbed))
        {
            Columns = 2,
        };
    }

    private static Panel Panel(IReadOnlyList<DwellCurve> curves, string label, string unit, Func<DwellCurve, CurveBand> read)
    {
        var strengths = curves.Count(curve => !curve.IsOfPopulation);
        var hours = curves[0].Minutes.Select(minutes => minutes / 60).ToArray();
        return new(new("dwell time", "h"), new(label, unit))
        {
            Series = [.. curves.Select((curve, i) => new Series(Name(curve), hours, read(curve).Median)
            {
                Tone = curve.IsOfPopulation ? Tone.Neutral : ToneOf(i, strengths),
                Pattern = curve.IsTested ? LinePattern.Solid : curve.IsOfPopulation ? LinePattern.Dot : LinePattern.Dash,
            })],
            Bands = [.. curves.Select((curve, i) => new ShadedBand(Name(curve), hours, read(curve).Low, read(curve).High) { Tone = curve.IsOfPopulation ? Tone.Neutral : ToneOf(i, strengths) })],
        };
    }

    private static string Name(DwellCurve curve) =>
        curve.IsOfPopulation ? curve.Solution.Name + ", population" : curve.IsTested ? curve.Solution.Name : curve.Solution.Name + ", not tested";

    private static string Population(IReadOnlyList<DwellCurve> curves) => curves.Any(curve => curve.IsOfPopulation)
        ? " Dotted: a population of this size, not this patient: no test with glucose tells of icodextrin; the polymer absorbed stands apart from glucose. " + Caution.Of(curves.Select(curve => curve.Solution))
        : "";

    internal static Tone ToneOf(int index, int count) => Tones[Math.Clamp(Tones.Length - count + index, 0, Tones.Length - 1)];
}
