using System.Globalization;
using MathNet.Numerics.Statistics;

namespace Transport.Analysis;

/// <summary>What of the last days does not wait for a trend: complaints, an exit site, absolute values, and whatever was written and not understood.</summary>
/// <remarks>What is written is quoted, so that a reader can tell a false alarm from a true one. No sign here is no safety: the book holds what somebody wrote.</remarks>
internal sealed class DangerSigns
{
    private const int LongestQuote = 120;
    private const int MostQuotes = 4;
    private const int WeeksOfUrine = 8;
    private const int FreshUrine = 14;

    // The page shows five weeks.
    private const int DaysOfPage = 35;

    // What speaks of a body rather than of a machine; of a row without a date nothing at all was read.
    private static readonly BookColumn[] OfTheBody =
    [
        BookWords.Date, BookWords.Effluent, BookWords.Peritonitis, BookWords.Temperature, BookWords.BloodGlucose, BookWords.Sitting, BookWords.Standing, BookWords.Urine, BookWords.Weight,
    ];

    private static readonly (string Name, Func<NightRecord, bool> Is)[] Complaints =
    [
        ("short of breath", night => night.Symptoms.Contains(Symptom.Breathless)),
        ("swelling", night => night.Symptoms.Contains(Symptom.Swelling)),
        ("pain on filling or draining", night => night.Symptoms.Contains(Symptom.FlowPain)),
        ("cramps, dizziness or faintness (dried out?)", night => night.Symptoms.Contains(Symptom.Dry)),
        ("bloody fluid", night => night.Effluent == EffluentLook.Bloody || night.Symptoms.Contains(Symptom.Blood)),
    ];

    private readonly IReadOnlyList<NightRecord> nights;
    private readonly List<NightRecord> now;
    private readonly ReviewLimits limits;
    private readonly bool isAdult;
    private readonly int today;
    private readonly HashSet<NightRecord> quoted = [];
    private readonly List<Finding> findings = [];

    private DangerSigns(IReadOnlyList<NightRecord> nights, Patient patient, ReviewLimits limits)
    {
        isAdult = patient.AgeYears >= MembraneThresholds.Default.AdultAge.Value;
        this.nights = nights;
        this.limits = limits;
        today = nights[^1].Date.DayNumber;
        now = [.. nights.Where(IsNow)];
    }

    /// <param name="nights">The nights by date.</param>
    /// <param name="ofBook">What could not be read of the book.</param>
    /// <param name="patient">Whose; pressures have limits for adults only.</param>
    /// <param name="limits">The limits.</param>
    public static IReadOnlyList<Finding> Of(IReadOnlyList<NightRecord> nights, IReadOnlyList<Finding> ofBook, Patient patient, ReviewLimits limits)
    {
        if (nights.Count == 0)
        {
            return [];
        }

        var signs = new DangerSigns(nights, patient, limits);
        signs.Cloudy();
        signs.PainOrFever();
        signs.ExitSite();
        signs.Others();
        signs.Glucose();
        if (signs.isAdult)
        {
            signs.Pressure();
        }

        signs.Urine();
        signs.Past();
        signs.Unread(ofBook);
        signs.SpokenOfAsPast();
        return signs.findings;
    }

    private void Cloudy()
    {
        if (nights.LastOrDefault(Peritonitis.IsSign) is not { } last)
        {
            return;
        }

        var ago = today - last.Date.DayNumber;
        if (IsNow(last))
        {
            Warn(findings, "record-cloudy-now", $"Cloudy fluid or peritonitis {When(now.Where(Peritonitis.IsSign))}. Contact the unit now and keep the bag; peritonitis until shown otherwise. No number on this page speaks against it.");
        }
        else
        {
            Note(findings, "record-cloudy-past", $"Cloudy fluid or peritonitis {When([last])}, {ago} days before the last night written: history if it was reported and treated. If it was not, contact the unit now.");
        }

        if (ago <= limits.PeritonitisDays.Value)
        {
            Note(findings, "record-peritonitis-weeks", $"Nights from {Day(last)} on are left out of the charts for {limits.PeritonitisDays.Value} days: ultrafiltration falls and transfer rises for weeks after a peritonitis.{(Peritonitis.IsOfWordsAlone(last) ? " It is counted by its words alone: if they speak of an older one, write month and year beside it." : "")}");
        }
    }

    private void PainOrFever()
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

