using System.Globalization;
using MathNet.Numerics.Statistics;
using static System.FormattableString;

namespace Transport.Analysis;

/// <summary>What a nurse may want to act on. Wording is tentative, thresholds are data, and local protocol rules.</summary>
internal static class NurseFindings
{
    internal const int Month = 28;

    private const int FewestForHabit = 14;
    internal const int TwoWeeks = 14;
    internal const int FewestOfTwoWeeks = 7;

    private const int MostOfNumbers = 3;
    private const int FewestUntreated = 3;

    // So much a day, of so many days, is no chance (choices).
    private const int FewDays = 4;
    private const double LeastTakenUp = 300;

    // Beyond what is expected, share of a fill: more than any night's scatter (choice).
    private const double MostOfFill = 0.75;

    // Share by which somebody may have grown or thinned since the test (choice).
    private const double MostOffTest = 0.25;

    // Less than this a night is not worth a word, however sure (choice).
    private const double LeastOffTest = 250;

    // Blood-glucose meters err for so many days after the last icodextrin.
    private const int MetersErrFor = 14;

    /// <summary>What may be an emergency of now, the most urgent first.</summary>
    public static IReadOnlyList<string> Urgent { get; } =
    [
        "record-emergency-now", "record-sepsis-now", "record-cloudy-now", "record-pain-or-fever-now", "record-overfill-now", "record-symptoms-now", "record-potassium-now", "record-pressure-emergency", "record-pulse-now", "record-exit-site-now", "record-glucose-low", "record-glucose-very-high", "record-pressure-low", "record-pressure-high",
        "record-date-doubtful-now",
    ];

    /// <summary>What may have been one, or may hide one: no page leaves it out for want of room.</summary>
    public static IReadOnlyList<string> NeverCut { get; } =
    [
        "record-row-lost", "record-date-doubtful", "record-text-unread", "record-cloudy-past", "record-peritonitis-of-past", "record-complaint-of-past", "record-pain-or-fever-past", "record-exit-site-past", "record-danger-past", "record-overfill-risk", "record-urine-fall", "record-urine-once", "record-fill-large-for-child", "record-weight-step", "record-pressure-step", "record-removal-low", "record-untreated", "record-numbers-doubtful", "record-weight-off-test", "record-uf-far-above",
    ];

    /// <summary>Every code of a review, the most urgent first.</summary>
    public static IReadOnlyList<string> Codes { get; } =
    [
        .. Urgent, .. NeverCut, "record-drain-below-fill",
        "record-change-found", "record-level-off-test", "record-weight-against-uf", "record-weight-off-target", "record-pressure-trend", "record-lost-dwell", "record-strongest-rising", "record-strongest-often", "record-glucose-high",
        "record-nights-missing", "record-uf-counts-otherwise", "record-weighed-otherwise", "record-peritonitis-weeks", "record-icodextrin-meter", "record-target-old", "record-few-nights",
        "record-no-expectation",
    ];

    /// <summary>Place in the order of urgency.</summary>
    public static int Urgency(Finding finding) => Codes.TakeWhile(code => code != finding.Code).Count();

