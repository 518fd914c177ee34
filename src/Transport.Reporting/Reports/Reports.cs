using static System.FormattableString;

namespace Transport.Reporting;

/// <summary>Results as sentences and tables.</summary>
public static class Reports
{
    /// <summary>Who and what a sheet is of, and what was found in it.</summary>
    public static ReportBlock Of(SampleSheet sheet)
    {
        ArgumentNullException.ThrowIfNull(sheet);
        var errors = sheet.Findings.Count(finding => finding.Severity == Severity.Error);
        var warnings = sheet.Findings.Count(finding => finding.Severity == Severity.Warning);
        var hasOtherUnits = sheet.Measurements.Any(row => InSiUnits(row).Length > 0);
        IReadOnlyList<string> columns = ["fluid", "#time, min", "what", "#value", "unit"];
        return WhoseSheet(sheet)
            .Sentence(errors > 0
                ? Invariant($"{Count(errors, "error")}: nothing can be computed until the sheet is mended.")
                : Invariant($"{Count(sheet.Measurements.Count, "measurement")} read; {Count(warnings, "warning")}."))
            .FindingList(sheet.Findings)
            .Sentence(sheet.TryToTest(out var test) ? Caution.Of(Caution.SolutionsOf(test)) : "")
            .Folded(hasOtherUnits ? "What was written down, in the units of the sheet, with SI units in brackets" : "What was written down, in the units of the sheet", new(
                hasOtherUnits ? [.. columns, "#in SI units"] : columns,
                [.. sheet.Measurements.Select(row => (IReadOnlyList<string>)
                [
                    Words(row.Fluid.ToString()),
                    row.Time is { } time ? Digits.Fixed(time.TotalMinutes, 0) : "",
                    Words(row.Analyte.ToString()),
                    row.Text,
                    row.UnitText,
                    .. hasOtherUnits ? new[] { InSiUnits(row) } : [],
                ])]));
    }

    // Code, date, age; what of it is missing is said, since a page that can be taken for another person's is dangerous.
    internal static ReportBlock WhoseSheet(SampleSheet sheet)
    {
        var test = sheet.TryToTest(out var read) ? read : null;
        var code = Fact("code");
        var date = test?.Date is { } day ? day.ToString("yyyy-MM-dd", System.Globalization.CultureInfo.InvariantCulture) : Fact("date") is { } written ? $"\"{written}\" (not understood)" : null;
        var isInvented = sheet.IsInvented;
        var block = new ReportBlock().Identity(string.Join(" · ", new[]
        {
            code ?? "no code",
            date is null ? "date of the test not given" : $"test of {date}",
            test is null ? null : Invariant($"{PageWords.Person(test.Patient)} of {test.Patient.AgeYears:0.#} years"),
            isInvented ? "invented data" : null,
        }.OfType<string>()));
        if (code is null || date is null)
        {
            block.Sentence($"Read with care: this page does not say {(code is null ? "whose it is" : "when the test was made")}{(code is null && date is null ? ", nor when the test was made" : "")}.");
        }

        return block.Small($"From {sheet.FileName}; {(isInvented ? "invented data, no real patient; " : "")}{TestedBy(sheet)}. Read by Transport {Version}.");

        string? Fact(string item) => sheet.Facts.FirstOrDefault(fact => fact.Item == item && fact.Text.Length > 0)?.Text;
    }

    private static string TestedBy(SampleSheet sheet) => (sheet.Tester, sheet.Laboratory) switch
    {
        (null, null) => "tester and laboratory are not on the sheet",
        var (tester, laboratory) => $"tester {tester ?? "not on the sheet"}, laboratory {laboratory ?? "not on the sheet"}",
    };

    private static string Version => typeof(SampleSheet).Assembly.GetName().Version?.ToString(3) ?? "";

