using System.Globalization;
using MathNet.Numerics.Statistics;
using static Transport.Analysis.NurseFindings;

namespace Transport.Analysis;

/// <summary>What of the last days does not wait for a trend: complaints, an exit site, absolute values, and whatever was written and not understood.</summary>
/// <remarks>
/// What is written is quoted, each thing from the cell it stands in, so that a reader can tell a false alarm from a true one. Rows in doubt count as of their place in the book.
/// No sign here is no safety: the book holds what somebody wrote.
/// </remarks>
internal sealed class DangerSigns
{
    private const int LongestQuote = 120;
    private const int LongestRow = 300;
    private const int MostQuotes = 4;
    private const int WeeksOfUrine = 8;
    private const int FreshUrine = 14;

    // The page shows five weeks.
    private const int DaysOfPage = 35;

    // mmol/L: what meters show ends at 33.3, 600 mg/dL (memory).
    private const double MostOfMeters = 33.4;

    private readonly IReadOnlyList<NightRecord> nights;
    private readonly List<NightRecord> now;
    private readonly IReadOnlyList<Finding> ofBook;
    private readonly ReviewLimits limits;
    private readonly bool isAdult;
    private readonly double lowestSystolic;
    private readonly int today;
    private readonly bool usesIcodextrin;
    private readonly HashSet<(NightRecord Night, BookCell Cell)> quoted = [];
    private readonly Dictionary<NightRecord, List<double>> potassiumOf = new(ReferenceEqualityComparer.Instance);
    private readonly List<Finding> findings = [];
    private readonly Sign cloudy = new("cloudy fluid or peritonitis", Peritonitis.IsSign, cell => Says(cell, Symptom.CloudyFluid) || Says(cell, Symptom.StoolInFluid) || Takes(cell, BookWords.Effluent, (int)EffluentLook.Cloudy) || Takes(cell, BookWords.Effluent, (int)EffluentLook.Brown) || Takes(cell, BookWords.Peritonitis, (int)BookWords.Answer.Yes));
    private readonly Sign bloody = new("bloody fluid", night => night.Effluent == EffluentLook.Bloody || night.Symptoms.Contains(Symptom.Blood), cell => Says(cell, Symptom.Blood) || Takes(cell, BookWords.Effluent, (int)EffluentLook.Bloody));
    private readonly Sign pain = Sign.Of("pain", Symptom.AbdominalPain);
    private readonly Sign vomiting = Sign.Of("vomiting or nausea", Symptom.Vomiting);
    private readonly Sign diarrhoea = Sign.Of("diarrhoea", Symptom.Diarrhoea);
    private readonly Sign exitSite = Sign.Of("exit site", Symptom.ExitSite);
    private readonly Sign breathless = Sign.Of("breathlessness", Symptom.Breathless);
    private readonly Sign swelling = Sign.Of("swelling", Symptom.Swelling);
    private readonly Sign chest = Sign.Of("chest pain", Symptom.ChestPain);
    private readonly Sign flowPain = Sign.Of("pain on filling or draining", Symptom.FlowPain);
    private readonly Sign dry = Sign.Of("cramps, dizziness or faintness (dried out?)", Symptom.Dry);
    private readonly Sign confused = Sign.Of("confusion or drowsiness", Symptom.Confused);
    private readonly Sign head = Sign.Of("headache or disturbed sight", Symptom.HeadOrSight);
    private readonly Sign leak = Sign.Of("a leak, or a connection that came open", Symptom.Leak);
    private readonly Sign lowGlucose = Sign.Of("a low glucose", Symptom.LowGlucose);
    private readonly Sign shaky = Sign.Of("sweating, shaking, hunger or a racing heart (a low glucose?)", Symptom.Shaky);
    private readonly Sign stool = new("brown fluid, or fluid that smells of stool", Peritonitis.IsOfStool, cell => Says(cell, Symptom.StoolInFluid) || Takes(cell, BookWords.Effluent, (int)EffluentLook.Brown));
    private readonly Sign stroke = Sign.Of("slurred speech, a drooping face or a weak limb (a stroke?)", Symptom.Stroke);
    private readonly Sign collapse = Sign.Of("a fit, a collapse or a loss of consciousness", Symptom.Collapse);
    private readonly Sign gutBleeding = Sign.Of("vomited blood, or black or bloody stools", Symptom.GutBleeding);
    private readonly Sign highGlucose = Sign.Of("a very high glucose", Symptom.HighGlucose);
    private readonly Sign potassium;
    private readonly Sign nearFever;
    private readonly Sign fever;

    private DangerSigns(IReadOnlyList<NightRecord> nights, RecordBook book, Patient patient, ReviewLimits limits)
    {
        isAdult = !TargetAssessment.IsChild(patient);
        this.limits = limits;

        // Below it a child is in shock: 70 mmHg and 2 for each year, at most 90 (resuscitation guidelines, memory). Others' limits are those of adults.
        lowestSystolic = isAdult ? limits.LowSystolic.Value : Math.Min(90, 70 + 2 * patient.AgeYears);
        ofBook = book.Findings;
        fever = new("fever", night => night.Symptoms.Contains(Symptom.Fever) || night.TemperatureCelsius >= limits.Fever.Value, cell => Says(cell, Symptom.Fever) || TemperatureOf(cell) >= limits.Fever.Value);
        nearFever = new("a temperature near a fever", night => night.TemperatureCelsius >= limits.NearFever.Value, cell => TemperatureOf(cell) >= limits.NearFever.Value);
        potassium = new("potassium", night => PotassiumOf(night).Count > 0, cell => cell.IsWords && Beyond(BookText.Of(cell.Words)).Any());
        this.nights = AsOfPlace(nights, book, limits);
        this.nights = [.. this.nights.Select(night => night with { Symptoms = [.. night.Symptoms.Concat(night.OfAnother.Where(symptom => MayBeOwn(night, symptom))).Distinct()] })];
        usesIcodextrin = UsesIcodextrin(this.nights);
        today = LastDay(this.nights, book);
        now = [.. this.nights.Where(IsNow)];
    }