    public static List<Finding> Of(
        Patient patient, IReadOnlyList<NightRecord> nights, ReviewedNight[] reviewed, NightResponse?[] responses, IReadOnlyList<ChangeFound> changes, ReviewLimits limits, double slow,
        RecordBook book)
    {
        List<Finding> findings = [];
        if (nights.Count == 0)
        {
            return findings;
        }

        var today = nights[^1].Date.DayNumber;
        var written = nights.Count(night => night.Date.DayNumber > today - Month && !night.IsSkipped);
        DrainFindings.Add(nights, reviewed, responses, limits, today, findings);
        FillsOfChild(patient, nights, responses, today, findings);
        LostDwell(nights, responses, limits, today, findings);
        NumbersInDoubt(nights, book.RowsInDoubt, book.Findings, limits, today, findings);
        WeightOffTest(patient, reviewed, findings);
        Strongest(nights, written, limits, today, findings);
        Removal(patient, reviewed, limits, today, findings);
        Pulse(patient, nights, limits, today, findings);
        UrineOnce(nights, limits, today, findings);
        var steps = StepFindings.Add(patient, reviewed, limits, today, findings);
        LevelOffTest(reviewed, changes, findings);
        Trends(patient, nights, reviewed, limits, Lately(changes, today) ?? slow, steps, findings);
        foreach (var change in changes)
        {
            findings.Add(new(Severity.Warning, "record-change-found", ChangeWords.Sentence(change)));
        }

        HighGlucose(nights, limits, today, findings);
        Untreated(nights, book.RowsInDoubt, today, findings);
        FarAbove(reviewed, responses, limits, today, findings);
        var span = Math.Min(Month, today - nights[0].Date.DayNumber + 1);
        var doubtful = book.RowsInDoubt.Where(row => row.Date.DayNumber > today - Month).Select(row => row.Row).Except(nights.Select(night => night.Row)).Count();
        if (span >= 14 && written + doubtful < 0.8 * span)
        {
            Warn(findings, "record-nights-missing", $"{written} of the last {span} nights are written as treated. Not written, or not treated? The book cannot tell; ask.");
        }

        if (UsesIcodextrin(nights))
        {
            var lastOf = LastOfIcodextrin(nights)!.Value;
            var use = today - lastOf.DayNumber < limits.NowDays.Value ? "Icodextrin is in use" : Invariant($"Icodextrin was in use until {lastOf:yyyy-MM-dd}");
            Warn(findings, "record-icodextrin-meter", $"{use}: some blood-glucose meters read falsely high during its use and for about two weeks after, and hide a low one, on which insulin has been given. Ask the laboratory which meters are meant before any value is acted on.");
        }

        if (reviewed.Count(night => night.Readings.Count > 0 && night.LeftOut.Length == 0) is var charted && charted < limits.LearningNights.Value)
        {
            Note(findings, "record-few-nights", $"{charted} nights could be charted; until {limits.LearningNights.Value} no lasting change is reported.");
        }

        if (reviewed.Any(night => night.Record.Regimen is null))
        {
            Note(findings, "record-no-expectation", $"On {reviewed.Count(night => night.Record.Regimen is null)} nights the book does not say all of what was run (night fluid, volume per cycle, cycles, night length); nothing is expected of them.");
        }

        return findings;
    }

    /// <summary>Whether a night, day or exchange had it so lately that meters erred in the four weeks that a page shows: they do for two weeks after the last.</summary>
    public static bool UsesIcodextrin(IReadOnlyList<NightRecord> nights) =>
        LastOfIcodextrin(nights) is { } last && nights[^1].Date.DayNumber - last.DayNumber < Month + MetersErrFor;

    private static DateOnly? LastOfIcodextrin(IReadOnlyList<NightRecord> nights) => nights.LastOrDefault(night => night.DayFluid?.Solution.Polymer is not null
        || night.NightFluid?.Solution.Polymer is not null || night.Regimen?.Polymer is not null || night.Exchanges.Any(exchange => exchange.Fluid?.Solution.Polymer is not null))?.Date;

    // Often high, or once so high that a single day matters, of which the days of now have a finding of their own.
    private static void HighGlucose(IReadOnlyList<NightRecord> nights, ReviewLimits limits, int today, List<Finding> findings)
    {
        var measured = nights.Where(night => night.BloodGlucose is not null && night.Date.DayNumber > today - Month).ToList();
        // A local protocol may set the very high below the high: what is very high is high.
        var limit = Math.Min(limits.HighGlucose.Value, limits.VeryHighGlucose.Value);
        var high = measured.Where(night => Of(night) > limit).ToList();
        if (high.Count >= limits.RepeatedNights.Value || high.Any(night => Of(night) > limits.VeryHighGlucose.Value && today - night.Date.DayNumber > limits.NowDays.Value))
        {
            var highest = high.MaxBy(Of)!;
            Warn(findings, "record-glucose-high", $"Blood glucose was above {limit:0.#} mmol/L on {high.Count} of {measured.Count} {(measured.Count == 1 ? "day" : "days")} measured in four weeks, the highest {Of(highest):0.0} mmol/L on {Day(highest)}: it holds water back in the body, so less ultrafiltration is expected on such nights.{(Of(highest) > limits.VeryHighGlucose.Value ? $" If the highest was not reported, ask the unit now." : "")}");
        }

        static double Of(NightRecord night) => night.BloodGlucose!.Value.MillimolesPerLiter;
    }