    // "(812 µmol/L)" where the laboratory writes milligrams; empty where it writes moles, or where the value was not understood.
    private static string InSiUnits(SheetMeasurement row) =>
        row.Value is not { } value || row.Unit is null || row.Unit.Contains("mol", StringComparison.Ordinal) ? ""
        : row.Analyte == Analyte.Creatinine ? Invariant($"({Digits.Of(1000 * value.MillimolesPerLiter)} µmol/L)")
        : Invariant($"({Digits.Of(value.MillimolesPerLiter)} mmol/L{(row.Analyte == Analyte.UreaNitrogen ? " urea" : "")})");

    /// <summary>Indices with their doubt, class, findings, and what was not measured.</summary>
    public static ReportBlock Of(EquilibrationIndices indices)
    {
        ArgumentNullException.ThrowIfNull(indices);
        var block = new ReportBlock();
        var test = indices.Test;
        block.Sentence(PageWords.Capital(Invariant($"{test.Solution}, {Digits.Of(test.InstilledVolume.Milliliters, 4)} mL for {Digits.Hours(test.Dwell)}. {indices.FillStatement}")));
        block.Sentence(Caution.Of(Caution.SolutionsOf(test)));
        if (indices.Classification is { } classification)
        {
            block.Sentence(EquilibrationReports.Transfer(classification, "Transfer: D/P creatinine"));
            if (!indices.Options.Thresholds.IsMiddleStrength(test.Solution))
            {
                block.Small("The classes come from tests at 2.27 %. D/P creatinine is much the same at 3.86 % (0.66 against 0.67 in 23 people tested with both, read); D/D0, ultrafiltration and sodium are not, and get no class here.");
            }

            block.Sentence(classification.CreatinineInDoubt is not null ? "" : "If the test were repeated in the same person the class would be: " + string.Join(", ", TransportCategories.All.Where(category =>
                classification.Probabilities[category] >= 0.005).Select(category => $"{category.Name()} {Digits.Percent(classification.Probabilities[category])}")) + ".");
            if (classification.GlucoseCategory is { } glucose)
            {
                block.Sentence($"Cross-check by D/D0 glucose: {glucose.Name()}.");
            }
        }

        block.Table(new(
            ["index", "#value", "#± SD", "unit"],
            [.. indices.All.Where(index => index != indices.NetUltrafiltrationAsWritten || index.Value != indices.NetUltrafiltration?.Value).Select(index => (IReadOnlyList<string>)
            [
                index.Name,
                index.Unit == "mL" ? Digits.Fixed(index.Value, 0) : Digits.Beside(index.Value, index.StandardDeviation),
                index.StandardDeviation is { } deviation ? Digits.Of(deviation, 2) : "not known",
                index.Unit,
            ])]));
        block.Folded("Ratios at each time", new(
            ["#time, min", "#D/P creatinine", "#D/P urea", "#D/D0 glucose"],
            [.. indices.Ratios.Select(row => (IReadOnlyList<string>)
            [
                Digits.Fixed(row.Time.TotalMinutes, 0), Ratio(row.DialysateToPlasmaCreatinine), Ratio(row.DialysateToPlasmaUrea), Ratio(row.DialysateToInitialGlucose),
            ])]));
        block.FindingList(indices.Findings);
        block.Folded("Not available", new(["index", "why"], [.. indices.NotAvailable.Select(missing => (IReadOnlyList<string>)[missing.Name, missing.Reason])]));
        return block.Folded("Formulas and sources", new(
            ["index", "formula", "source"], [.. indices.All.Select(index => (IReadOnlyList<string>)[index.Name, index.Formula, index.Source])]));

        static string Ratio(IndexValue? value) => value is null ? "–" : Digits.Fixed(value.Value, 3);
    }