    /// <param name="nights">The nights by date.</param>
    /// <param name="book">The book they are of, with its rows in doubt and what could not be read.</param>
    /// <param name="patient">Whose; pressures have limits for adults only.</param>
    /// <param name="limits">The limits.</param>
    public static IReadOnlyList<Finding> Of(IReadOnlyList<NightRecord> nights, RecordBook book, Patient patient, ReviewLimits limits)
    {
        if (nights.Count == 0 && book.RowsInDoubt.Count == 0)
        {
            return [];
        }

        var signs = new DangerSigns(nights, book, patient, limits);
        signs.Emergency();
        signs.Sepsis();
        signs.Cloudy();
        signs.PainOrFever();
        signs.ExitSite();
        signs.Leak();
        signs.Others();
        signs.OfLaboratory();
        signs.Glucose();
        signs.HighByWords();
        signs.Pressure();

        signs.Dates(book);
        signs.Lost();
        signs.Urine();
        signs.Past();
        signs.Unread();
        signs.SpokenOfAsPast();
        return signs.findings;
    }

    /// <summary>The words of a night in which a symptom stands, quoted; empty where none are written.</summary>
    public static string Quoted(NightRecord night, Symptom symptom) => string.Join("; ", CellsOf(night).Where(cell => Says(cell, symptom)).Select(Quote));

    /// <summary>What nobody wrote these days and so nobody looked at, in sentences.</summary>
    public static string NotLookedAt(IReadOnlyList<NightRecord> nights, RecordBook book, Patient patient, ReviewLimits limits)
    {
        var all = AsOfPlace(nights, book, limits);
        var now = all.Where(night => LastDay(all, book) - night.Date.DayNumber <= limits.NowDays.Value).ToList();
        (string Name, Func<NightRecord, bool> Is, BookColumn? Column)[] parts =
        [
            ("the look of the fluid", night => night.Effluent is not null, BookWords.Effluent),
            ("complaints", night => night.Complaint.Length > 0 || !night.Symptoms.IsEmpty || NotUnderstood(night).Length > 0, null),
            ("temperature", night => night.TemperatureCelsius is not null, BookWords.Temperature),
            ("blood pressure", night => night.Sitting is not null, BookWords.Sitting),
            ("blood pressure standing", night => night.Standing is not null, BookWords.Standing),
            ("pulse", night => night.PulsePerMinute is not null, BookWords.Pulse),
            ("blood glucose", night => night.BloodGlucose is not null, BookWords.BloodGlucose),
            ("urine", night => night.Urine is not null, BookWords.Urine),
            ("weight", night => night.Weight is not null, BookWords.Weight),
        ];

        // What is written and cannot be read is written.
        var missing = parts.Where(part => !now.Exists(night => part.Is(night) || night.Cells.Any(cell => cell.Column == part.Column?.Name))).Select(part => part.Name).ToList();
        var lost = now.Where(night => night.IsLost).Select(night => Text($"{night.Row}")).ToList();
        var days = Text($"in the last {limits.NowDays.Value} days");
        return (missing.Count == 0 ? "" : lost.Count == 0
                ? $"Not written {days}, so not looked at: {string.Join(", ", missing)}. "
                : $"Not looked at, because not written {days} or not to be told apart in row {string.Join(", ", lost.Take(MostQuotes))}{(lost.Count > MostQuotes ? " and others" : "")}: {string.Join(", ", missing)}. ")
            + (TargetAssessment.IsChild(patient) ? "A low blood pressure is judged by age, a high one and the pulse are not: their limits are those of adults. " : "")
            + "The exit site is never looked at where nobody writes of it.";
    }

    // A book may be kept by another: whoever writes of a daughter keeps the book of one, and of a husband's what cannot wait, or stands beside a low pressure, is taken for the patient's.
    private bool MayBeOwn(NightRecord night, Symptom symptom) => !isAdult || symptom is Symptom.ChestPain or Symptom.Breathless or Symptom.Confused or Symptom.LowGlucose or Symptom.Stroke or Symptom.Collapse or Symptom.GutBleeding
        || new[] { night.Sitting, night.Standing }.Any(pressure => pressure is { } measured && IsLow(measured));

    // A row in doubt takes the place of the night that its own date made of it.
    private static IReadOnlyList<NightRecord> AsOfPlace(IReadOnlyList<NightRecord> nights, RecordBook book, ReviewLimits limits)
    {
        var rows = book.RowsInDoubt.Select(row => row.Row).ToHashSet();
        return [.. nights.Where(night => !rows.Contains(night.Row)).Concat(Peritonitis.Read(book.RowsInDoubt, limits)).OrderBy(night => night.Date).ThenBy(night => night.Row)];
    }

    private static int LastDay(IReadOnlyList<NightRecord> all, RecordBook book) => (book.LastDay ?? (all.Count > 0 ? all[^1].Date : default)).DayNumber;

    // What is for the emergency service before anybody else.
    private void Emergency()
    {
        var these = Present(stroke, collapse);
        if (these.Length > 0)
        {
            Warn(findings, "record-emergency-now", $"{Wording.Capital(string.Join("; ", these.Select(sign => sign.Name)))} {When(now, these)}: the emergency service comes first, at once, if it has not been seen; then the unit. Note when it began. A low blood glucose can look the same: measure it if that costs no time.{(usesIcodextrin ? " Icodextrin is in use or was lately: some meters read falsely high and hide it." : "")}");
        }
    }