    // Fluid that is not taken off builds up, however steadily: no chart of changes shows it. The line is one of adults without urine.
    private static void Removal(Patient patient, ReviewedNight[] reviewed, ReviewLimits limits, int today, List<Finding> findings)
    {
        var days = reviewed.Where(night => night.Record.Date.DayNumber > today - TwoWeeks).Select(WholeDay).OfType<double>().ToList();
        var lately = reviewed.Where(night => night.Record.Date.DayNumber > today - FewDays).Select(WholeDay).OfType<double>().ToList();
        var least = LeastTakenUp * ReviewLimits.BodyShare(patient);
        if (lately.Count >= FewDays - 1 && lately.Average() is var few && few < -least && few < days.Average() - least)
        {
            Warn(findings, "record-removal-low", $"Night and day together brought back less than went in, about {-few:0} mL a day in the last {FewDays} days, {-lately.Sum():0} mL in all: fluid is staying inside or is taken up. Look at the drains, swelling, breath, weight and pressure, and ask the unit today.");
            return;
        }

        if (TargetAssessment.IsChild(patient) || days.Count < FewestOfTwoWeeks || days.Average() is var mean && mean >= limits.LowUltrafiltration.Value)
        {
            return;
        }

        // A slow rise that is no finding by itself is one beside it.
        var rise = Trend.Of(reviewed.Where(night => night.EmptyWeight is not null).Select(night => (night.Record.Date.DayNumber, night.EmptyWeight!.Value.Kilograms)), Month) is { } weight
            && weight.SlopePerDay > limits.SlopeErrors.Value * weight.Error
            ? Invariant($" Empty weight rises by {Month * weight.SlopePerDay:0.0} kg in four weeks beside it: together compatible with fluid that builds up.") : "";
        var urine = reviewed.Where(night => night.Record.Date.DayNumber > today - Month && night.Record.Urine is not null).Select(night => night.Record.Urine!.Value.Milliliters).ToList();
        if (mean < 0)
        {
            Warn(findings, "record-removal-low", $"Night and day together brought back less than went in, about {-mean:0} mL a day in the last two weeks ({days.Count} days with enough written down): the body takes up fluid.{rise} Look at swelling, breath, weight and pressure, at the drains, and at what is drunk.");
            return;
        }

        var told = Invariant($"Night and day together came to about {mean:0} mL a day in the last two weeks ({days.Count} days with enough written down)");
        if (urine.Count == 0)
        {
            Note(findings, "record-removal-low", $"{told}, and the book has no urine of these four weeks: whether fluid builds up it cannot tell.{rise} Urine of a day, written down now and then, would show it.");
        }
        else if (urine.Average() < limits.NoUrine.Value)
        {
            Warn(findings, "record-removal-low", $"{told}, with {urine.Average():0} mL a day of urine written. Below {limits.LowUltrafiltration.Value:0} mL a day is low for an adult without urine; {(rise.Length == 0 ? "with little drink it may be as it should." : "with little drink it might be as it should, were it not for the weight.")}{rise} Look at swelling, breath, weight and pressure, and at what is drunk.");
        }
    }