    /// <summary>Whether a fit may be believed, its parameters, and its observations beside the predictions.</summary>
    public static ReportBlock Of(FittedMembrane fit)
    {
        ArgumentNullException.ThrowIfNull(fit);
        var coefficient = fit.Membrane.UltrafiltrationCoefficient * (1 / fit.Patient.SurfaceFactor);
        var level = fit.Membrane.PlasmaLevel switch
        {
            PlasmaLevel.AsMeasured => "plasma as measured",
            PlasmaLevel.PlasmaWater => "plasma water",
            _ => "plasma water with Donnan's correction",
        };
        return OfFit(
            fit,
            Invariant($"The ultrafiltration coefficient LpS that goes with it is {Digits.Of(coefficient.MillilitersPerMinutePerMillimeterOfMercury)} mL/min/mmHg per 1.73 m²."),
            $"Three-pore model, {level}; maximum a posteriori. One test never tells lymphatic removal from the conductance, and of the ultrasmall pores sodium alone tells: what the data say little about is what people have, with its doubt.");
    }

    /// <summary>The same of one barrier.</summary>
    public static ReportBlock Of(FittedLumpedMembrane fit)
    {
        ArgumentNullException.ThrowIfNull(fit);
        return OfFit(
            fit,
            "One barrier without pores: a second opinion, and not what curves, regimens and searches rest on.",
            "Classical model, plasma as measured; maximum a posteriori. Its absorption is total, with capillary reabsorption in it, and one test never tells it from the conductance.");
    }

    private static ReportBlock OfFit(FittedModel fit, string after, string small) => new ReportBlock()
        .Sentence(fit.Summary)
        .Sentence(after)
        .Table(new(
            ["parameter", "unit", "#estimate\n90 % interval", "#population", "the data"],
            [.. fit.Parameters.Select(parameter => (IReadOnlyList<string>)
            [
                parameter.Name,
                parameter.Unit,
                $"{Digits.Of(parameter.Value)}\n{Digits.Of(parameter.Low)} to {Digits.Of(parameter.High)}",
                Digits.Of(parameter.PriorMedian),
                parameter.Verdict.Words(),
            ])]))
        .FindingList(fit.Findings)
        .Folded("Observed and fitted", new(
            ["what", "#time, min", "#observed", "#fitted", "#(obs. − fit.) / SD", "used"],
            [.. fit.Residuals.Select(residual => (IReadOnlyList<string>)
            [
                residual.Observation.Quantity.Name(),
                Digits.Fixed(residual.Observation.Time.TotalMinutes, 0),
                Digits.Of(residual.Observation.Value),
                Digits.Of(residual.Predicted),
                Digits.Fixed(residual.Standardized, 1),
                residual.Observation.IsFitted ? "yes" : "no, a check",
            ])]))
        .Small(small);

    /// <summary>The curves in numbers: how much, when, and when it is gone.</summary>
    public static ReportBlock Of(IReadOnlyList<DwellCurve> curves)
    {
        ArgumentNullException.ThrowIfNull(curves);
        return new ReportBlock()
            .Table(new(
                ["solution", "#UF at 4 h, mL\n90 % band", "#most UF, mL\nwithin 5 % of it", "#UF back\nat zero", "#Na at 4 h,\nmmol removed", "#glucose at 4 h,\ng absorbed"],
                [.. curves.Select(curve =>
                {
                    var four = Math.Max(0, curve.Minutes.IndexOf(240));
                    var net = curve.NetUltrafiltration;
                    return (IReadOnlyList<string>)
                    [
                        $"{curve.Solution.Name}\n{(curve.IsOfPopulation ? "population, not this patient" : curve.IsTested ? "the tested strength" : "not tested")}",
                        $"{Digits.Fixed(net.Median[four], 0)}\n{Digits.Fixed(net.Low[four], 0)} to {Digits.Fixed(net.High[four], 0)}",
                        $"{Digits.Fixed(curve.PeakUltrafiltration.Milliliters, 0)}\n{Digits.Hours(curve.PeakWindow.From)} to {Digits.Hours(curve.PeakWindow.To)}",
                        curve.ReturnToZero is { } zero ? Digits.Hours(zero) : "not reached\nby " + Digits.Hours(TimeSpan.FromMinutes(curve.Minutes[^1])),
                        Digits.Fixed(curve.SodiumRemoved.Median[four], 0),
                        curve.PolymerAbsorbed is { } polymer
                            ? $"{Digits.Fixed(curve.GlucoseAbsorbed.Median[four], 0)}\npolymer {Digits.Fixed(polymer.Median[four], 0)}"
                            : Digits.Fixed(curve.GlucoseAbsorbed.Median[four], 0),
                    ];
                })]))
            .Sentence(Caution.Of(curves.Select(curve => curve.Solution)))
            .Small("The peak is flat, and it is of ultrafiltration, not of sodium or clearance: it is no advice for a dwell time. " + Held(curves));
    }

