using System.Globalization;
using MathNet.Numerics.Statistics;
using static System.FormattableString;

namespace Transport.Analysis;

/// <summary>What a nurse may want to act on. Wording is tentative, thresholds are data, and local protocol rules.</summary>
internal static class NurseFindings
{
    internal const int Month = 28;

    // A drain that brings less than this share of what went in has all but stopped (choice).
    private const double StoppedShare = 0.25;

    // Of exchanges by hand, whose long dwells take fluid up, a drain below this share is low (choice).
    private const double HandDrainShare = 0.7;

    private const int FewestForHabit = 14;
    private const int TwoWeeks = 14;
    private const int FewestOfTwoWeeks = 7;

    // Less than this a night is not worth a word, however sure (choice).
    private const double LeastOffTest = 250;

    // Blood-glucose meters err for so many days after the last icodextrin.
    private const int MetersErrFor = 14;

    /// <summary>What may be an emergency of now, the most urgent first.</summary>
    public static IReadOnlyList<string> Urgent { get; } =
    [
        "record-sepsis-now", "record-cloudy-now", "record-pain-or-fever-now", "record-overfill-now", "record-symptoms-now", "record-pressure-emergency", "record-exit-site-now", "record-glucose-low", "record-glucose-very-high", "record-pressure-low", "record-pressure-high",
        "record-date-doubtful-now",
    ];