    // The charts begin where the person is: what was off the test from the first night on is the level that nights are set beside, and no change shows it.
    private static void LevelOffTest(ReviewedNight[] reviewed, IReadOnlyList<ChangeFound> changes, List<Finding> findings)
    {
        var charted = reviewed.Where(night => night is { Ultrafiltration: not null, Expected: not null, Basis: not null, LeftOut: "" }).ToList();
        if (charted.Count < TwoWeeks || changes.Count > 0)
        {
            return;
        }

        var lately = charted.TakeLast(TwoWeeks).ToList();
        var off = lately.Average(night => night.Ultrafiltration!.Value.Milliliters - night.Basis!.Ultrafiltration(night.HoldsDay));
        var doubt = (charted[0].Expected!.Value.High - charted[0].Expected!.Value.Low).Milliliters / 2;
        if (Math.Abs(off) > Math.Max(doubt, LeastOffTest))
        {
            Warn(findings, "record-level-off-test", $"The last {TwoWeeks} nights charted returned about {Math.Abs(off):0} mL {(off < 0 ? "less" : "more")} a night than the test lets expect ({lately.Average(night => night.Basis!.Ultrafiltration(night.HoldsDay)):0;−0;0} mL; its doubt, 90 %, is ± {doubt:0} mL), and no change was signalled: it may have been so since the book begins. Compatible with the book, the bags, the drains, or a membrane that has changed since the test. What this page expects has followed.");
        }
    }

    // One value is no fall of urine, and none to pass over.
    private static void UrineOnce(IReadOnlyList<NightRecord> nights, ReviewLimits limits, int today, List<Finding> findings)
    {
        var values = nights.Where(night => night.Urine is not null && night.Date.DayNumber > today - 2 * Month).Select(night => (night.Date, night.Urine!.Value.Milliliters)).ToList();
        if (values.Count < 4 || values[^1].Milliliters >= limits.NoUrine.Value || today - values[^1].Date.DayNumber >= TwoWeeks)
        {
            return;
        }

        var usual = values.SkipLast(1).Select(value => value.Milliliters).Median();
        if (values[^2].Milliliters >= limits.NoUrine.Value && usual - values[^1].Milliliters >= limits.LeastUrineFall.Value)
        {
            Warn(findings, "record-urine-once", $"The last urine written is {values[^1].Milliliters:0} mL/day, on {values[^1].Date:yyyy-MM-dd}, where about {usual:0} is usual. It is one value: measure it again, and ask the unit if it stays so, or now with pain, swelling or dizziness.");
        }
    }

    // At or beyond both limits an adult is looked at now, whatever is felt (memory); of a child the limits are others.
    private static void Pulse(Patient patient, IReadOnlyList<NightRecord> nights, ReviewLimits limits, int today, List<Finding> findings)
    {
        var off = nights.Where(night => today - night.Date.DayNumber <= limits.NowDays.Value).SelectMany(night => night.Rows.Select(row => (Night: night, row.PulsePerMinute)))
            .Where(one => one.PulsePerMinute <= limits.LowPulse.Value || one.PulsePerMinute >= limits.HighPulse.Value).ToList();
        if (off.Count > 0 && !TargetAssessment.IsChild(patient))
        {
            var (night, pulse) = off[^1];
            Warn(findings, "record-pulse-now", $"Pulse of {pulse:0}/min on {Day(night)}, {(pulse <= limits.LowPulse.Value ? $"{limits.LowPulse.Value:0} or below: compatible with medicines, a disturbed rhythm or a high potassium" : $"{limits.HighPulse.Value:0} or above: compatible with an infection, a body that is dried out, bleeding, pain or a disturbed rhythm")}. Measure again at rest; if it stays so, or with faintness, weakness, chest pain or breathlessness, the unit or the emergency service at once.");
        }
    }

    // Days in a row without treatment, or without a word of it.
    private static void Untreated(IReadOnlyList<NightRecord> nights, IReadOnlyList<NightRecord> inDoubt, int today, List<Finding> findings)
    {
        var treated = nights.Where(night => !night.IsSkipped).Concat(inDoubt).Select(night => night.Date.DayNumber).ToHashSet();
        var run = 0;
        for (var day = Math.Max(today - 6, nights[0].Date.DayNumber); day <= today; day++)
        {
            run = treated.Contains(day) ? 0 : run + 1;
            if (run == FewestUntreated)
            {
                Warn(findings, "record-untreated", $"On {FewestUntreated} days in a row or more, to {DateOnly.FromDayNumber(day):yyyy-MM-dd}, no treatment is written. If it was not done, fluid, potassium and urea have built up: ask why, and look at weight, pressure, breath and weakness. If it was done, the book has a gap.");
                return;
            }
        }
    }