    private static string Held(IReadOnlyList<DwellCurve> curves) => string.Join(" ", curves.GroupBy(curve => curve.NetUltrafiltration.Doubt).Select(group =>
        $"The band of ultrafiltration with {string.Join(", ", group.Select(curve => curve.Solution.Name))} holds doubt of {group.Key.Words()}."));

    /// <summary>A simulated day in numbers, each with what it rests on.</summary>
    public static ReportBlock Of(RegimenOutcome outcome)
    {
        ArgumentNullException.ThrowIfNull(outcome);
        var urea = outcome.UreaDose;
        var creatinine = outcome.CreatinineDose;
        var kidneys = outcome.Patient.ResidualFunction;
        return new ReportBlock()
            .Sentence(outcome.Regimen.Describe() + ".")
            .Table(new(
                ["in 24 h", "#value", "unit", "made of"],
                [
                    ["ultrafiltration", Digits.Fixed(outcome.Ultrafiltration.Milliliters, 0), "mL", Invariant($"night {Digits.Fixed(outcome.NightUltrafiltration.Milliliters, 0)}, day {Digits.Fixed(outcome.DayUltrafiltration.Milliliters, 0)}")],
                    .. kidneys.IsUrineStated ? new[] { (IReadOnlyList<string>)["fluid removed with urine", Digits.Fixed(outcome.FluidRemoval.Milliliters, 0), "mL", Invariant($"urine {Digits.Fixed(outcome.Urine.Milliliters, 0)}")] } : [],
                    ["weekly Kt/V urea" + OnlyPeritoneal(kidneys.IsUreaClearanceKnown), Digits.Fixed(urea.TotalKtOverV, 2), "", Parts(kidneys, kidneys.IsUreaClearanceKnown, Digits.Fixed(urea.PeritonealKtOverV, 2), Digits.Fixed(urea.RenalKtOverV, 2)) + $"; body water by {PageWords.Name(outcome.Patient.BodyWaterFormula)}; one collection scatters by 4 to 6 %"],
                    ["weekly creatinine clearance" + OnlyPeritoneal(kidneys.IsClearanceKnown), Digits.Fixed((kidneys.IsClearanceKnown ? creatinine.Total : creatinine.Peritoneal).LitersPerWeek, 0), "L per 1.73 m²", Parts(kidneys, kidneys.IsClearanceKnown, Digits.Fixed(creatinine.Peritoneal.LitersPerWeek, 0), Digits.Fixed(creatinine.Renal.LitersPerWeek, 0))],
                    ["sodium removed", Digits.Fixed(outcome.SodiumRemoved.Millimoles, 0), "mmol", Invariant($"centred on published series; the model alone says {Digits.Fixed(outcome.SodiumRemovedByModel.Millimoles, 0)}")],
                    ["glucose absorbed", Digits.Fixed(outcome.GlucoseAbsorbed.Grams, 0), "g", Invariant($"{Digits.Fixed(outcome.EnergyAbsorbedKilocalories, 0)} kcal")],
                    .. outcome.PolymerUsed.Grams > 0
                        ? new[] { (IReadOnlyList<string>)["glucose polymer absorbed", Digits.Fixed(outcome.PolymerAbsorbed.Grams, 0), "g", Invariant($"of {Digits.Fixed(outcome.PolymerUsed.Grams, 0)} g; apart from glucose")] }
                        : [],
                    ["fluid used", Digits.Fixed(outcome.FluidUsed.Liters, 1), "L", ""],
                    ["most in the cavity", Digits.Fixed(outcome.Peak.Volume.Milliliters, 0), "mL", ""],
                ]))
            .FindingList(outcome.Findings)
            .Small("The fitted membrane alone, without its doubt: a list of options shows the same regimen with its bands, and moved by how far the model misses published series, so its figures differ. Plasma is held at the level of the test, so clearances are those at that level. Ultrafiltration is a target, not a merit.");
    }

