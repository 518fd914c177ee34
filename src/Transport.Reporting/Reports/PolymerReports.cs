using static System.FormattableString;

namespace Transport.Reporting;

/// <summary>A glucose polymer, its calibration and its misses as sentences and tables.</summary>
public static class PolymerReports
{
    /// <summary>The fractions of a polymer.</summary>
    public static ReportBlock Of(PolymerDistribution polymer)
    {
        ArgumentNullException.ThrowIfNull(polymer);
        return new ReportBlock()
            .Sentence(Invariant($"{Digits.Of(polymer.GramsPerLiter)} g/L in {Digits.Of(polymer.Chains.MillimolesPerLiter)} mmol/L of chains: mean mass by number {Digits.Fixed(polymer.NumberMeanGramsPerMole, 0)}, by mass {Digits.Fixed(polymer.WeightMeanGramsPerMole, 0)} g/mol."))
            .Table(new(
                ["fraction", "#g/L", "#mmol/L", "#mean, g/mol", "#radius, Å"],
                [.. polymer.Fractions.Select(fraction => (IReadOnlyList<string>)
                [
                    fraction.Solute.Name,
                    Digits.Fixed(fraction.GramsPerLiter, 2),
                    Digits.Fixed(fraction.Concentration.MillimolesPerLiter, 3),
                    Digits.Fixed(fraction.Solute.MolarMassGramsPerMole, 0),
                    Digits.Fixed(fraction.Solute.RadiusAngstrom, 1),
                ])]));
    }

    /// <summary>The two numbers of a calibration.</summary>
    public static ReportBlock Of(CalibratedPolymer calibrated)
    {
        ArgumentNullException.ThrowIfNull(calibrated);
        var membrane = calibrated.Membrane;
        return new ReportBlock()
            .Sentence(Invariant($"Fitted to {Digits.Fixed(calibrated.Early.Mean.Milliliters, 0)} mL at {Digits.Hours(calibrated.Early.Time)} and {Digits.Fixed(calibrated.Late.Mean.Milliliters, 0)} mL at {Digits.Hours(calibrated.Late.Time)}, and to nothing else."))
            .Table(new(
                ["parameter", "#value", "#± standard error", "unit"],
                [
                    ["osmotic efficiency of the polymer", Digits.Fixed(membrane.PolymerOsmoticEfficiency, 4), Digits.Fixed(calibrated.EfficiencyError, 3), ""],
                    ["tissue uptake of the polymer", Digits.Fixed(membrane.PolymerTissueUptake.MillilitersPerMinute, 4), Digits.Fixed(calibrated.UptakeError.MillilitersPerMinute, 2), "mL/min"],
                ]))
            .Sentence(Caution.Of([calibrated.Dwell.Solution]))
            .Small(Invariant($"The errors are what the standard errors of the two means make; they go together (correlation {Digits.Fixed(calibrated.Correlation, 2)}). The model's own error is not in them."));
    }

    /// <summary>Published figures beside computed ones, misses included.</summary>
    public static ReportBlock Of(IReadOnlyList<PublishedFigure> figures)
    {
        ArgumentNullException.ThrowIfNull(figures);
        return new ReportBlock()
            .Table(new(
                ["what", "#in print\n± SD or range", "#first dwell", "#regular user", "unit", ""],
                [.. figures.Select(figure => (IReadOnlyList<string>)
                [
                    figure.What,
                    figure.High > figure.Low ? $"{Value(figure, figure.Value)}\n{Value(figure, figure.Low)} to {Value(figure, figure.High)}" : Value(figure, figure.Value),
                    Value(figure, figure.FirstDwell),
                    Value(figure, figure.RegularUser),
                    figure.Unit,
                    figure.IsFitted ? "fitted" : figure.IsMet ? "predicted" : "missed",
                ])]))
            .Sentence(Caution.Of([DialysisSolution.Icodextrin]))
            .Small("Fitted: used by the calibration, with a first dwell. Everything else is a prediction. Missed: in both columns more than two standard errors from a mean, outside a printed range, or more than a tenth from a figure that stands alone. The range below a mean is ± 1 SD between people, much wider than the doubt about the mean.");

        static string Value(PublishedFigure figure, double value) => Digits.Fixed(value, figure.Unit switch { "" => 3, "mL/min" => 2, _ => 0 });
    }
}