    /// <summary>What may have been one, or may hide one: no page leaves it out for want of room.</summary>
    public static IReadOnlyList<string> NeverCut { get; } =
    [
        "record-row-lost", "record-date-doubtful", "record-text-unread", "record-cloudy-past", "record-peritonitis-of-past", "record-complaint-of-past", "record-pain-or-fever-past", "record-exit-site-past", "record-danger-past", "record-overfill-risk", "record-urine-fall", "record-urine-once", "record-weight-step", "record-removal-low",
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
        IReadOnlyList<NightRecord> inDoubt)
    {
        List<Finding> findings = [];
        if (nights.Count == 0)
        {
            return findings;
        }

        var today = nights[^1].Date.DayNumber;
        var written = nights.Count(night => night.Date.DayNumber > today - Month && !night.IsSkipped);
        Drains(nights, reviewed, responses, limits, today, findings);
        LostDwell(nights, responses, limits, today, findings);
        Strongest(nights, written, limits, today, findings);
        Removal(patient, reviewed, limits, today, findings);
        UrineOnce(nights, limits, today, findings);
        WeightStep(reviewed, limits, today, findings);
        LevelOffTest(reviewed, changes, findings);
        Trends(nights, reviewed, limits, Lately(changes, today) ?? slow, findings);
        foreach (var change in changes)
        {
            findings.Add(new(Severity.Warning, "record-change-found", ChangeWords.Sentence(change)));
        }

        HighGlucose(nights, limits, today, findings);
        var span = Math.Min(Month, today - nights[0].Date.DayNumber + 1);
        var doubtful = inDoubt.Where(row => row.Date.DayNumber > today - Month).Select(row => row.Row).Except(nights.Select(night => night.Row)).Count();
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

    private static void Drains(
        IReadOnlyList<NightRecord> nights, ReviewedNight[] reviewed, NightResponse?[] responses, ReviewLimits limits, int today, List<Finding> findings)
    {
        var low = new List<NightRecord>();
        var isStopped = false;
        var held = new List<(double Share, double Milliliters, NightRecord Night)>();

        void Held(double milliliters, double fill, NightRecord night) => held.Add((milliliters / fill, milliliters, night));

        foreach (var day in nights.Where(night => night.Date.DayNumber > today - 7))
        {
            ByHand(day);
        }

        for (var t = 0; t < nights.Count; t++)
        {
            // A tidal night leaves fluid behind by plan: its drains are no shares of its fills.
            if (nights[t].Date.DayNumber <= today - 7 || nights[t].IsSkipped || responses[t] is not { } response
                || response.Regimen.Night.Any(exchange => exchange.PartialDrain is not null))
            {
                continue;
            }

            // A dry day's first drain is near nothing by design.
            var fill = NightBefore.IsWritten(nights, t) ? NightBefore.Of(nights, responses, t)?.DayFill ?? 0 : 0;
            var isLow = fill > 0 && nights[t].InitialDrain is { } drain && drain.Milliliters < limits.LowDrainShare.Value * fill
                && drain.Milliliters < limits.LowDrainShare.Value * Expected(reviewed[t]);
            var fills = response.Regimen.Night;

            // What came out was in: of a day beyond what it usually leaves, and beyond the fills that are borne at night, under which a small one of the day may rise.
            if (fill > 0 && nights[t].InitialDrain is { } evening)
            {
                var usual = Math.Max(Expected(reviewed[t]), response.Regimen.Night.Select(exchange => exchange.Fill.Milliliters).DefaultIfEmpty().Max());
                Held(evening.Milliliters, Math.Max(fill, usual), nights[t]);
            }

            // What this person's day leaves to drain in the evening and did not come stays below the first fill.
            var left = fill > 0 && nights[t].InitialDrain is { } initial ? Math.Max(0, Expected(reviewed[t]) - initial.Milliliters) : 0;
            for (var k = 0; k < fills.Length; k++)
            {
                // What one drain left is below the next fill, whether or not the book has the drain that follows.
                var before = left + fills[k].Fill.Milliliters;
                Held(before, fills[k].Fill.Milliliters, nights[t]);
                if (k >= nights[t].CycleDrains.Length)
                {
                    break;
                }

                var drained = nights[t].CycleDrains[k].Milliliters;
                Held(drained, fills[k].Fill.Milliliters, nights[t]);
                isLow |= drained < limits.LowDrainShare.Value * fills[k].Fill.Milliliters;
                left = Math.Max(0, before - drained);
            }

            if (isLow)
            {
                low.Add(nights[t]);
            }
        }

        // Words of slow drains make one low drain worth a look.
        var told = nights.Where(night => night.Date.DayNumber > today - 7 && DangerSigns.Quoted(night, Symptom.SlowDrain).Length > 0).ToList();
        if (low.Count >= (told.Count > 0 || isStopped ? 1 : limits.RepeatedNights.Value))
        {
            Warn(findings, "record-drain-below-fill", $"On {low.Count} of the last seven days a drain brought less than {100 * (low[^1].IsByHand ? HandDrainShare : limits.LowDrainShare.Value):0} % of the fill, last on {Day(low[^1])}{(told.Count > 0 ? $", and of drains is written {Told()}" : "")}. Fluid may be staying behind (constipation, position, catheter).{(isStopped ? " Hardly anything came of one these days: ask the unit before the next fill." : "")}");
        }

        // What is printed is what is judged. A fuller day that was borne hides none with a complaint beside it.
        var over = held.Where(one => Math.Round(one.Share, 2) >= limits.OverfillShare.Value).OrderByDescending(one => TightBeside(one.Night) is not null).ThenByDescending(IsHighNow).ThenByDescending(one => one.Share).ToList();
        if (over.Count == 0)
        {
            return;
        }

        var fullest = over[0];
        var share = Math.Round(fullest.Share, 2);
        var what = Invariant($"By its drains the cavity may have held {share:0.0#} times the fill, {fullest.Milliliters:0} mL, on {Day(fullest.Night)}{(share >= limits.HighOverfillShare.Value ? ", which is high" : "")}");
        if (TightBeside(fullest.Night) is { } tight)
        {
            Warn(findings, "record-overfill-now", $"{what}, and {Tightness(tight)} is written on {Day(tight)}: together compatible with overfill. Stop the exchange that is going on and call the unit now; the unit's rule for overfill applies at once.");
        }
        else if (IsHighNow(fullest))
        {
            Warn(findings, "record-overfill-now", $"{what}. {(told.Count > 0 ? $"Of drains is written {Told()}. " : "")}No complaint of the body is written beside it; none is needed: call the unit before the next fill.");
        }
        else
        {
            Warn(findings, "record-overfill-risk", $"{what}. With fullness, breathlessness or pain the unit's rule for overfill applies at once.");
        }

        // What an exchange brings much less of than went in stays below the next. A little less is what a body takes up.
        void ByHand(NightRecord day)
        {
            var left = 0.0;
            foreach (var exchange in day.Exchanges.Where(exchange => exchange.Filled?.Milliliters > 0))
            {
                var filled = exchange.Filled!.Value.Milliliters;
                Held(left + filled, filled, day);
                if ((exchange.Drained - exchange.Flushed)?.Milliliters is not { } drained)
                {
                    continue;
                }

                Held(drained, filled, day);
                var isShort = drained < HandDrainShare * filled;
                left = isShort ? left + filled - drained : Math.Max(0, left - Math.Max(0, drained - filled));
                if (isShort && !low.Contains(day))
                {
                    low.Add(day);
                }

                isStopped |= drained < StoppedShare * filled && today - day.Date.DayNumber <= limits.NowDays.Value;
            }
        }

        string Told() => string.Join(" and ", told.TakeLast(2).Select(night => $"{DangerSigns.Quoted(night, Symptom.SlowDrain)} on {Day(night)}"));

        bool IsHighNow((double Share, double Milliliters, NightRecord Night) one) =>
            Math.Round(one.Share, 2) >= limits.HighOverfillShare.Value && today - one.Night.Date.DayNumber <= limits.NowDays.Value;

        NightRecord? TightBeside(NightRecord full) =>
            nights.LastOrDefault(night => night.Date.DayNumber > today - 7 && Math.Abs(night.Date.DayNumber - full.Date.DayNumber) <= limits.NowDays.Value && IsTight(night));
    }

    private static readonly (Symptom Symptom, string Name)[] Tight = [(Symptom.Breathless, "breathlessness"), (Symptom.FlowPain, "pain on filling or draining"), (Symptom.AbdominalPain, "pain")];

    private static bool IsTight(NightRecord night) => Array.Exists(Tight, tight => night.Symptoms.Contains(tight.Symptom));

    private static string Tightness(NightRecord night)
    {
        var (symptom, name) = Array.Find(Tight, tight => night.Symptoms.Contains(tight.Symptom));
        return DangerSigns.Quoted(night, symptom) is { Length: > 0 } quoted ? $"{name} ({quoted})" : name;
    }

    // What this person's initial drain usually is: a day that takes up fluid leaves less than went in.
    private static double Expected(ReviewedNight night) => night.Readings.FirstOrDefault(reading => reading.Channel == NightChannel.InitialDrain)?.Expected ?? 0;

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

    // Kilograms of two days are fluid, a belly that was not empty, clothes or a scale, and not food.
    private static void WeightStep(ReviewedNight[] reviewed, ReviewLimits limits, int today, List<Finding> findings)
    {
        var weights = reviewed.Where(night => night.EmptyWeight is not null).Select(night => (Day: night.Record.Date.DayNumber, night.EmptyWeight!.Value.Kilograms)).ToList();
        var last = weights.Where(weight => weight.Day > today - limits.NowDays.Value).TakeLast(2).ToList();
        var before = weights.Where(weight => weight.Day <= today - limits.NowDays.Value && weight.Day > today - limits.NowDays.Value - TwoWeeks).Select(weight => weight.Kilograms).ToList();
        if (last.Count < 2 || before.Count < FewestOfTwoWeeks)
        {
            return;
        }

        var usual = before.Median();
        if (last.All(weight => weight.Kilograms - usual >= limits.TargetDistance.Value))
        {
            Warn(findings, "record-weight-step", $"Empty weight of the last two days is {last.Min(weight => weight.Kilograms) - usual:0.0} kg or more above the {usual:0.0} kg of the two weeks before: compatible with fluid that has built up, unless the scale, clothes or a full belly explain it. Weigh again and ask the unit today; with swelling or breathlessness at once.");
        }
    }

    // Ultrafiltration of night and day; null where a wet day's part is not written. A dry day's is nothing, and so is that of a day without treatment.
    private static double? WholeDay(ReviewedNight night) => (night.Ultrafiltration?.Milliliters, night.HoldsDay, night.Basis?.Before) switch
    {
        _ when night.Record.IsSkipped => 0,
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

    private static void Trends(IReadOnlyList<NightRecord> nights, ReviewedNight[] reviewed, ReviewLimits limits, double slow, List<Finding> findings)
    {
        var weight = Trend.Of(reviewed.Where(night => night.EmptyWeight is not null).Select(night => (night.Record.Date.DayNumber, night.EmptyWeight!.Value.Kilograms)), Month);
        var distance = TargetWeight.DistanceKilograms(reviewed);
        if (weight is not null && Math.Abs(weight.SlopePerDay) > limits.SlopeErrors.Value * weight.Error && Math.Abs(weight.SlopePerDay) * Month > limits.WeightSlope.Value)
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
        else if (Math.Abs(distance ?? 0) >= limits.TargetDistance.Value)
        {
            Warn(findings, "record-weight-off-target", $"Empty weight is {TargetWeight.Words(reviewed, distance!.Value, limits)}.");
        }
        else if (TargetWeight.IsOld(nights[^1], limits))
        {
            Note(findings, "record-target-old", $"The book has a {TargetWeight.Named(nights[^1], limits)}.");
        }

        var pressure = Trend.Of(nights.Where(night => night.Sitting is not null).Select(night => (night.Date.DayNumber, (double)night.Sitting!.Value.SystolicMillimetersOfMercury)), Month);
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

    private static string Day(NightRecord night) => night.Date.ToString("yyyy-MM-dd", CultureInfo.InvariantCulture);

    private static void Warn(List<Finding> findings, string code, FormattableString message) => findings.Add(new(Severity.Warning, code, message.ToString(CultureInfo.InvariantCulture)));

    private static void Note(List<Finding> findings, string code, FormattableString message) => findings.Add(new(Severity.Note, code, message.ToString(CultureInfo.InvariantCulture)));
}