    // What the peritoneum clears is not what is cleared in all: where the kidneys' part is not known the figure has to say so itself.
    internal static string OnlyPeritoneal(bool isRenalKnown) => isRenalKnown ? "" : ", peritoneal only";

    internal static string Parts(ResidualFunction kidneys, bool isRenalKnown, string peritoneal, string renal) =>
        isRenalKnown ? $"peritoneal {peritoneal}, renal {renal}" : $"{kidneys.Missing} not stated: no total";

    /// <summary>The present regimen and the options, by what changes, with what each gives and costs.</summary>
    public static ReportBlock Of(RegimenFront front)
    {
        ArgumentNullException.ThrowIfNull(front);
        var rows = RowsOf(front);
        var kidneys = KidneysOf(front);
        var block = new ReportBlock()
            .Sentence(Invariant($"Asked for: {front.Goals.Fluid} of ultrafiltration in 24 h{Basis(front.Goals.Fluid)}{Clearance(front.Goals, kidneys)}, nights of at most {Digits.Hours(front.Goals.LongestNight)}, fills of at most {Fills(front.Goals)}."))
            .Sentence(Invariant($"{front.CandidateCount} regimens were looked at and {front.FeasibleCount} meet this; {front.Options.Length} of them are shown, the others differ too little or are matched in everything.{(front.Options.All(option => Caution.Of(option.Regimen).Length == 0) ? " None of these holds icodextrin." : "")}"));
        if (front.NothingMeets is { } unmet)
        {
            block.Sentence($"Nothing that was looked at meets every goal: {unmet.Goal}. {unmet.ByHowMuch} Shown is the nearest.");
        }

        // What is to be said of every option is said once.
        var shared = front.Options.Length > 1
            ? front.Options.Select(option => Cares(option).ToHashSet()).Aggregate((all, own) => [.. all.Intersect(own)])
            : [];
        block.Table(new(
            ["^", "^what changes", "single days in\nrange; mean", "#mean UF, mL\n90 % band", kidneys.IsUreaClearanceKnown ? "#weekly\nKt/V" : "#peritoneal\nKt/V only", "#Na removed,\nmmol", "#glucose\nabsorbed, g", "#fluid,\nL"],
            [.. rows.Select(row => (IReadOnlyList<string>)
            [
                row.Name,
                row.Option.Change is { } change && row.Name != PresentName ? change.Text : row.Option.Regimen.Describe(),
                Invariant($"{row.Option.ProbabilityOfDayInRange.InTen()}\n{row.Option.ProbabilityOfMeanInRange}"),
                Interval(row.Option.Ultrafiltration, value => value.Milliliters, 0),
                Interval(row.Option.UreaDose, value => value, 2),
                Interval(row.Option.SodiumRemoved, value => value.Millimoles, 0),
                Interval(row.Option.GlucoseAbsorbed, value => value.Grams, 0),
                Digits.Fixed(row.Option.Regimen.FluidInAll.Liters, 1),
            ])]));
        block.Heading("Each in full");
        foreach (var (name, option) in rows)
        {
            block.Named(name, option.Regimen.Describe() + ".", option.Why, Answers(option), Care(Cares(option).Where(care => name == PresentName || !shared.Contains(care))));
        }

        if (shared.Count > 0)
        {
            block.Named("All", "Read with care, of every option: " + string.Join(" ", shared));
        }

        block
            .FindingList(front.Findings)
            .Folded("Why the others are not here", new(
                ["reason", "#regimens"],
                [.. front.DroppedBecause.Select(pair => (IReadOnlyList<string>)[Words(pair.Key.ToString()), pair.Value.ToString(System.Globalization.CultureInfo.InvariantCulture)])]));
        return block.Small($"Single days hold doubt of {(front.Options.Select(option => option.ProbabilityOfDayInRange.Doubt).FirstOrDefault()).Words()}; below them the probability that the mean of many days is in the range, without the nights. Options, not orders, listed by absorbed glucose. UF is a target with a floor and a ceiling: more is not better. Kt/V is an estimate with 4 to 6 % noise{(kidneys.IsUreaClearanceKnown ? "" : $", and here the peritoneum's alone: {kidneys.Missing} was not stated")}. Sodium is centred on published series and its band is wide. Symptoms, clinical volume, pressure and nutrition are not assessed here.");

        static string Basis(FluidTarget fluid) => fluid.Basis.Length > 0 ? $" ({fluid.Basis})" : "";

        static string Clearance(RegimenGoals goals, ResidualFunction kidneys) =>
            (goals.Clearance is { } clearance ? Invariant($", weekly Kt/V about {Digits.Fixed(clearance.WeeklyUreaDose, 1)}{(kidneys.IsUreaClearanceKnown ? "" : $" (to which the peritoneum is held alone: {kidneys.Missing} not stated)")}") : "")
            + string.Concat(goals.Bounds.Select(bound => $"; {bound.Describe(kidneys)}"));

        static string Fills(RegimenGoals goals) =>
            (goals.LargestFill is { } own ? Invariant($"{Digits.Fixed(own.Milliliters, 0)} mL and ") : "") + Invariant($"{Digits.Fixed(goals.LargestFillPerSquareMeter, 0)} mL/m²");

        static IEnumerable<string> Cares(RegimenOption option) =>
            option.Findings.Where(finding => finding.Severity >= Severity.Warning).Select(finding => finding.Message);

        static string Care(IEnumerable<string> cares) => string.Join(" ", cares) is { Length: > 0 } words ? "Read with care: " + words : "";

        // Single days first: a probability of the mean reads like days, and is not.
        static string Answers(RegimenOption option) => string.Join(
            " ",
            [$"{option.SingleDay[..^1]}; the mean of many days with a probability of {Digits.Fixed(option.ProbabilityOfMeanInRange.Value, 2)}.", .. option.Answers.Select(answer => answer.Words)]);

        static string Interval<T>(Band<T> band, Func<T, double> read, int decimals)
            where T : struct =>
            $"{Digits.Fixed(read(band.Median), decimals)}\n{Digits.Fixed(read(band.Low), decimals)} to {Digits.Fixed(read(band.High), decimals)}";
    }

    internal const string PresentName = "now";

    /// <summary>The kidneys of the person of a search.</summary>
    internal static ResidualFunction KidneysOf(RegimenFront front) => RowsOf(front).Select(row => row.Option.Outcome.Patient.ResidualFunction).FirstOrDefault(ResidualFunction.NotStated);

    /// <summary>The present regimen first, then the options by letter, as tables and charts call them.</summary>
    internal static IReadOnlyList<(string Name, RegimenOption Option)> RowsOf(RegimenFront front) =>
    [
        .. front.Present is { } present ? new[] { (PresentName, present) } : [],
        .. front.Options.Select((option, i) => (((char)('A' + i)).ToString(), option)),
    ];

    private static string Count(int count, string noun) => Invariant($"{count} {noun}{(count == 1 ? "" : "s")}");

    // "UreaNitrogen" reads "urea nitrogen".
    private static string Words(string name) =>
        string.Concat(name.Select((c, i) => char.IsUpper(c) ? (i > 0 ? " " : "") + char.ToLowerInvariant(c) : c.ToString()));
}
