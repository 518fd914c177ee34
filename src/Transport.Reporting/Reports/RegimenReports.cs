using static System.FormattableString;

namespace Transport.Reporting;

/// <summary>Regimens, what they return, and what their nights' records would say, as tables with words.</summary>
public static class RegimenReports
{
    private const string Modest = "Options, not orders. Kt/V is an estimate with 4 to 6 % noise; sodium is centred on published series and its band is wide. Ultrafiltration at large fills is overstated. Symptoms, clinical volume, pressure, nutrition, potassium and phosphate levels are not assessed here; local protocol rules.";

    /// <summary>Every figure of a regimen with its band, its formula and its source, and how it stands to what guidelines ask.</summary>
    public static ReportBlock Of(RegimenOutlook outlook)
    {
        ArgumentNullException.ThrowIfNull(outlook);
        var kidneys = outlook.Outcome.Patient.ResidualFunction;
        var missing = outlook.Measures.Where(one => one.Value is null && one.Measure.IsKnownWith(kidneys)).Select(one => one.Measure).ToList();
        var block = new ReportBlock()
            .Sentence(outlook.Describe() + ".")
            .Sentence(AskedFor(outlook))
            .Sentence(outlook.SingleDay)
            .FindingList(outlook.Findings.Where(finding => finding.Severity >= Severity.Warning))
            .Table(new(
                ["", "#median\n90 % band", "unit", "formula"],
                [.. outlook.Measures.Where(one => one.Value is not null).Select(one => (IReadOnlyList<string>)[one.Measure.Name, Interval(one.Value!.Value, one.Measure), one.Measure.Unit, one.Measure.Formula])]));
        if (missing.Count > 0)
        {
            block.Sentence(NotGiven(missing) + " Protein catabolism comes from a measured collection only.");
        }

        return Targets(Plasma(block.Sentence(NoTotals(outlook)).Sentence(WeekWords([outlook])), outlook), outlook)
            .FindingList(outlook.Findings.Where(finding => finding.Severity < Severity.Warning))
            .Folded("Where each figure is from", new(["figure", "source"], [.. outlook.Measures.Select(one => (IReadOnlyList<string>)[one.Measure.Name, one.Measure.Source])]))
            .Small(Held(outlook.Options.Layers) + OfIcodextrin([outlook]) + Water(outlook.Options, outlook.Outcome.Patient) + Modest);
    }

    /// <summary>Regimens beside the present one: first what would differ, then what each returns.</summary>
    public static ReportBlock Of(RegimenComparison comparison)
    {
        ArgumentNullException.ThrowIfNull(comparison);
        var (present, others) = (comparison.Present, comparison.Rows.Skip(1).ToList());
        if (others.Count == 0)
        {
            return Of(present);
        }

        var shown = OutcomeMeasures.All.Where(measure => comparison.Rows.Any(row => row[measure].Value is not null)).ToList();
        var block = new ReportBlock().Sentence(AskedFor(present)).Sentence($"Now: {present.Describe()}. {present.SingleDay}".TrimEnd());
        foreach (var row in others)
        {
            block.Sentence($"{PageWords.Capital(row.Name)}: {row.Describe()}. From now: {row.Change!.Text}. {row.SingleDay}".TrimEnd());
        }

        // What could do harm stands before the figures, what is good to know behind them.
        List<Finding> findings = [.. Together(comparison.Rows.Select(row => (row == present ? "now" : row.Name, row.Findings.AsEnumerable())))];
        block.Sentence(WeekWords(comparison.Rows))
            .FindingList(findings.Where(finding => finding.Severity >= Severity.Warning))
            .Sentence(NoTotals(present));
        foreach (var (some, title) in InBlocks(others, MostDifferences, "What would differ from now: median and 90 % band of the difference"))
        {
            block.Table(new(
                ["", "unit", "#now", .. some.Select(row => $"#{row.Name}\ndifference")],
                [
                    .. shown.Select(measure => (IReadOnlyList<string>)
                    [
                        measure.Name,
                        measure.Unit,
                        present[measure].Value is { } now ? Number(now.Median, measure) : "not given",
                        .. some.Select(row => row[measure].Difference is { } difference ? Signed(difference, measure) : "not given"),
                    ]),
                ])
            { Title = title });
        }

        foreach (var (some, title) in InBlocks(comparison.Rows, MostLevels, "What each returns: median and 90 % band"))
        {
            block.Table(new(
                ["", "unit", .. some.Select(row => $"#{row.Name}")],
                [
                    .. shown.Select(measure => (IReadOnlyList<string>)
                    [
                        measure.Name, measure.Unit, .. some.Select(row => row[measure].Value is { } value ? Interval(value, measure) : "not given"),
                    ]),
                ])
            { Title = title });
        }

        var kidneys = comparison.Patient.ResidualFunction;
        block.Sentence(NotGiven([.. OutcomeMeasures.All.Where(measure => measure.IsKnownWith(kidneys) && comparison.Rows.Any(row => row[measure].Value is null))]));
        return Targets(Plasma(block, [.. comparison.Rows]), [.. comparison.Rows])
            .FindingList(findings.Where(finding => finding.Severity < Severity.Warning))
            .Small("Differences are taken member by member over the same membranes, so that common doubt cancels. " + Held(comparison.Options.Layers) + OfIcodextrin(comparison.Rows) + Water(comparison.Options, comparison.Patient) + Modest);
    }