    // More came out than could be made: what was inside before, a number from another line, or a strength that nobody meant.
    private static void FarAbove(ReviewedNight[] reviewed, NightResponse?[] responses, ReviewLimits limits, int today, List<Finding> findings)
    {
        var above = reviewed.Zip(responses).Where(one => today - one.First.Record.Date.DayNumber <= limits.NowDays.Value && one.Second is { } response && one.First.Ultrafiltration is { } seen && one.First.Expected is { } expected
            && (seen - expected.Median).Milliliters > MostOfFill * response.LargestFill).Select(one => one.First).ToList();
        if (above.Count > 0)
        {
            var last = above[^1];
            Warn(findings, "record-uf-far-above", $"{last.Ultrafiltration!.Value.Milliliters:0} mL came out on {Day(last.Record)} beyond what went in, where about {last.Expected!.Value.Median.Milliliters:0} were to be expected{(above.Count > 1 ? $" ({above.Count} such days)" : "")}: compatible with fluid that had stayed inside before, a number from another line, or a stronger bag than is written. If it is true, so much taken off can dry the patient out: look at weight and pressure, and ask the unit today.");
        }
    }

    // A volume that is no mistake in an adult is one in a child, and may have been set for another person.
    private static void FillsOfChild(Patient patient, IReadOnlyList<NightRecord> nights, NightResponse?[] responses, int today, List<Finding> findings)
    {
        var run = nights.Zip(responses).Where(one => one.First.Date.DayNumber > today - 7 && !one.First.IsSkipped && one.Second is not null).Select(one => (Night: one.First, one.Second!.Regimen))
            .Select(one => (one.Night, Said: BeyondTheTest.FillOfChild(patient, [one.Regimen]).FirstOrDefault())).Where(one => one.Said is not null).ToList();
        if (run.Count > 0)
        {
            Warn(findings, "record-fill-large-for-child", $"What the book says was run on {run.Count} of the last seven days, last on {Day(run[^1].Night)}: {char.ToLowerInvariant(run[^1].Said!.Message[0])}{run[^1].Said!.Message[1..]} Ask the unit before the next fill.");
        }
    }

    // What is left out or contradicts itself is said where the nights are judged: nobody reads the list of a book's cells first.
    private static void NumbersInDoubt(IReadOnlyList<NightRecord> nights, IReadOnlyList<NightRecord> inDoubt, IReadOnlyList<Finding> ofBook, ReviewLimits limits, int today, List<Finding> findings)
    {
        // A day by hand has several rows, of which it carries the first; rows in doubt are no night's.
        var byRow = nights.Concat(inDoubt).OrderBy(night => night.Row).ToList();
        var said = ofBook.Where(found => found.Severity > Severity.Note && found.Code != "book-weight-step" && BookWords.OfTreatment.Any(column => column.Name == found.Field))
            .Select(found => (Found: found, Night: byRow.LastOrDefault(night => night.Row <= found.Row)))
            .Where(one => one.Night is { } night && night.Date.DayNumber > today - Month)
            .GroupBy(one => (one.Found.Code, one.Found.Code.StartsWith("book", StringComparison.Ordinal) ? "" : one.Found.Field))
            .Select(group => group.OrderBy(one => one.Night!.Date).DistinctBy(one => one.Night!.Date).ToList())
            .Where(group => group.Count >= (group[0].Found.Code == "book-sum-differs" ? limits.RepeatedNights.Value : 1)).OrderByDescending(group => group.Count).ToList();
        if (said.Count == 0)
        {
            return;
        }

        Warn(findings, "record-numbers-doubtful", $"In these four weeks numbers cannot be as they are written, or contradict each other: {string.Join("; ", said.Take(MostOfNumbers).Select(Words))}{(said.Count > MostOfNumbers ? $"; and {said.Count - MostOfNumbers} more in the list that the command prints" : "")}. What was left out is missing in charts and means, and a night is set beside what was written before. Put the book right with the person.");

        static string Words(List<(Finding Found, NightRecord? Night)> group)
        {
            var (found, night) = group[^1];
            return $"{found.Field} on {(group.Count == 1 ? Day(night!) : Invariant($"{group.Count} days, last on {Day(night!)}"))} ({(found.Found is { Length: > 0 } written ? $"“{written}”: " : "")}{found.Message.TrimEnd('.')})";
        }
    }

