using System.Globalization;
using MathNet.Numerics.Statistics;

namespace Transport.Analysis;

/// <summary>What of the last days does not wait for a trend: complaints, an exit site, absolute values, and whatever was written and not understood.</summary>
/// <remarks>What is written is quoted, so that a reader can tell a false alarm from a true one. No sign here is no safety: the book holds what somebody wrote.</remarks>
internal static class DangerSigns
{
    private const int LongestQuote = 120;
    private const int MostQuotes = 4;
    private const int WeeksOfUrine = 8;
    private const int FreshUrine = 14;

    // What speaks of a body rather than of a machine; of a row without a date nothing at all was read.
    private static readonly BookColumn[] OfTheBody =
    [
        BookWords.Date, BookWords.Effluent, BookWords.Peritonitis, BookWords.Temperature, BookWords.BloodGlucose, BookWords.Sitting, BookWords.Standing, BookWords.Urine, BookWords.Weight,
    ];

    /// <param name="nights">The nights by date.</param>
    /// <param name="ofBook">What could not be read of the book.</param>
    /// <param name="patient">Whose; pressures have limits for adults only.</param>
    /// <param name="limits">The limits.</param>
    public static List<Finding> Of(IReadOnlyList<NightRecord> nights, IReadOnlyList<Finding> ofBook, Patient patient, ReviewLimits limits)
    {
        List<Finding> findings = [];
        if (nights.Count == 0)
        {
            return findings;
        }

        var today = nights[^1].Date.DayNumber;
        var now = nights.Where(night => IsNow(night, today, limits)).ToList();
        var quoted = new HashSet<NightRecord>();
        Cloudy(nights, today, limits, quoted, findings);
        PainOrFever(nights, today, limits, quoted, findings);
        ExitSite(nights, today, limits, quoted, findings);
        Others(now, limits, quoted, findings);
        Glucose(nights, now, limits, findings);
        if (patient.AgeYears >= MembraneThresholds.Default.AdultAge.Value)
        {
            Pressure(now, limits, findings);
        }

        Urine(nights, today, limits, findings);
        Unread(now, ofBook, limits, quoted, findings);
        return findings;
    }

    private static void Cloudy(IReadOnlyList<NightRecord> nights, int today, ReviewLimits limits, HashSet<NightRecord> quoted, List<Finding> findings)
    {
        if (nights.LastOrDefault(Peritonitis.IsSign) is not { } last)
        {
            return;
        }

        var ago = today - last.Date.DayNumber;
        if (IsNow(last, today, limits))
        {
            Warn(findings, "record-cloudy-now", $"Cloudy fluid or peritonitis {When(nights.Where(night => Peritonitis.IsSign(night) && IsNow(night, today, limits)), quoted)}. Contact the unit now and keep the bag; peritonitis until shown otherwise. No number on this page speaks against it.");
        }
        else
        {
            Note(findings, "record-cloudy-past", $"Cloudy fluid or peritonitis {When([last], quoted)}, {ago} days before the last night written: history if it was reported and treated. If it was not, contact the unit now.");
        }

        if (ago <= limits.PeritonitisDays.Value)
        {
            Note(findings, "record-peritonitis-weeks", $"Nights from {Day(last)} on are left out of the charts for {limits.PeritonitisDays.Value} days: ultrafiltration falls and transfer rises for weeks after a peritonitis.");
        }
    }

    private static void PainOrFever(IReadOnlyList<NightRecord> nights, int today, ReviewLimits limits, HashSet<NightRecord> quoted, List<Finding> findings)
    {
        (string Name, Func<NightRecord, bool> Is)[] signs =
        [
            ("pain", night => night.Symptoms.Contains(Symptom.AbdominalPain)),
            ("fever", night => night.Symptoms.Contains(Symptom.Fever) || night.TemperatureCelsius >= limits.Fever.Value),
            ("vomiting or nausea", night => night.Symptoms.Contains(Symptom.Vomiting)),
            ("diarrhoea", night => night.Symptoms.Contains(Symptom.Diarrhoea)),
        ];
        if (nights.LastOrDefault(IsSign) is not { } last)
        {
            return;
        }

        if (IsNow(last, today, limits))
        {
            var these = nights.Where(night => IsSign(night) && IsNow(night, today, limits)).ToList();
            Warn(findings, "record-pain-or-fever-now", $"{Names(these)} {When(these, quoted)}, whatever the fluid looks like: about one peritonitis in ten begins with few cells. Contact the unit now and keep the bag.");
        }
        else
        {
            Note(findings, "record-pain-or-fever-past", $"{Names([last])} {When([last], quoted)}: history if it was reported. If it was not, contact the unit now.");
        }

        bool IsSign(NightRecord night) => signs.Any(sign => sign.Is(night));

        string Names(IReadOnlyCollection<NightRecord> of) =>
            string.Join(", ", signs.Where(sign => of.Any(sign.Is)).Select(sign => sign.Name)) is var all ? char.ToUpperInvariant(all[0]) + all[1..] : "";
    }