    private void OfLaboratory()
    {
        if (Present(potassium).Length > 0)
        {
            var values = now.SelectMany(PotassiumOf).Distinct().ToList();
            Warn(findings, "record-potassium-now", $"Potassium of {Wording.List([.. values.Select(value => Text($"{value:0.0}"))])} {When(now, potassium)}, taken as mmol/L, {(values.Exists(value => value >= limits.HighPotassium.Value) ? Text($"at or above {limits.HighPotassium.Value:0.0}") : "")}{(values.Select(value => value >= limits.HighPotassium.Value).Distinct().Count() > 1 ? " and " : "")}{(values.Exists(value => value < limits.LowPotassium.Value) ? Text($"below {limits.LowPotassium.Value:0.0}") : "")}: the heart can fail without a warning. Contact the unit now, whatever the hour, if it does not know of it; with weakness, palpitations, faintness or pain in the chest the emergency service.");
        }
    }

    // Read once of each night: several signs ask.
    private List<double> PotassiumOf(NightRecord night)
    {
        if (!potassiumOf.TryGetValue(night, out var values))
        {
            potassiumOf.Add(night, values = [.. Beyond(BookText.Of(night.Words, night.Day))]);
        }

        return values;
    }

    private IEnumerable<double> Beyond(BookText text) => text.Potassium.Where(value => value >= limits.HighPotassium.Value || value < limits.LowPotassium.Value);

    // Fever with a low pressure is not a fever and a low pressure.
    private void Sepsis()
    {
        var infection = Present(cloudy, fever, pain);
        var low = Low().Take(1).Select(one => Text($"a blood pressure of {one.Value} {one.How} {On(one.Night)}"));
        var falls = isAdult ? Falls().TakeLast(1).Select(one => Text($"a fall of blood pressure from {one.Row.Sitting} sitting to {one.Row.Standing} standing {On(one.Night)}")) : [];
        string[] failing = [.. low, .. falls, .. Present(confused, collapse).Select(sign => $"{sign.Name} {When(now, sign)}")];
        if (infection.Length > 0 && failing.Length > 0)
        {
            Warn(findings, "record-sepsis-now", $"{Wording.Capital(Names(infection))} {When(now, infection)}, and in the same days {Wording.List(failing)}: together compatible with an infection that has spread through the body (sepsis), one emergency and not several. Contact the unit or the hospital at once, whatever the hour, and keep the bag; the local protocol for sepsis rules.");
        }
    }

    private void Cloudy()
    {
        if (nights.LastOrDefault(cloudy.Is) is not { } last)
        {
            return;
        }

        var ago = today - last.Date.DayNumber;
        if (IsNow(last))
        {
            var ofStool = Present(stool).Length > 0 ? $" {Wording.Capital(stool.Name)} {When(now, stool)}: compatible with a bowel or gall bladder that has opened into the belly, for a surgeon too. Contact the unit or the hospital at once, whatever the hour, before anything is filled in." : "";
            var isOfStoolAlone = now.Where(cloudy.Is).All(stool.Is);
            Warn(findings, "record-cloudy-now", $"{(isOfStoolAlone ? ofStool.TrimStart() + " Keep" : $"Cloudy fluid or peritonitis {When(now, cloudy)}. Contact the unit now and keep")} the bag; peritonitis until shown otherwise.{(isOfStoolAlone ? "" : ofStool)} No number on this page speaks against it.");
        }
        else
        {
            Note(findings, "record-cloudy-past", $"Cloudy {(stool.Is(last) ? "or brown " : "")}fluid or peritonitis {When([last], cloudy)}, {ago} days before the last night written: history if it was reported and treated. If it was not, contact the unit now.");
        }

        if (nights.LastOrDefault(night => cloudy.Is(night) && !night.IsOfAnother) is { Day: not null } own && today - own.Date.DayNumber <= limits.PeritonitisDays.Value)
        {
            var first = nights.Where(night => cloudy.Is(night) && !night.IsOfAnother && night.Day is not null).Reverse().Aggregate(own, (since, night) => since.Date.DayNumber - night.Date.DayNumber <= limits.PeritonitisDays.Value ? night : since);
            Note(findings, "record-peritonitis-weeks", $"Nights from {Day(first)} on are left out of the charts, until {limits.PeritonitisDays.Value} days after {Day(own)}: ultrafiltration falls and transfer rises for weeks after a peritonitis.{(Peritonitis.IsOfWordsAlone(own) ? " It is counted by its words alone: if they speak of an older one, write month and year beside it." : "")}");
        }
    }

    private void PainOrFever()
    {
        Sign[] signs = [pain, fever, vomiting, diarrhoea];
        NearFever(signs);
        if (nights.LastOrDefault(night => Array.Exists(signs, sign => sign.Is(night))) is not { } last)
        {
            return;
        }

        if (IsNow(last))
        {
            Warn(findings, "record-pain-or-fever-now", $"{Wording.Capital(Names(Present(signs)))} {When(now, signs)}, whatever the fluid looks like: about one peritonitis in ten begins with few cells. Contact the unit now and keep the bag.");
        }
        else
        {
            Note(findings, "record-pain-or-fever-past", $"{Wording.Capital(Names([.. signs.Where(sign => sign.Is(last))]))} {When([last], signs)}: history if it was reported. If it was not, contact the unit now.");
        }
    }