    // A book that begins in pounds is no slip in it, and one of somebody else may carry no code.
    private static void WeightOffTest(Patient patient, ReviewedNight[] reviewed, List<Finding> findings)
    {
        var weights = reviewed.Where(night => night.EmptyWeight is not null).TakeLast(TwoWeeks).Select(night => night.EmptyWeight!.Value.Kilograms).ToList();
        if (weights.Count >= FewestOfTwoWeeks && weights.Median() is var usual && Math.Abs(usual / patient.Weight.Kilograms - 1) > MostOffTest)
        {
            Warn(findings, "record-weight-off-test", $"Empty weight in the book is about {usual:0.0} kg, where the sheet of the test has {patient.Weight.Kilograms:0.0} kg: another person's book or sheet, another unit (pounds?), or a great change since the test, and nothing on this page is sure until it is known.");
        }
    }

    // Ultrafiltration of night and day; null where a wet day's part is not written, or most of it stayed inside. A dry day's is nothing, and so is that of a day without treatment.
    private static double? WholeDay(ReviewedNight night) => (night.Ultrafiltration?.Milliliters, night.HoldsDay, night.Basis?.Before) switch
    {
        _ when night.Record.IsSkipped => 0,
        _ when night.IsRetained => null,
        ({ } uf, false, { DayFill: > 0 } before) => uf + night.Record.InitialDrain?.Milliliters - before.DayFill,
        var (uf, _, _) => uf,
    };

    private static void LostDwell(IReadOnlyList<NightRecord> nights, NightResponse?[] responses, ReviewLimits limits, int today, List<Finding> findings)
    {
        var lost = nights.Where((night, t) => night.Date.DayNumber > today - 7 && responses[t] is { } response
            && night.LostDwell?.TotalMinutes > limits.LostDwellShare.Value * response.AverageDwell * response.Regimen.Cycles).ToList();
        if (lost.Count >= limits.RepeatedNights.Value)
        {
            Warn(findings, "record-lost-dwell", $"On {lost.Count} of the last seven nights more than {100 * limits.LostDwellShare.Value:0} % of the dwell time was lost ({lost.Average(night => night.LostDwell!.Value.TotalMinutes):0} min on average). Compatible with slow drains (constipation, position, catheter) or with alarms.");
        }
    }

    private static void Strongest(IReadOnlyList<NightRecord> nights, int treated, ReviewLimits limits, int today, List<Finding> findings)
    {
        int Uses(int from, int to) => nights.Count(night => night.Date.DayNumber > from && night.Date.DayNumber <= to && night.UsesStrongest);
        var (now, before) = (Uses(today - Month, today), Uses(today - 2 * Month, today - Month));
        if (today - nights[0].Date.DayNumber >= 2 * Month - 1 && now - before >= limits.StrongestRise.Value)
        {
            Warn(findings, "record-strongest-rising", $"The strongest glucose was used on {now} days of the last four weeks, on {before} of the four before. With less ultrafiltration this may be a question about the membrane; so much of it can also dry the patient out.");
        }
        else if (treated >= FewestForHabit && now >= limits.StrongestShare.Value * treated)
        {
            Warn(findings, "record-strongest-often", $"The strongest glucose was used on {now} of {treated} days written in the last four weeks. Day after day it can dry the patient out and cost urine, and over long it ages the membrane: ask whether all of it is still needed.");
        }
    }

    // A change that was signalled these weeks has become the level that nights are set beside, and is a change all the same, unless so few millilitres as weigh nothing (100: choice).
    private static double? Lately(IReadOnlyList<ChangeFound> changes, int today) =>
        changes.LastOrDefault(change => change.SignalledOn.DayNumber > today - 2 * Month)?.Size switch
        {
            { High.Milliliters: < 0, Median.Milliliters: < -100 } => -1,
            { Low.Milliliters: > 0, Median.Milliliters: > 100 } => 1,
            _ => null,
        };