    /// <summary>What a collection measured beside what the regimen was simulated to give.</summary>
    public static ReportBlock Of(CollectionComparison comparison)
    {
        ArgumentNullException.ThrowIfNull(comparison);
        var day = comparison.Collection.Collection;
        return new ReportBlock()
            .Heading($"Measured beside simulated: a collection of {PageWords.Date(day.Date)}, the regimen '{comparison.Outlook.Name}'")
            .Table(new(
                ["", "unit", "#measured\n± SD", "#simulated\n90 % band", "#difference", "#error of the\nmeasurement"],
                [
                    .. comparison.Figures.Select(figure => (IReadOnlyList<string>)
                    [
                        figure.Measure.Name,
                        figure.Measure.Unit,
                        $"{Number(figure.Measured.Value, figure.Measure)}\n± {Number(figure.Measured.StandardDeviation ?? 0, figure.Measure)}",
                        Interval(figure.Simulated, figure.Measure),
                        Signed(new(figure.Difference, figure.Difference, figure.Difference, figure.Simulated.Coverage, figure.Simulated.Doubt), figure.Measure),
                        Number(figure.Error, figure.Measure),
                    ]),
                ]))
            .Sentence(comparison.Figures.IsEmpty ? "The collection and the simulation have no figure in common." : comparison.Findings.Count == 0 ? "No gap is more than the error of the measurement." : "")
            .FindingList(comparison.Findings.Concat(comparison.Collection.Findings.Where(finding => finding.Severity >= Severity.Warning && PageFinding.IsOfQuality(finding))))
            .Small("Error of the measurement: two standard deviations of one collection, from assays and volumes; Kt/V, clearance and ultrafiltration with how days differ (4.0 to 6.0 %, read; nights, memory), of sodium and glucose that is not known. "
                + (comparison.IsOverItsBlood ? $"Simulated clearances are over a blood of {day.PlasmaClock:HH:mm}, as the collection's are. " : "A collection's clearance depends on when its blood was drawn; here simulated ones are over the mean. ")
                + "A gap is compatible with a bag that is missing or counted twice, with another regimen than the one prescribed, and with a membrane or kidneys that changed since the test.");
    }

    /// <summary>One thing turned, and what the regimen would return.</summary>
    public static ReportBlock Of(WhatIf whatIf)
    {
        ArgumentNullException.ThrowIfNull(whatIf);
        OutcomeMeasure[] usual = [OutcomeMeasures.Ultrafiltration, OutcomeMeasures.SodiumRemoved, OutcomeMeasures.KtOverV, OutcomeMeasures.CreatinineClearance, OutcomeMeasures.GlucoseAbsorbed, OutcomeMeasures.LargestVolume];
        List<OutcomeMeasure> shown = [.. usual.Select(measure => RegimenCharts.OrPeritoneal(measure, whatIf.Present))];
        return new ReportBlock()
            .Sentence($"All else as now: {whatIf.Present.Regimen.Describe()}.")
            .Table(new(
                [$"#{whatIf.Knob}", .. shown.Select(measure => $"#{measure.Name}\n{measure.Unit}".TrimEnd())],
                [
                    .. whatIf.Points.Select(point => (IReadOnlyList<string>)
                    [
                        Invariant($"{point.Value:0.##}"),
                        .. shown.Select(measure => point.Outlook is null ? "not possible" : point.Outlook[measure].Value is { } value ? Interval(value, measure) : "not given"),
                    ]),
                ])
            { Title = "Median and 90 % band" })
            .FindingList(Together(
            [
                ("now", whatIf.Present.Findings.Where(finding => finding.Severity >= Severity.Warning)),
                .. whatIf.Points.Where(point => point.Outlook is null).Select(point => (Invariant($"{whatIf.Knob.Name} {point.Value:0.##} {whatIf.Knob.Unit}").TrimEnd(), point.Findings.AsEnumerable())),
            ]))
            .Small("A model's answer, not advice. " + Modest);
    }