    private static void ExitSite(IReadOnlyList<NightRecord> nights, int today, ReviewLimits limits, HashSet<NightRecord> quoted, List<Finding> findings)
    {
        if (nights.LastOrDefault(night => night.Symptoms.Contains(Symptom.ExitSite)) is not { } last)
        {
            return;
        }

        if (IsNow(last, today, limits))
        {
            var these = nights.Where(night => night.Symptoms.Contains(Symptom.ExitSite) && IsNow(night, today, limits));
            Warn(findings, "record-exit-site-now", $"Redness, pus, swelling or pain at the exit site or over the tunnel {When(these, quoted)}: compatible with an infection there, from which a peritonitis can come. Contact the unit today, and at once with fever, pain or cloudy fluid.");
        }
        else
        {
            Note(findings, "record-exit-site-past", $"Redness, pus, swelling or pain at the exit site or over the tunnel {When([last], quoted)}: history if it was reported and looked at. If it was not, contact the unit today.");
        }
    }

    private static void Others(List<NightRecord> now, ReviewLimits limits, HashSet<NightRecord> quoted, List<Finding> findings)
    {
        (string Name, Func<NightRecord, bool> Is)[] complaints =
        [
            ("short of breath", night => night.Symptoms.Contains(Symptom.Breathless)),
            ("swelling", night => night.Symptoms.Contains(Symptom.Swelling)),
            ("pain on filling or draining", night => night.Symptoms.Contains(Symptom.FlowPain)),
            ("cramps, dizziness or faintness (dried out?)", night => night.Symptoms.Contains(Symptom.Dry)),
            ("bloody fluid", night => night.Effluent == EffluentLook.Bloody || night.Symptoms.Contains(Symptom.Blood)),
        ];
        var these = now.Where(night => complaints.Any(complaint => complaint.Is(night))).ToList();
        if (these.Count > 0)
        {
            Warn(findings, "record-symptoms-now", $"In the last {limits.NowDays.Value} days: {string.Join("; ", complaints.Where(complaint => these.Any(complaint.Is)).Select(complaint => complaint.Name))}, {When(these, quoted)}. Stop the exchange that is going on and call the unit now, if it has not been seen.");
        }
    }

    private static void Glucose(IReadOnlyList<NightRecord> nights, List<NightRecord> now, ReviewLimits limits, List<Finding> findings)
    {
        var low = now.Where(night => night.BloodGlucose?.MillimolesPerLiter < limits.LowGlucose.Value).Reverse().ToList();
        if (low.MinBy(night => night.BloodGlucose!.Value.MillimolesPerLiter) is { } lowest)
        {
            Warn(findings, "record-glucose-low", $"Blood glucose of {lowest.BloodGlucose!.Value.MillimolesPerLiter:0.0} mmol/L on {Day(lowest)}{OfDays(low)}, below {limits.LowGlucose.Value:0.0} mmol/L. The unit's rule for a low glucose applies at once.{(NurseFindings.UsesIcodextrin(nights) ? " Icodextrin is in use: some meters read falsely high, so that it may have been lower still." : "")}");
        }
    }

    private static void Pressure(List<NightRecord> now, ReviewLimits limits, List<Finding> findings)
    {
        var readings = now.Select(night => (Night: night, Pressure: night.Sitting, How: "sitting")).Concat(now.Select(night => (Night: night, Pressure: night.Standing, How: "standing")))
            .Where(reading => reading.Pressure is not null).Select(reading => (reading.Night, Value: reading.Pressure!.Value, reading.How)).ToList();
        var low = readings.Where(reading => reading.Value.SystolicMillimetersOfMercury < limits.LowSystolic.Value)
            .OrderBy(reading => reading.Value.SystolicMillimetersOfMercury).ThenByDescending(reading => reading.Night.Date).ToList();
        var falls = now.Where(night => night.Sitting?.SystolicMillimetersOfMercury - night.Standing?.SystolicMillimetersOfMercury >= limits.StandingDrop.Value).ToList();
        if (low.Count > 0 || falls.Count > 0)
        {
            string[] what =
            [
                .. low.Take(1).Select(one => Text($"Blood pressure {one.Value} {one.How} on {Day(one.Night)}{OfDays(low.Select(reading => reading.Night))}, below {limits.LowSystolic.Value:0} mmHg systolic")),
                .. falls.TakeLast(1).Select(one => Text($"{(low.Count > 0 ? "from" : "Blood pressure from")} {one.Sitting} sitting to {one.Standing} standing on {Day(one)}, a fall of {limits.StandingDrop.Value:0} mmHg or more")),
            ];
            Warn(findings, "record-pressure-low", $"{string.Join("; ", what)}: compatible with too much fluid taken, medicines, bleeding or an infection. Ask the unit today, before a strong bag is used; with faintness, fever or confusion at once.");
        }

        var high = readings.Where(reading => reading.Value.SystolicMillimetersOfMercury >= limits.HighSystolic.Value || reading.Value.DiastolicMillimetersOfMercury >= limits.HighDiastolic.Value)
            .OrderByDescending(reading => reading.Value.SystolicMillimetersOfMercury).ThenByDescending(reading => reading.Night.Date).ToList();
        if (high.Count > 0)
        {
            Warn(findings, "record-pressure-high", $"Blood pressure {high[0].Value} {high[0].How} on {Day(high[0].Night)}{OfDays(high.Select(reading => reading.Night))}, at or above {limits.HighSystolic.Value:0}/{limits.HighDiastolic.Value:0} mmHg: measure it again at rest and ask the unit today; with headache, chest pain, breathlessness or confusion at once.");
        }
    }