    // Below a fever, and yet not nothing where it lasts or stands beside a complaint.
    private void NearFever(Sign[] signs)
    {
        var near = now.Where(nearFever.Is).ToList();
        if (near.Count == 0 || Present(fever).Length > 0)
        {
            return;
        }

        var beside = Present([.. signs, cloudy, exitSite, shaky]);
        var unread = string.Join("; ", near.Select(NotUnderstood).Where(words => words.Length > 0));
        if (near.Count > 1 || beside.Length > 0 || unread.Length > 0)
        {
            Warn(findings, "record-pain-or-fever-now", $"A temperature near a fever, at most {near.Max(night => night.TemperatureCelsius):0.0} °C, {When(now, nearFever)}{(beside.Length > 0 ? $", and {Names(beside)} in these days" : "")}{(unread.Length > 0 ? $", with words beside it ({unread})" : "")}: an infection can begin so, and medicines against pain lower it. Look at the bag and the exit site, measure again, and ask the unit {(beside.Length > 0 ? "now" : "today; at once with pain, chills or a cloudy bag")}.");
        }
    }

    /// <summary>Words of a night that nobody understood, quoted; empty where there are none.</summary>
    public static string NotUnderstood(NightRecord night) => string.Join("; ", CellsOf(night).Where(cell => cell.IsWords && BookText.Of(cell.Words, night.Day).HasUnread).Take(MostQuotes).Select(Quote));

    private void ExitSite()
    {
        if (nights.LastOrDefault(exitSite.Is) is not { } last)
        {
            return;
        }

        if (IsNow(last))
        {
            Warn(findings, "record-exit-site-now", $"Redness, pus, swelling or pain at the exit site or over the tunnel {When(now, exitSite)}: compatible with an infection there, from which a peritonitis can come. Contact the unit {AtOnce("today, and at once with fever, pain or cloudy fluid", fever, pain, cloudy)}.");
        }
        else
        {
            Note(findings, "record-exit-site-past", $"Redness, pus, swelling or pain at the exit site or over the tunnel {When([last], exitSite)}: history if it was reported and looked at. If it was not, contact the unit today.");
        }
    }

    private void Leak()
    {
        if (Present(leak).Length > 0)
        {
            Warn(findings, "record-exit-site-now", $"A leak, a wet dressing, fluid at the exit site or a connection that came open or was touched {When(now, leak)}: compatible with dialysis fluid that runs out beside the catheter, or with a way in for germs. Keep it clamped and contact the unit {AtOnce("today, before the next fill, and at once with fever, pain or cloudy fluid", fever, pain, cloudy)}.");
        }
    }

    private Sign[] Complaints => [chest, breathless, gutBleeding, swelling, flowPain, dry, confused, bloody];

    // What was written earlier in the month and would have been urgent then.
    private void Past()
    {
        var past = nights.Where(night => !IsNow(night) && night.Date.DayNumber > today - Month).ToList();
        List<string> what =
        [
            .. Glucoses(past).Where(one => one.Value < limits.LowGlucose.Value).OrderBy(one => one.Value)
                .Take(1).Select(one => Text($"blood glucose of {one.Value:0.0} mmol/L {On(one.Night)}{Beside(one.Night)}{LaterGlucose(one, ", ")}")),
            .. Pressures(past).Where(one => IsLow(one.Value)).OrderBy(one => one.Value.SystolicMillimetersOfMercury)
                .Take(1).Select(one => $"blood pressure {one.Value} {On(one.Night)}{Beside(one.Night)}{LaterPressure(one, ", ")}"),
            .. Complaints.Concat([stroke, collapse, potassium, leak, lowGlucose, highGlucose]).Concat(usesIcodextrin ? [shaky] : []).Select(complaint => (Complaint: complaint, Night: past.LastOrDefault(complaint.Is)))
                .Where(one => one.Night is not null).Select(one => $"{one.Complaint.Name} {When([one.Night!], one.Complaint)}"),
        ];
        if (what.Count > 0)
        {
            Warn(findings, "record-danger-past", $"Earlier in the last four weeks: {string.Join("; ", what)}. History if it was reported; if it was not, contact the unit now.");
        }
    }

    private void Others()
    {
        var these = Present(Complaints);
        if (these.Length > 0)
        {
            var isAllergic = now.Exists(night => (swelling.Is(night) || breathless.Is(night)) && BookText.IsOfAllergy(night.Words));
            Warn(findings, "record-symptoms-now", $"In the last {limits.NowDays.Value} days: {string.Join("; ", these.Select(sign => sign.Name))}, {When(now, these)}. {(these.Contains(chest) ? "For pain in the chest the emergency service comes first, at once; then stop the exchange that is going on and call the unit, if it has not been seen." : isAllergic ? "A swollen face, lip, tongue or throat with a rash or trouble in breathing is for the emergency service first, at once (allergy?); then stop the exchange that is going on and call the unit, if it has not been seen." : "Stop the exchange that is going on and call the unit now, if it has not been seen.")}{(these.Contains(gutBleeding) ? " Vomited blood or black stools can be a bleeding of stomach or bowel (iron tablets blacken stools too): with faintness, a low pressure or much blood the emergency service comes first." : "")}{(Present(confused, dry).Length > 0 && usesIcodextrin ? " Icodextrin is in use or was lately: a low glucose can feel like this and some meters hide it; measure by another method." : "")}");
        }
    }