    /// <summary>What the record of a night says, cycle by cycle, and its sums.</summary>
    public static ReportBlock Of(NightAccount account)
    {
        ArgumentNullException.ThrowIfNull(account);
        return new ReportBlock()
            .Table(new(
                ["cycle", "#filled, mL", "#drained, mL", "#UF as written, mL", "#carry-over, mL", "#dwell, min", "#planned, min", "#drain, min"],
                [
                    .. account.Cycles.Select((cycle, i) => (IReadOnlyList<string>)
                    [
                        Invariant($"{i + 1}"), Milliliters(cycle.Filled), Milliliters(cycle.Drained), Milliliters(cycle.Ultrafiltration), Milliliters(cycle.CarryOver),
                        Minutes(cycle.DwellTime), Minutes(cycle.PlannedDwellTime), Minutes(cycle.DrainTime),
                    ]),
                ]))
            .Table(new(
                ["fluid", "#mL"],
                [
                    ["ultrafiltration, night and day", Milliliters(account.Ultrafiltration)],
                    ["of it by day", Milliliters(account.DayUltrafiltration)],
                    ["of it at night", Milliliters(account.NightUltrafiltration)],
                    ["drained before the first fill", Milliliters(account.InitialDrain)],
                ]))
            .Table(new(
                ["time", "#min"],
                [
                    ["all drains", Minutes(account.DrainTime)],
                    ["dwell added to the plan", Minutes(account.AddedDwellTime)],
                    ["dwell lost against the plan", Minutes(account.LostDwellTime)],
                    ["dwell of a cycle on average", Minutes(account.AverageDwellTime)],
                ]))
            .Small("A cycle's ultrafiltration is drained minus filled and holds what was carried over; over a night that cancels. After a dry day the drain before the first fill is near zero, which is no incomplete drain.");

        static string Milliliters(Volume? volume) => volume is { } known ? Digits.Fixed(known.Milliliters, 0) : "not known";

        static string Minutes(TimeSpan? time) => time is { } known ? Digits.Fixed(known.TotalMinutes, 1) : "not known";
    }

    /// <summary>The regimens of a file, and what was found in it.</summary>
    public static ReportBlock Of(RegimenFile file)
    {
        ArgumentNullException.ThrowIfNull(file);
        var block = new ReportBlock();
        foreach (var named in file.Regimens)
        {
            block.Sentence((named.Name.Length > 0 ? named.Name + ": " : "") + named.Regimen.Describe() + ".");
        }

        if (file.Week is { } week)
        {
            block.Sentence(week.Describe() + ".");
        }

        return block.FindingList(file.Findings);
    }