    // The last values beside those of the weeks before: the largest of them has fallen, so that one poor collection is no fall.
    private static void Urine(IReadOnlyList<NightRecord> nights, int today, ReviewLimits limits, List<Finding> findings)
    {
        var written = nights.Where(night => night.Urine is not null && night.Date.DayNumber > today - FreshUrine - 7 * WeeksOfUrine).ToList();
        var last = written.Where(night => night.Date.DayNumber > today - FreshUrine).TakeLast((int)limits.RepeatedNights.Value).ToList();
        var before = written.Except(last).Select(night => night.Urine!.Value.Milliliters).ToList();
        if (last.Count < Math.Min(2, limits.RepeatedNights.Value) || before.Count < 3)
        {
            return;
        }

        var (most, usual) = (last.Max(night => night.Urine!.Value.Milliliters), before.Median());
        if (most <= (1 - limits.UrineFall.Value) * usual && usual - most >= limits.LeastUrineFall.Value)
        {
            Warn(findings, "record-urine-fall", $"Urine is {most:0} mL/day or less in the last {last.Count} values, where it was about {usual:0} in the weeks before: compatible with too much fluid taken, an obstruction, medicines, illness, or the loss of the kidneys' own function. Ask the unit.");
        }
    }

    private static void Unread(List<NightRecord> now, IReadOnlyList<Finding> ofBook, ReviewLimits limits, HashSet<NightRecord> quoted, List<Finding> findings)
    {
        var firstRow = now.Min(night => night.Row);
        List<string> unread =
        [
            .. now.Where(night => !quoted.Contains(night)).SelectMany(night => new[] { night.Complaint, night.Remark }.Where(text => BookText.Of(text).HasUnread).Select(text => $"{Day(night)} {Quote(text)}")),
            .. ofBook.Where(cell => cell.Row >= firstRow && cell.Found is not null && OfTheBody.Any(column => column.Name == cell.Field)).Select(cell => Text($"{cell.Field} {Quote(cell.Found!)} in row {cell.Row}")),
        ];
        if (unread.Count > 0)
        {
            Warn(findings, "record-text-unread", $"Written in the last {limits.NowDays.Value} days and not understood here, so read it: {string.Join("; ", unread.Take(MostQuotes))}{(unread.Count > MostQuotes ? Text($"; and {unread.Count - MostQuotes} more in the book") : "")}.");
        }
    }

    private static bool IsNow(NightRecord night, int today, ReviewLimits limits) => today - night.Date.DayNumber < limits.NowDays.Value;

    // "on 2025-03-30 (“fever”) and 2025-03-31 (“tummy sore”)". What one finding quotes no other repeats.
    private static string When(IEnumerable<NightRecord> nights, HashSet<NightRecord> quoted) =>
        "on " + string.Join(" and ", nights.ToList().Select(night => Day(night) + (quoted.Add(night) && Words(night) is { Length: > 0 } words ? $" ({Quote(words)})" : "")));

    private static string OfDays(IEnumerable<NightRecord> nights) => nights.Distinct().Count() is > 1 and var days ? Text($" (the worst of {days} such days)") : "";

    private static string Words(NightRecord night) => string.Join("; ", new[] { night.Complaint, night.Remark }.Where(text => text.Length > 0));

    private static string Quote(string text)
    {
        var plain = string.Join(' ', text.Split((char[]?)null, StringSplitOptions.RemoveEmptyEntries));
        return $"“{(plain.Length <= LongestQuote ? plain : plain[..(char.IsHighSurrogate(plain[LongestQuote - 1]) ? LongestQuote - 1 : LongestQuote)].TrimEnd() + " …")}”";
    }

    private static string Day(NightRecord night) => night.Date.ToString("yyyy-MM-dd", CultureInfo.InvariantCulture);

    private static string Text(FormattableString message) => message.ToString(CultureInfo.InvariantCulture);

    private static void Warn(List<Finding> findings, string code, FormattableString message) => findings.Add(new(Severity.Warning, code, Text(message)));

    private static void Note(List<Finding> findings, string code, FormattableString message) => findings.Add(new(Severity.Note, code, Text(message)));
}