    private void Glucose()
    {
        var values = Glucoses(now).Reverse().ToList();
        var low = values.Where(one => one.Value < limits.LowGlucose.Value).ToList();
        if (low.Count > 0)
        {
            var lowest = low.MinBy(one => one.Value);
            Warn(findings, "record-glucose-low", $"Blood glucose of {lowest.Value:0.0} mmol/L {On(lowest.Night)}{OfDays(low.Select(one => one.Night))}, below {limits.LowGlucose.Value:0.0} mmol/L{LaterGlucose(lowest)}.{(Present(lowGlucose).Length > 0 ? $" A low one is also told {When(now, lowGlucose)}." : "")} The unit's rule for a low glucose applies at once.{(usesIcodextrin ? " Icodextrin is in use or was lately: some meters read falsely high, so that it may have been lower still." : "")}");
        }
        else if (Present(lowGlucose).Length > 0)
        {
            Warn(findings, "record-glucose-low", $"A low blood glucose {When(now, lowGlucose)}, {LowInWords()}. The unit's rule for a low glucose applies at once, until it is measured.{(usesIcodextrin ? " Icodextrin is in use or was lately: some meters read falsely high; measure by a method specific for glucose." : "")}");
        }
        else if (usesIcodextrin && Present(shaky).Length > 0)
        {
            var beside = values.OrderByDescending(one => shaky.Is(one.Night)).Take(1).Select(one => Text($" (written: {one.Value:0.0} mmol/L {On(one.Night)})"));
            Warn(findings, "record-glucose-low", $"Sweating, shaking, hunger or a racing heart {When(now, shaky)}, and icodextrin is in use or was lately: compatible with a low blood glucose that a meter hides, since some read falsely high then{string.Concat(beside)}. Measure at once by a method specific for glucose (such a meter, or the laboratory) and ask the unit, whose rule for a low glucose applies until it is known; insulin on a false value is dangerous. Shaking may be a chill of infection as well: look at temperature and bag.");
        }

        // More than meters show, and where other values of the book can be in the other unit alone.
        var isOtherUnit = ofBook.Any(finding => finding.Field == BookWords.BloodGlucose.Name && finding.Severity != Severity.Note);
        var doubtful = values.Where(one => one.Value > (isOtherUnit ? limits.VeryHighGlucose.Value : MostOfMeters)).ToList();
        if (doubtful.Count > 0)
        {
            var lowest = doubtful.MinBy(one => one.Value);
            var inMilligrams = lowest.Value / (Solutes.Glucose.MolarMassGramsPerMole / 10);
            Warn(findings, "record-glucose-low", $"Blood glucose of {lowest.Value:0.#} {On(lowest.Night)}, taken as mmol/L, is more than a meter shows or stands among values that can be mg/dL alone: in mg/dL it is {inMilligrams:0.0} mmol/L{(inMilligrams < limits.LowGlucose.Value ? ", which is low" : "")}. Measure again at once and look at the unit; the unit's rule for a low glucose applies until it is known, and no insulin is given on this number.");
        }

        var high = values.Except(doubtful).Where(one => one.Value > limits.VeryHighGlucose.Value).ToList();
        if (high.Count > 0)
        {
            var highest = high.MaxBy(one => one.Value);
            Warn(findings, "record-glucose-very-high", $"Blood glucose of {highest.Value:0.0} mmol/L {On(highest.Night)}{OfDays(high.Select(one => one.Night))}, above {limits.VeryHighGlucose.Value:0.0} mmol/L{LaterGlucose(highest)}: ask the unit {AtOnce("today, before a strong bag is used; with vomiting, drowsiness, thirst, breathlessness or fever at once", vomiting, confused, breathless, fever)}.{(usesIcodextrin ? " Icodextrin is in use or was lately: some meters read falsely high, and insulin on a false value is dangerous. Measure by another method first." : "")}");
        }
    }

    // What of a low glucose is written as a number among words.
    private string LowInWords()
    {
        var text = now.Select(night => BookText.Of(night.Words, night.Day)).ToList();
        List<double> low = [.. text.SelectMany(words => words.Glucose).Where(value => value < limits.LowGlucose.Value)], inDoubt = [.. text.SelectMany(words => words.GlucoseInDoubt)];
        return (low.Count > 0 ? Text($"read as {low.Min():0.0} mmol/L") : inDoubt.Count == 0 ? Text($"without a value below {limits.LowGlucose.Value:0.0} mmol/L") : "")
            + (low.Count > 0 && inDoubt.Count > 0 ? "; and " : "")
            + (inDoubt.Count > 0 ? Text($"{inDoubt[^1]:0} without its unit is either very low (in mg/dL) or very high (in mmol/L): look at the unit and measure again, and no insulin is given on this number") : "");
    }

    // A meter that shows HI has no number: it is above all that meters show (memory).
    private void HighByWords()
    {
        if (Present(highGlucose).Length > 0)
        {
            // A number that is read is said; HI has none.
            var texts = now.Where(highGlucose.Is).Select(night => BookText.Of(night.Words, night.Day)).ToList();
            List<double> ofNumbers = [.. texts.SelectMany(text => text.Glucose).Where(value => value > BookText.VeryHighMillimoles).OrderDescending()];
            var isOfHi = texts.Exists(text => !text.Glucose.Any(value => value > BookText.VeryHighMillimoles));
            Warn(findings, "record-glucose-very-high", $"A very high blood glucose {When(now, highGlucose)}: {string.Join("; ", ofNumbers.Take(1).Select(value => Text($"read as {value:0.0} mmol/L")).Concat(isOfHi ? [$"a meter that shows HI is above all that it can measure (about {MostOfMeters:0} mmol/L or 600 mg/dL)"] : []))}. Measure again with clean hands and ask the unit {AtOnce("now, before a strong bag is used; with vomiting, drowsiness, thirst, breathlessness or fever the emergency service", vomiting, confused, breathless, fever)}.{(usesIcodextrin ? " Icodextrin is in use or was lately: some meters read falsely high, and insulin on a false value is dangerous. Measure by another method first." : "")}");
        }
    }