    /// <summary>A week in its steady rhythm: its sums, its days, and plasma on each of them.</summary>
    public static ReportBlock Of(WeekOutcome week)
    {
        ArgumentNullException.ThrowIfNull(week);
        var (urea, creatinine) = (week.UreaDose, week.CreatinineDose);
        var kidneys = week.Days.OfType<RegimenOutcome>().First().Patient.ResidualFunction;
        var time = week.Week.NightStart;
        var levels = week.Plasma is { } plasma && plasma.Has(Solutes.Urea) ? plasma : null;
        return new ReportBlock()
            .Sentence(week.Week.Describe() + ".")
            .Table(new(
                [week.Week.Weeks == 1 ? "in the week" : "in a week, on average", "#value", "unit", "made of"],
                [
                    ["ultrafiltration", Digits.Fixed(week.Ultrafiltration.Milliliters, 0), "mL", $"{Digits.Fixed(week.Ultrafiltration.Milliliters / 7, 0)} a day"],
                    ["Kt/V urea" + Reports.OnlyPeritoneal(kidneys.IsUreaClearanceKnown), Digits.Fixed(urea.TotalKtOverV, 2), "", $"{Reports.Parts(kidneys, kidneys.IsUreaClearanceKnown, Digits.Fixed(urea.PeritonealKtOverV, 2), Digits.Fixed(urea.RenalKtOverV, 2))}; over the mean level of the week; body water by {PageWords.Name(week.Patient.BodyWaterFormula)}; one collection scatters by 4 to 6 %"],
                    ["creatinine clearance" + Reports.OnlyPeritoneal(kidneys.IsClearanceKnown), Digits.Fixed((kidneys.IsClearanceKnown ? creatinine.Total : creatinine.Peritoneal).LitersPerWeek, 0), "L per 1.73 m²", Reports.Parts(kidneys, kidneys.IsClearanceKnown, Digits.Fixed(creatinine.Peritoneal.LitersPerWeek, 0), Digits.Fixed(creatinine.Renal.LitersPerWeek, 0))],
                    ["glucose absorbed", Digits.Fixed(week.GlucoseAbsorbed.Grams, 0), "g", $"{Digits.Fixed(week.GlucoseAbsorbed.Grams / 7, 0)} a day"],
                    ["fluid used", Digits.Fixed(week.FluidUsed.Liters, 1), "L", ""],
                ]))
            .Table(new(
                ["day", "what is done", "#ultrafiltration\nmL", "#fullest\nmL", .. levels is null ? [] : new[] { Invariant($"#plasma urea at {time:HH:mm}\nmmol/L") }],
                [
                    .. week.Days.Select((day, i) => (IReadOnlyList<string>)
                    [
                        Invariant($"{i + 1}"),
                        day?.Regimen.Describe() ?? "no treatment",
                        Digits.Fixed((day?.Ultrafiltration ?? week.EveningDrains[i]).Milliliters, 0),
                        day is null ? "" : Digits.Fixed(day.Peak.Volume.Milliliters, 0),
                        .. levels is null ? [] : new[] { Digits.Fixed(levels.LevelAt(Solutes.Urea, time, i).MillimolesPerLiter, 1) },
                    ]),
                ]))
            .FindingList(Together(week.Days.Select((day, i) => (Invariant($"day {i + 1}"), day is null ? [] : day.Findings.AsEnumerable()))))
            .Small("One membrane, without its doubt. A day begins with its night. " + Modest);
    }

    // What is found in several is said once, with where.
    private static IEnumerable<Finding> Together(IEnumerable<(string Name, IEnumerable<Finding> Findings)> found)
    {
        var of = found.ToList();
        return of.SelectMany(one => one.Findings.Distinct().Select(finding => (one.Name, Finding: finding)))
            .GroupBy(one => one.Finding, one => one.Name)
            .Select(group => group.Key with
            {
                Field = string.Join(", ", new[] { group.Key.Field }.OfType<string>().Concat(group.Count() == of.Count && of.Count > 1 ? ["all"] : group)),
            });
    }

    // Where the kidneys' part is not known a total would be the peritoneum's alone under another name.
    private static string NoTotals(RegimenOutlook outlook) => outlook.Outcome.Patient.ResidualFunction switch
    {
        { IsClearanceKnown: true } => "",
        { IsUreaClearanceKnown: true } => "Renal creatinine clearance was not stated: creatinine clearance is the peritoneum's alone, and no total is given.",
        var kidneys => $"{PageWords.Capital(kidneys.Missing)} was not stated: Kt/V and creatinine clearance are the peritoneum's alone, and no total is given.",
    };

    // What is asked for stands where the figures begin, with what it rests on.
    private static string AskedFor(RegimenOutlook outlook) => outlook.Options.Fluid is not { } range ? "" : Invariant(
        $"Asked for: {range} of ultrafiltration in 24 h{(range.Basis.Length > 0 ? $" ({range.Basis})" : outlook.Outcome.Patient.ResidualFunction.IsUrineStated ? "" : " (urine not stated, taken as 0)")}.");

    // Of several regimens the levels; of one regimen the levels too; what a sample makes of a dose is told of the present one.
    private static ReportBlock Plasma(ReportBlock block, params IReadOnlyList<RegimenOutlook> rows)
    {
        var present = rows[0];
        if (present.Plasma.IsEmpty)
        {
            return NotMeasured(block, present.Options);
        }

        foreach (var (some, title) in InBlocks(rows, MostLevels, rows.Count > 1 ? "Blood drawn at a clock time: median and 90 % band" : "Blood drawn at a clock time"))
        {
            var isFirst = some[0] == present;
            block.Table(new(
                ["plasma level", "unit", .. some.Select(row => rows.Count > 1 ? $"#{row.Name}" : "#median\n90 % band"), .. isFirst ? ["#now, Kt/V by\nsuch a sample"] : Array.Empty<string>()],
                [
                    .. present.Plasma.Select((level, i) => (IReadOnlyList<string>)
                    [
                        level.Time is { } time ? Invariant($"{level.Solute.Name}, {time:HH:mm}") : $"{level.Solute.Name}, mean",
                        IsSmall(level.Solute) ? "µmol/L" : "mmol/L",
                        .. some.Select(row => Level(row.Plasma[i])),
                        .. isFirst ? [level.Time is null ? "" : Percent(level.DoseRatio.Median - 1)] : Array.Empty<string>(),
                    ]),
                ])
            { Title = title });
        }

        return NotMeasured(
            block.Small($"The present regimen has the level of the sheet as its mean; others have the same generation, weeks on. {SampleTime(rows)} No other level is predicted."),
            present.Options);
    }