    private static void Trends(Patient patient, IReadOnlyList<NightRecord> nights, ReviewedNight[] reviewed, ReviewLimits limits, double slow, (bool Weight, bool Pressure) steps, List<Finding> findings)
    {
        // A line through a step is longer than the step.
        var weight = steps.Weight ? null : Trend.Of(reviewed.Where(night => night.EmptyWeight is not null).Select(night => (night.Record.Date.DayNumber, night.EmptyWeight!.Value.Kilograms)), Month);
        var (distance, share) = (TargetWeight.DistanceKilograms(reviewed), ReviewLimits.BodyShare(patient));
        if (weight is not null && Math.Abs(weight.SlopePerDay) > limits.SlopeErrors.Value * weight.Error && Math.Abs(weight.SlopePerDay) * Month > limits.WeightSlope.Value * share)
        {
            var month = weight.SlopePerDay * Month;
            var beside = (month > 0, slow) switch
            {
                (true, < -0.5) => "while nights return less than expected: fluid may be building up",
                (true, > 0.5) => "although nights return more than expected: compatible with more drink, with food, or with another scale",
                (true, _) => "while ultrafiltration is as expected: compatible with fluid, food, or another scale",
                (false, > 0.5) => "while nights return more than expected: more fluid may be taken off than is wanted",
                (false, < -0.5) => "although nights return less than expected: appetite and nutrition come first, as lost flesh can hide fluid",
                (false, _) => "while ultrafiltration is as expected: compatible with less fluid, or with lost flesh",
            };
            Warn(findings, "record-weight-against-uf", $"Empty weight {(month > 0 ? "rises" : "falls")} by {Math.Abs(month):0.0} kg in four weeks, {beside}. {(distance is { } far ? $"It is {TargetWeight.Words(reviewed, far, limits)}" : "Compare with the target weight and its date; the book has none")}.");
        }
        else if (Math.Abs(distance ?? 0) >= limits.TargetDistance.Value * share)
        {
            Warn(findings, "record-weight-off-target", $"Empty weight is {TargetWeight.Words(reviewed, distance!.Value, limits)}.");
        }
        else if (TargetWeight.IsOld(nights[^1], limits))
        {
            Note(findings, "record-target-old", $"The book has a {TargetWeight.Named(nights[^1], limits)}.");
        }

        var pressure = steps.Pressure ? null : Trend.Of(nights.Where(night => night.Sitting is not null).Select(night => (night.Date.DayNumber, (double)night.Sitting!.Value.SystolicMillimetersOfMercury)), Month);
        if (pressure is not null && Math.Abs(pressure.SlopePerDay) > limits.SlopeErrors.Value * pressure.Error && Math.Abs(pressure.SlopePerDay) * Month > limits.PressureSlope.Value)
        {
            var beside = slow switch
            {
                < -0.5 => "while nights return less than expected",
                > 0.5 => "while nights return more than expected",
                _ => "while ultrafiltration is as expected",
            };
            var last = nights.Where(night => night.Sitting is not null).TakeLast(7).Select(night => (double)night.Sitting!.Value.SystolicMillimetersOfMercury).Median();
            Warn(findings, "record-pressure-trend", $"Systolic pressure {(pressure.SlopePerDay > 0 ? "rises" : "falls")} by {Math.Abs(pressure.SlopePerDay) * Month:0} mmHg in four weeks, to about {last:0}, {beside}. Fluid, salt and medicines are what to look at together; the book does not tell them apart.");
        }
    }

    public static string Day(NightRecord night) => night.Date.ToString("yyyy-MM-dd", CultureInfo.InvariantCulture);

    public static void Warn(List<Finding> findings, string code, FormattableString message) => findings.Add(new(Severity.Warning, code, message.ToString(CultureInfo.InvariantCulture)));

    public static void Note(List<Finding> findings, string code, FormattableString message) => findings.Add(new(Severity.Note, code, message.ToString(CultureInfo.InvariantCulture)));
}