    private void Pressure()
    {
        var (low, falls) = (Low(), isAdult ? Falls() : []);
        if (low.Count > 0 || falls.Count > 0)
        {
            string[] what =
            [
                .. low.Take(1).Select(one => Text($"Blood pressure {one.Value} {one.How} {On(one.Night)}{OfDays(low.Select(reading => reading.Night))}, below {lowestSystolic:0} mmHg systolic{(isAdult ? "" : " at this age")}{LaterPressure(one)}")),
                .. falls.TakeLast(1).Select(one => Text($"{(low.Count > 0 ? "from" : "Blood pressure from")} {one.Row.Sitting} sitting to {one.Row.Standing} standing {On(one.Night)}, a fall of {limits.StandingDrop.Value:0} mmHg or more")),
            ];
            Warn(findings, "record-pressure-low", $"{string.Join("; ", what)}: compatible with too much fluid removed (dried out), medicines, bleeding or an infection. {(isAdult ? "Ask the unit " + AtOnce("today, before a strong bag is used; with faintness, fever or confusion at once", dry, fever, cloudy, pain, confused) : "Contact the unit or the emergency service at once")}.");
        }

        var high = Pressures(now).Where(one => IsHigh(one.Value))
            .OrderByDescending(one => one.Value.SystolicMillimetersOfMercury).ThenByDescending(one => one.Night.Date).ToList();
        if (high.Count > 0)
        {
            var harmed = Present(head, chest, breathless, confused, stroke, collapse);
            var what = Text($"Blood pressure {high[0].Value} {high[0].How} {On(high[0].Night)}{OfDays(high.Select(reading => reading.Night))}, at or above {limits.HighSystolic.Value:0}/{limits.HighDiastolic.Value:0} mmHg{LaterPressure(high[0])}");
            if (harmed.Length > 0)
            {
                Warn(findings, "record-pressure-emergency", $"{what}, and in the same days {Names(harmed)} {When(now, harmed)}: together compatible with a pressure that harms brain, eyes, heart or lungs (hypertensive emergency). Contact the unit or the emergency service at once.");
            }
            else
            {
                Warn(findings, "record-pressure-high", $"{what}: measure it again at rest and ask the unit today; with headache, disturbed sight, chest pain, breathlessness or confusion at once.");
            }
        }
    }

    private bool IsLow(BloodPressure pressure) => pressure.SystolicMillimetersOfMercury < lowestSystolic;

    // Limits are those of adults.
    private bool IsHigh(BloodPressure pressure) =>
        isAdult && (pressure.SystolicMillimetersOfMercury >= limits.HighSystolic.Value || pressure.DiastolicMillimetersOfMercury >= limits.HighDiastolic.Value);

    private List<Reading<BloodPressure>> Low() =>
    [
        .. Pressures(now).Where(one => IsLow(one.Value))
            .OrderBy(one => one.Value.SystolicMillimetersOfMercury).ThenByDescending(one => one.Night.Date),
    ];

    private List<(NightRecord Night, NightRecord Row)> Falls() =>
    [
        .. now.SelectMany(night => night.Rows.Select(row => (Night: night, Row: row)))
            .Where(one => one.Row.Sitting?.SystolicMillimetersOfMercury - one.Row.Standing?.SystolicMillimetersOfMercury >= limits.StandingDrop.Value),
    ];

    // A date that does not fit its place may hide what is of today, and a row beside it too.
    private void Dates(RecordBook book)
    {
        var twice = ofBook.Where(found => found.Code == "book-night-twice").Select(found => found.Row).ToHashSet();
        List<(int Row, string Why)> what = [];
        foreach (var night in nights.Where(night => today - night.Date.DayNumber < DaysOfPage))
        {
            if (night.Doubt.Length > 0 && !night.IsLost)
            {
                what.Add((night.Row, night.Doubt));
            }

            what.AddRange(night.OtherRows.Where(other => twice.Contains(other.Row)).Select(other => (other.Row, Text($"row {other.Row}, whose date stands in a row above too"))));
        }

        if (what.Count == 0)
        {
            return;
        }

        var rows = what.Select(one => one.Row).ToHashSet();
        what = [.. what.DistinctBy(one => one.Why)];
        var isDanger = nights.Any(night => night.Rows.Any(row => rows.Any(doubt => Math.Abs(doubt - row.Row) <= 1)) && IsDanger(night));
        var list = $"{string.Join("; ", what.TakeLast(MostQuotes).Select(one => one.Why))}{(what.Count > MostQuotes ? Text($"; and {what.Count - MostQuotes} before") : "")}";
        if (isDanger)
        {
            Warn(findings, "record-date-doubtful-now", $"A date is in doubt beside something that may be an emergency: {list}. Such a row counts here as of its place among the others. Ask on which day it was; if it may be of these days, contact the unit now.");
        }
        else
        {
            Warn(findings, "record-date-doubtful", $"A date is in doubt: {list}. What the row says of the body counts here as of its place among the others. Ask on which day it was, and correct the book.");
        }
    }

    private void Lost()
    {
        var lost = now.Where(night => night.IsLost).ToList();
        if (lost.Count > 0)
        {
            Warn(findings, "record-row-lost", $"Read in part only, so read it: {string.Join("; ", lost.TakeLast(MostQuotes).Select(night => night.Doubt + (night.Remark.Length > 0 ? $" ({Quote(night.Remark, LongestRow)})" : "")))}{(lost.Count > MostQuotes ? Text($"; and {lost.Count - MostQuotes} rows before") : "")}. Words of danger were looked for in all cells, numbers where their column is certain.");
        }
    }