    // By the levels themselves: after a night of cycles and a quiet day plasma is lowest in the morning, after a day of exchanges and a dry night in the evening, and through day and night it hardly moves.
    private static string SampleTime(IReadOnlyList<RegimenOutlook> rows) => string.Join(" ", rows.GroupBy(Swing).OrderByDescending(group => Math.Abs(group.Key)).Select(group =>
    {
        var names = group.Count() == rows.Count ? "" : $" ({string.Join(", ", group.Select(row => row.Name))})";
        return group.Key switch
        {
            0 => $"Plasma swings little over the day{names}, and the time of the sample moves a collected Kt/V little.",
            > 0 => $"Plasma swings over the day{names}: a sample of the morning makes a collected Kt/V too large, one of the evening too small.",
            _ => $"Plasma swings over the day{names}: a sample of the morning makes a collected Kt/V too small, one of the evening too large.",
        };
    }));

    // Whether a sample of the first clock time makes a dose too large (1), too small (−1), or neither by as much as the swing that counts.
    private static int Swing(RegimenOutlook row)
    {
        var ratios = row.Plasma.Where(level => level.Time is not null && level.Solute == row.Plasma[0].Solute).OrderBy(level => level.Time).Select(level => level.DoseRatio.Median).ToList();
        return ratios.Count == 0 || ratios.Max() - ratios.Min() < SwingThatCounts ? 0 : Math.Sign(ratios[0] - ratios[^1]);
    }

    // A level that nobody measured is no patient's level: none is shown, on whatever regimen.
    private static ReportBlock NotMeasured(ReportBlock block, OutlookOptions options) => options.NotMeasured.Count == 0 ? block
        : block.Sentence($"Plasma {string.Join(" and ", options.NotMeasured.Select(solute => solute.Name))}: not measured, so no level of it is given. Clearances do not depend on it.");

    private static bool IsSmall(Solute solute) => solute == Solutes.Creatinine;

    private static string Level(PlasmaOutlook level)
    {
        var (factor, decimals) = IsSmall(level.Solute) ? (1000, 0) : (1, 1);
        string Of(double value) => Digits.Fixed(factor * value, decimals);
        var band = level.MillimolesPerLiter;
        return Of(band.Low) == Of(band.High) ? Of(band.Median) : $"{Of(band.Median)}\n{Of(band.Low)} to {Of(band.High)}";
    }

    private static string Percent(double share) => (share >= 0.0005 ? "+" : "") + Digits.Fixed(100 * share, 1) + " %";

    private static string WeekWords(IEnumerable<RegimenOutlook> rows) => rows.All(row => row.Week is null) ? ""
        : "Of a week, amounts are means per day, days without treatment included; clearances are those of the week's own rhythm, over the mean plasma level of the week.";

    // Of one regimen in full; of several the number and how often.
    private static ReportBlock Targets(ReportBlock block, params IReadOnlyList<RegimenOutlook> rows)
    {
        const string floors = "All of these are floors: none says when a day removes too much fluid. Care is directed at shared goals and not at one number: symptoms, volume and nutrition are not assessed here. One measured day scatters by 4 to 6 %.";
        var assessed = rows.Select(row => GuidelineTargets.Of(row)).ToList();
        List<string> reasons = [.. assessed.SelectMany(all => all).Select(one => one.Reason).Where(reason => reason.Length > 0).Distinct()];
        block.Heading("Beside what guidelines and series ask");

        // One reason for all of them is no table of the same words.
        if (reasons.Count == 1 && assessed.TrueForAll(all => all.All(one => one.Assessment == Assessment.NotAssessable)))
        {
            return block.Sentence($"Not assessable: {reasons[0]}. This holds of {string.Join("; ", GuidelineTargets.All)}.")
                .Sentence("Care is directed at shared goals and not at one number: symptoms, volume and nutrition are not assessed here.");
        }

        foreach (var (some, title) in InBlocks(assessed, MostDifferences, ""))
        {
            block.Table(new(
                ["at least", "strength", .. some.Select(all => rows.Count > 1 ? rows[assessed.IndexOf(all)].Name : "this regimen")],
                [
                    .. GuidelineTargets.All.Select((target, i) => (IReadOnlyList<string>)
                    [
                        Invariant($"{target} ({target.Evidence.ToString().ToLowerInvariant()})"),
                        target.Strength,
                        .. some.Select(all => rows.Count > 1 ? Brief(all[i], reasons) : all[i].Text),
                    ]),
                ])
            { Title = title });
        }

        return (rows.Count == 1 ? block : block
                .Sentence("The figure is the median. Below it: on how many single measured days it comes up to what is asked for, then how probable it is that the mean of many days does.")
                .Sentence(reasons.Count == 0 ? "" : $"Not assessable: {string.Join("; ", reasons.Select((reason, i) => $"{Mark(i)} {reason}"))}."))
            .Sentence(floors);
    }