        if (IsNow(last))
        {
            var these = now.Where(IsSign).ToList();
            Warn(findings, "record-pain-or-fever-now", $"{Names(these)} {When(these)}, whatever the fluid looks like: about one peritonitis in ten begins with few cells. Contact the unit now and keep the bag.");
        }
        else
        {
            Note(findings, "record-pain-or-fever-past", $"{Names([last])} {When([last])}: history if it was reported. If it was not, contact the unit now.");
        }

        bool IsSign(NightRecord night) => signs.Any(sign => sign.Is(night));

        string Names(IReadOnlyCollection<NightRecord> of) =>
            Wording.Capital(string.Join(", ", signs.Where(sign => of.Any(sign.Is)).Select(sign => sign.Name)));
    }

    private void ExitSite()
    {
        if (nights.LastOrDefault(night => night.Symptoms.Contains(Symptom.ExitSite)) is not { } last)
        {
            return;
        }

        if (IsNow(last))
        {
            var these = now.Where(night => night.Symptoms.Contains(Symptom.ExitSite));
            Warn(findings, "record-exit-site-now", $"Redness, pus, swelling or pain at the exit site or over the tunnel {When(these)}: compatible with an infection there, from which a peritonitis can come. Contact the unit today, and at once with fever, pain or cloudy fluid.");
        }
        else
        {
            Note(findings, "record-exit-site-past", $"Redness, pus, swelling or pain at the exit site or over the tunnel {When([last])}: history if it was reported and looked at. If it was not, contact the unit today.");
        }
    }

    // What was written earlier in the month and would have been urgent then.
    private void Past()
    {
        var past = nights.Where(night => !IsNow(night) && night.Date.DayNumber > today - NurseFindings.Month).ToList();
        List<string> what =
        [
            .. past.Where(night => night.BloodGlucose?.MillimolesPerLiter < limits.LowGlucose.Value).OrderBy(night => night.BloodGlucose!.Value.MillimolesPerLiter)
                .Take(1).Select(night => Text($"blood glucose of {night.BloodGlucose!.Value.MillimolesPerLiter:0.0} mmol/L {When([night])}")),
            .. past.SelectMany(night => new[] { night.Sitting, night.Standing }.OfType<BloodPressure>().Select(pressure => (Night: night, Pressure: pressure)))
                .Where(one => isAdult && one.Pressure.SystolicMillimetersOfMercury < limits.LowSystolic.Value).OrderBy(one => one.Pressure.SystolicMillimetersOfMercury)
                .Take(1).Select(one => $"blood pressure {one.Pressure} {When([one.Night])}"),
            .. Complaints.Select(complaint => (complaint.Name, Night: past.LastOrDefault(complaint.Is)))
                .Where(one => one.Night is not null).Select(one => $"{one.Name} {When([one.Night!])}"),
        ];
        if (what.Count > 0)
        {
            Warn(findings, "record-danger-past", $"Earlier in the last four weeks: {string.Join("; ", what)}. History if it was reported; if it was not, contact the unit now.");
        }
    }

    private void Others()
    {
        var these = now.Where(night => Complaints.Any(complaint => complaint.Is(night))).ToList();
        if (these.Count > 0)
        {
            Warn(findings, "record-symptoms-now", $"In the last {limits.NowDays.Value} days: {string.Join("; ", Complaints.Where(complaint => these.Any(complaint.Is)).Select(complaint => complaint.Name))}, {When(these)}. Stop the exchange that is going on and call the unit now, if it has not been seen.");
        }
    }

    private void Glucose()
    {
        var low = now.Where(night => night.BloodGlucose?.MillimolesPerLiter < limits.LowGlucose.Value).Reverse().ToList();
        if (low.MinBy(night => night.BloodGlucose!.Value.MillimolesPerLiter) is { } lowest)
        {
            Warn(findings, "record-glucose-low", $"Blood glucose of {lowest.BloodGlucose!.Value.MillimolesPerLiter:0.0} mmol/L on {Day(lowest)}{OfDays(low)}, below {limits.LowGlucose.Value:0.0} mmol/L. The unit's rule for a low glucose applies at once.{(NurseFindings.UsesIcodextrin(nights) ? " Icodextrin is in use: some meters read falsely high, so that it may have been lower still." : "")}");
        }

        var high = now.Where(night => night.BloodGlucose?.MillimolesPerLiter > limits.VeryHighGlucose.Value).Reverse().ToList();
        if (high.MaxBy(night => night.BloodGlucose!.Value.MillimolesPerLiter) is { } highest)
        {
            Warn(findings, "record-glucose-very-high", $"Blood glucose of {highest.BloodGlucose!.Value.MillimolesPerLiter:0.0} mmol/L on {Day(highest)}{OfDays(high)}, above {limits.VeryHighGlucose.Value:0.0} mmol/L: ask the unit today, before a strong bag is used; with vomiting, drowsiness, thirst, breathlessness or fever at once.{(NurseFindings.UsesIcodextrin(nights) ? " Icodextrin is in use: some meters read falsely high, and insulin on a false value is dangerous. Measure by another method first." : "")}");
        }
    }

    private void Pressure()
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
            Warn(findings, "record-pressure-low", $"{string.Join("; ", what)}: compatible with too much fluid removed (dried out), medicines, bleeding or an infection. Ask the unit today, before a strong bag is used; with faintness, fever or confusion at once.");
        }

        var high = readings.Where(reading => reading.Value.SystolicMillimetersOfMercury >= limits.HighSystolic.Value || reading.Value.DiastolicMillimetersOfMercury >= limits.HighDiastolic.Value)
            .OrderByDescending(reading => reading.Value.SystolicMillimetersOfMercury).ThenByDescending(reading => reading.Night.Date).ToList();
        if (high.Count > 0)
        {
            Warn(findings, "record-pressure-high", $"Blood pressure {high[0].Value} {high[0].How} on {Day(high[0].Night)}{OfDays(high.Select(reading => reading.Night))}, at or above {limits.HighSystolic.Value:0}/{limits.HighDiastolic.Value:0} mmHg: measure it again at rest and ask the unit today; with headache, chest pain, breathlessness or confusion at once.");
        }
    }

    // The last values beside those of the weeks before: the largest of them has fallen, so that one poor collection is no fall.
    private void Urine()
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
            Warn(findings, "record-urine-fall", $"Urine is {most:0} mL/day or less in the last {last.Count} values, where it was about {usual:0} in the weeks before: compatible with too much fluid removed (dried out), an obstruction, medicines, illness, or the loss of the kidneys' own function. Ask the unit.");
        }
    }

    private void Unread(IReadOnlyList<Finding> ofBook)
    {
        var firstRow = now.Min(night => night.Row);
        List<string> unread =
        [
            .. now.Where(night => !quoted.Contains(night)).SelectMany(night => new[] { night.Complaint, night.Remark }.Where(text => BookText.Of(text, night.Date, limits.PeritonitisDays.Value).HasUnread).Select(text => $"{Day(night)} {Quote(text)}")),
            .. ofBook.Where(cell => cell.Row >= firstRow && cell.Found is not null && OfTheBody.Any(column => column.Name == cell.Field)).Select(cell => Text($"{cell.Field} {Quote(cell.Found!)} in row {cell.Row}")),
        ];
        if (unread.Count > 0)
        {
            Warn(findings, "record-text-unread", $"Written in the last {limits.NowDays.Value} days and not understood here, so read it: {string.Join("; ", unread.Take(MostQuotes))}{(unread.Count > MostQuotes ? Text($"; and {unread.Count - MostQuotes} more in the book") : "")}.");
        }
    }

    // Understood, and yet no more than words: whether they speak of now only a reader can tell.
    private void SpokenOfAsPast()
    {
        var spoken = nights.Where(night => today - night.Date.DayNumber < DaysOfPage && BookText.Of(night.Words, night.Date, limits.PeritonitisDays.Value).HasPastPeritonitis).ToList();
        if (spoken.Count > 0)
        {
            Note(findings, "record-peritonitis-of-past", $"A peritonitis appears to be spoken of as past {When(spoken.TakeLast(MostQuotes))}{(spoken.Count > MostQuotes ? Text($"; and on {spoken.Count - MostQuotes} days before") : "")}: it is counted as history and leaves no night out. If it is of now, contact the unit now.");
        }
    }

    private bool IsNow(NightRecord night) => today - night.Date.DayNumber < limits.NowDays.Value;

    // "on 2025-03-30 (“fever”) and 2025-03-31 (“tummy sore”)". What one finding quotes no other repeats.
    private string When(IEnumerable<NightRecord> of) =>
        "on " + string.Join(" and ", of.ToList().Select(night => Day(night) + (quoted.Add(night) && night.Words is { Length: > 0 } words ? $" ({Quote(words)})" : "")));

    private static string OfDays(IEnumerable<NightRecord> nights) => nights.Distinct().Count() is > 1 and var days ? Text($" (the worst of {days} such days)") : "";

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