    private bool IsDanger(NightRecord night) => Complaints.Concat([cloudy, pain, fever, vomiting, diarrhoea, exitSite]).Any(sign => sign.Is(night))
        || new[] { stroke, collapse, potassium, highGlucose }.Any(sign => sign.Is(night)) || leak.Is(night) || lowGlucose.Is(night) || usesIcodextrin && shaky.Is(night) || Glucoses([night]).Any(one => one.Value < limits.LowGlucose.Value || one.Value > limits.VeryHighGlucose.Value)
        || Pressures([night]).Any(one => IsLow(one.Value) || IsHigh(one.Value));

    // The last values beside those of the weeks before: the largest of them has fallen, so that one poor collection is no fall.
    private void Urine()
    {
        var written = nights.Where(night => !night.IsLost && night.Urine is not null && night.Date.DayNumber > today - FreshUrine - 7 * WeeksOfUrine).ToList();
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

    private void Unread()
    {
        var left = now.Where(night => !night.IsLost).SelectMany(night => CellsOf(night).Where(cell => cell.IsWords && !quoted.Contains((night, cell)))
                .Select(cell => (Where: $"{Where(night)} {Quote(cell)}", Text: BookText.Of(cell.Words, night.Day, limits.PeritonitisDays.Value)))).ToList();
        List<string> unread = [.. left.Where(cell => cell.Text.HasUnread && cell.Text.OfAnother.IsEmpty).Select(cell => cell.Where)];
        if (unread.Count > 0)
        {
            Warn(findings, "record-text-unread", $"Written in the last {limits.NowDays.Value} days and not judged here, so read it: {string.Join("; ", unread.TakeLast(MostQuotes))}{(unread.Count > MostQuotes ? Text($"; and {unread.Count - MostQuotes} more of these days") : "")}.");
        }

        List<string> ofOthers = [.. left.Where(cell => !cell.Text.OfAnother.IsEmpty).Select(cell => cell.Where)];
        if (ofOthers.Count > 0)
        {
            Warn(findings, "record-text-unread", $"A complaint of somebody else, as it appears, so read it: {string.Join("; ", ofOthers)}. If the patient is meant, as where another keeps the book, contact the unit now.");
        }
    }

    // Understood, and yet no more than words: whether they speak of now only a reader can tell.
    private void SpokenOfAsPast()
    {
        var spoken = nights.Where(night => today - night.Date.DayNumber < DaysOfPage && BookText.Of(night.Words, night.Day, limits.PeritonitisDays.Value).HasPastPeritonitis && !Peritonitis.IsSign(night)).ToList();
        var over = nights.Where(night => today - night.Date.DayNumber < DaysOfPage && BookText.Of(night.Words, night.Day).HasPastComplaint && !IsAlarmed(night)).ToList();
        if (over.Count > 0)
        {
            Sign complaint = new("", _ => true, cell => cell.IsWords && !BookText.Of(cell.Words).Symptoms.IsEmpty);
            Note(findings, "record-complaint-of-past", $"A complaint appears to be spoken of as over {When([.. over.TakeLast(MostQuotes)], complaint)}{(over.Count > MostQuotes ? Text($"; and on {over.Count - MostQuotes} days before") : "")}: it is counted as history. If it is of now, contact the unit now.");
        }

        if (spoken.Count > 0)
        {
            Sign past = new("", _ => true, cell => cell.IsWords && BookText.Of(cell.Words).Symptoms.Contains(Symptom.CloudyFluid));
            Note(findings, "record-peritonitis-of-past", $"A peritonitis appears to be spoken of as past {When([.. spoken.TakeLast(MostQuotes)], past)}{(spoken.Count > MostQuotes ? Text($"; and on {spoken.Count - MostQuotes} days before") : "")}: it is counted as history and leaves no night out. If it is of now, contact the unit now.");
        }
    }

    // What a row in doubt says is of now, although a certain one would speak of history.
    private static bool IsAlarmed(NightRecord night) => night.IsLost && BookText.Of(night.Words) is var ofNow && ofNow.Symptoms.Except(BookText.Of(night.Words, night.Day).Symptoms).Any(night.Symptoms.Contains);

    private bool IsNow(NightRecord night) => today - night.Date.DayNumber <= limits.NowDays.Value;

    private Sign[] Present(params Sign[] signs) => [.. signs.Where(sign => now.Exists(night => sign.Is(night)))];

    // What waits until today does not wait where one of these stands beside it.
    private string AtOnce(string otherwise, params Sign[] signs) => Present(signs) is { Length: > 0 } present ? $"at once, because of {Wording.List([.. present.Select(sign => sign.Name.Split(" (")[0])])} in these days" : otherwise;

    private static string Names(Sign[] signs) => Wording.List([.. signs.Select(sign => sign.Name)]);

    // "on 2025-03-30 (“fever”) and 2025-03-31 (effluent “cloudy”)": of each day the cells in which it stands.
    private string When(IReadOnlyList<NightRecord> of, params Sign[] signs)
    {
        var these = of.Where(night => Array.Exists(signs, sign => sign.Is(night))).ToList();
        var days = these.TakeLast(MostQuotes + (int)limits.NowDays.Value).Select((night, at) =>
        {
            BookCell[] cells = [.. CellsOf(night).Where(cell => Array.Exists(signs, sign => sign.Is(night) && sign.In(cell)))];
            cells = cells.Length == 0 && night.Cells.IsEmpty ? [.. CellsOf(night)] : cells;
            quoted.UnionWith(cells.Take(MostQuotes).Where(cell => Quote(cell.Text) == Quote(cell.Text, int.MaxValue)).Select(cell => (night, cell)));
            var measured = cells.Length == 0 && signs.Contains(fever) && night.TemperatureCelsius is { } celsius && celsius >= limits.Fever.Value ? Text($" ({celsius:0.0} °C)") : "";
            return (at == 0 || night.Doubt.Length > 0 ? On(night) : Day(night)) + (cells.Length > 0 ? $" ({string.Join("; ", cells.Take(MostQuotes).Select(Quote))})" : measured);
        });
        return string.Join(" and ", days);
    }

    // The words that stand beside a number.
    private static string Beside(NightRecord night)
    {
        BookCell[] words = [.. CellsOf(night).Where(cell => cell.IsWords)];
        return words.Length == 0 || night.IsLost ? "" : $" (written beside it: {string.Join("; ", words.Select(Quote))})";
    }

    // Of a night that was not read from a file there are the words alone.
    private static IEnumerable<BookCell> CellsOf(NightRecord night) => !night.Cells.IsEmpty ? night.Cells
        : new[] { (BookWords.Symptoms, night.Complaint), (BookWords.Remark, night.Remark) }.Where(words => words.Item2.Length > 0).Select(words => new BookCell(words.Item1.Name, words.Item2, true));

    private static IEnumerable<Reading<double>> Glucoses(IEnumerable<NightRecord> of) =>
        of.SelectMany(night => night.Rows.Where(row => row.BloodGlucose is not null).Select(row => new Reading<double>(night, row.Row, row.BloodGlucose!.Value.MillimolesPerLiter, "")));

    private static IEnumerable<Reading<BloodPressure>> Pressures(IEnumerable<NightRecord> of) => of.SelectMany(night => night.Rows.SelectMany(row => new[]
    {
        (Pressure: row.Sitting, How: "sitting"), (Pressure: row.Standing, How: "standing"),
    }.Where(one => one.Pressure is not null).Select(one => new Reading<BloodPressure>(night, row.Row, one.Pressure!.Value, one.How))));

    private string LaterGlucose(Reading<double> reading, string before = "; ") => Later(before, reading, Glucoses(nights), last => Text($"{last.Value:0.0} mmol/L"));

    private string LaterPressure(Reading<BloodPressure> reading, string before = "; ") => Later(before, reading, Pressures(nights).Where(one => one.How == reading.How), last => last.Value.ToString());

    // Whether it has been measured again, which is the first thing that anybody asks.
    private string Later<T>(string before, Reading<T> reading, IEnumerable<Reading<T>> all, Func<Reading<T>, string> words)
    {
        var later = all.Where(one => (one.Night.Date, one.Row).CompareTo((reading.Night.Date, reading.Row)) > 0).ToList();
        return later.Count > 0 ? $"{before}the last written after it is {words(later[^1])} {On(later[^1].Night)}" : reading.Night.Date.DayNumber < today ? $"{before}no later value is written" : "";
    }

    private static string OfDays(IEnumerable<NightRecord> nights) => nights.Distinct().Count() is > 1 and var days ? Text($" (the worst of {days} such days)") : "";

    private static bool Says(BookCell cell, Symptom symptom) => cell.IsWords && BookText.Of(cell.Words) is var text && (text.Symptoms.Contains(symptom) || text.OfAnother.Contains(symptom));

    private static bool Takes(BookCell cell, BookColumn column, int value) =>
        !cell.IsWords && cell.Column == column.Name && column.Words!.TryGetValue(SheetWords.Normal(cell.Text), out var taken) && taken == value;

    private static double? TemperatureOf(BookCell cell) =>
        cell.Column == BookWords.Temperature.Name ? BookCells.Celsius(cell.Text) : cell.IsWords ? BookText.Of(cell.Words).TemperatureCelsius : null;

    // Free words stand for themselves; of another cell its column is named.
    private static string Quote(BookCell cell) => (cell.Column.Length == 0 || cell.Column == BookWords.Symptoms.Name || cell.Column == BookWords.Remark.Name ? "" : cell.Column + " ") + Quote(cell.Text)
        + (cell.Column == BookWords.Temperature.Name && BookCells.Celsius(cell.Text) is { } celsius && BookText.Numbers(cell.Text).Any(BookText.IsFahrenheit) ? Text($", {(BookCells.IsFahrenheitByItsSize(cell.Text) ? "read as °F, " : "")}{celsius:0.0} °C") : "");

    private static string Quote(string text, int longest = LongestQuote)
    {
        var plain = string.Join(' ', text.Split((char[]?)null, StringSplitOptions.RemoveEmptyEntries));
        return $"“{(plain.Length <= longest ? plain : plain[..(char.IsHighSurrogate(plain[longest - 1]) ? longest - 1 : longest)].TrimEnd() + " …")}”";
    }

    private static string On(NightRecord night) => (night.Doubt.Length > 0 ? "in " : "on ") + Where(night);

    // Why it is in doubt has a finding of its own.
    private static string Where(NightRecord night) => night.Doubt.Length == 0 ? Day(night) : Text($"row {night.Row}{(night.IsLost ? ", which could be read only in part" : " of doubtful date")}");

    private static string Text(FormattableString message) => message.ToString(CultureInfo.InvariantCulture);

    // What may be found of a night, and in which of its cells it stands.
    private sealed record Sign(string Name, Func<NightRecord, bool> Is, Func<BookCell, bool> In)
    {
        public static Sign Of(string name, Symptom symptom) => new(name, night => night.Symptoms.Contains(symptom), cell => Says(cell, symptom));
    }

    private readonly record struct Reading<T>(NightRecord Night, int Row, T Value, string How);
}