    // The value first, then a single day in frequencies: a tick would be read as the answer, and the probability of a mean as days.
    private static string Brief(TargetAssessment one, List<string> reasons) => one.Assessment == Assessment.NotAssessable ? $"not assessable {Mark(reasons.IndexOf(one.Reason))}"
        : Digits.Fixed(one.Value!.Value.Median, one.Target.Measure.Decimals) + (one.IsWithinNoise ? ", within the noise" : "")
            + "\n" + (one.ProbabilityOfSingleDay is { } day ? "on " + day.InTen("day") + "; " : "") + $"mean: probability {one.ProbabilityOfMeeting!.Value}";

    private static string Mark(int footnote) => $"({(char)('a' + footnote)})";

    // Measures that are not given, those with one reason together.
    private static string NotGiven(List<OutcomeMeasure> missing) => missing.Count == 0 ? ""
        : $"Not given: {string.Join("; ", missing.GroupBy(measure => measure.Reason).Select(group => $"{string.Join(", ", group.Select(measure => measure.Name))} ({group.Key})"))}.";

    // As many columns of figures as fit on paper beside names and units (A4, and a window of 900 px): the rest in tables of their own, alike in width.
    private const int MostDifferences = 3;
    private const int MostLevels = 4;

    // Of a dose, from the first clock time of a sample to the last (choice: half of what a night of cycles makes).
    private const double SwingThatCounts = 0.04;

    private static IEnumerable<(IReadOnlyList<T> Some, string Title)> InBlocks<T>(IReadOnlyList<T> all, int most, string title)
    {
        var blocks = (all.Count + most - 1) / most;
        return all.Chunk((all.Count + blocks - 1) / blocks)
            .Select((some, i) => ((IReadOnlyList<T>)some, i == 0 || title.Length == 0 ? title : $"{title}, continued"));
    }

    // The series that sodium is centred on are of short cycles of glucose (reference: SodiumCalibration).
    private static string OfIcodextrin(IEnumerable<RegimenOutlook> rows) => rows.Any(row => Caution.Of(row).Length > 0)
        ? "The factor that centres sodium comes from short cycles of glucose; for icodextrin none is known, the same is applied, and its sodium may be more. " : "";

    private static string Water(OutlookOptions options, Patient patient) => $"Body water in Kt/V is by {PageWords.Name(options.BodyWater ?? patient.BodyWaterFormula)}. ";

    private static string Held(DoubtLayers layers) =>
        $"Bands of ultrafiltration hold doubt of {layers.Holds.Words()}; sodium's that of parameters and model form; the others that of parameters. ";

    private static string Interval(Band<double> band, OutcomeMeasure measure) => band.Low == band.High
        ? Number(band.Median, measure)
        : $"{Number(band.Median, measure)}\n{Number(band.Low, measure)} to {Number(band.High, measure)}";

    private static string Signed(Band<double> band, OutcomeMeasure measure)
    {
        string Plus(double value) => (Math.Round(value, measure.Decimals) > 0 ? "+" : "") + Number(value, measure);
        return band.Low == band.High ? Plus(band.Median) : $"{Plus(band.Median)}\n{Plus(band.Low)} to {Plus(band.High)}";
    }

    // A count of a day is whole, its mean over a week need not be.
    private static string Number(double value, OutcomeMeasure measure) =>
        Digits.Fixed(value, measure.Unit == "per day" && Math.Abs(value - Math.Round(value)) > 1e-9 ? 1 : measure.Decimals);
}
