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

    /// <summary>The same with the dwells of a regimen marked on the curves of their solutions, as a search chose them.</summary>
    /// <param name="curves">The curves.</param>
    /// <param name="name">What the regimen is called: "option A".</param>
    /// <param name="regimen">The regimen.</param>
    /// <exception cref="RegimenException">The regimen cannot be carried out.</exception>
    /// <exception cref="ArgumentException">None of its dwells lies on one of the curves.</exception>
    public static Figure Ultrafiltration(IReadOnlyList<DwellCurve> curves, string name, Regimen regimen)
    {
        ArgumentNullException.ThrowIfNull(regimen);
        var plain = Ultrafiltration(curves);
        var dwells = regimen.Exchanges.Zip(regimen.DwellTimes.Concat(regimen.DayDwellTimes))
            .Select(pair => (pair.First.Solution, pair.First.Fill, Minutes: Math.Round(pair.Second.TotalMinutes)))
            .GroupBy(dwell => dwell)
            .Select(group => (group.Key.Solution, group.Key.Fill, group.Key.Minutes, Times: group.Count(), Curve: curves.FirstOrDefault(curve => curve.Solution == group.Key.Solution)))
            .Where(dwell => dwell.Curve is not null && dwell.Minutes <= dwell.Curve.Minutes[^1])
            .ToList();
        if (dwells.Count == 0)
        {
            throw new ArgumentException("None of the dwells lies on one of the curves.", nameof(regimen));
        }

        var otherwise = dwells.Any(dwell => Math.Abs((dwell.Fill - dwell.Curve!.Fill).Milliliters) > 0.5)
            ? $" The curves are of {Digits.Fixed(curves[0].Fill.Milliliters, 0)} mL; it fills {string.Join(" and ", dwells.Select(dwell => Digits.Fixed(dwell.Fill.Milliliters, 0)).Distinct())} mL."
            : "";
        return new(
            plain.Title,
            $"{plain.Caption} Rings: the dwells of {name}, {regimen.Describe()}.{otherwise}",
            $"{plain.AltText} Dwells of {name}: {string.Join(", ", dwells.Select(dwell => $"{dwell.Times} × {Digits.Fixed(dwell.Minutes, 0)} min of {dwell.Solution.Name}"))}.",
            plain.Panels[0] with
            {
                Marks =
                [
                    .. plain.Panels[0].Marks,
                    .. dwells.Select(dwell => Mark.AtPoint(dwell.Minutes / 60, At(dwell.Curve!, dwell.Minutes), $"{name}: {dwell.Times} × {Digits.Fixed(dwell.Minutes, 0)} min") with { Tone = Tone.Attention }),
                ],
            });

        static double At(DwellCurve curve, double minutes)
        {
            var after = Enumerable.Range(0, curve.Minutes.Length).First(i => curve.Minutes[i] >= minutes);
            var before = Math.Max(0, after - 1);
            var share = after == before ? 0 : (minutes - curve.Minutes[before]) / (curve.Minutes[after] - curve.Minutes[before]);
            return curve.NetUltrafiltration.Median[before] + share * (curve.NetUltrafiltration.Median[after] - curve.NetUltrafiltration.Median[before]);
        }
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
