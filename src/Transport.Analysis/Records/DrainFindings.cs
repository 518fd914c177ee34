using static System.FormattableString;
using static Transport.Analysis.NurseFindings;

namespace Transport.Analysis;

/// <summary>What drains left behind, and how full the cavity may have been for it.</summary>
internal static class DrainFindings
{
    // A drain that brings less than this share of what went in has all but stopped (choice).
    internal const double StoppedShare = 0.25;

    // Of exchanges by hand, whose long dwells take fluid up, a drain below this share is low (choice).
    private const double HandDrainShare = 0.7;

    // What is half a fill is no noise and no uptake of a body (choice).
    internal const double HalfFill = 0.5;

    public static void Add(
        IReadOnlyList<NightRecord> nights, ReviewedNight[] reviewed, NightResponse?[] responses, ReviewLimits limits, int today, List<Finding> findings)
    {
        var low = new List<NightRecord>();
        var isStopped = false;
        var held = new List<Content>();
        var morning = (Day: 0, Left: 0.0);

        void Held(double milliliters, double fill, NightRecord night) => held.Add(new(milliliters / fill, milliliters, night, IsAhead: false));

        void Ahead(NightResponse response, NightRecord night)
        {
            var next = response.Regimen.Night.Select(exchange => exchange.Fill.Milliliters).FirstOrDefault();
            held.Add(new((morning.Left + next) / next, morning.Left + next, night, IsAhead: true));
        }

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

            // Of a night without numbers nothing is known but what was inside before.
            if (nights[t] is { CycleDrains.Length: 0, InitialDrain: null, WrittenUltrafiltration: null } && !nights[t].IsByHand)
            {
                if (t == nights.Count - 1 && morning.Left > 0 && nights[t].Date.DayNumber - morning.Day <= limits.NowDays.Value)
                {
                    Ahead(response, nights[t]);
                }

                continue;
            }

            // A dry day's first drain is near nothing by design.
            var fill = NightBefore.IsWritten(nights, t) ? NightBefore.Of(nights, responses, t)?.DayFill ?? 0 : 0;
            var isLow = fill > 0 && nights[t].InitialDrain is { } drain && drain.Milliliters < limits.LowDrainShare.Value * fill
                && drain.Milliliters < limits.LowDrainShare.Value * Expected(reviewed[t]);
            isStopped |= isLow && nights[t].InitialDrain!.Value.Milliliters is var evening && evening < StoppedShare * Expected(reviewed[t]) && Expected(reviewed[t]) - evening > HalfFill * fill && IsNow(nights[t]);
            var fills = response.Regimen.Night;

            // What came out was in: of a day beyond what it usually leaves, and beyond the fills that are borne at night, under which a small one of the day may rise.
            var largest = fills.Select(exchange => exchange.Fill.Milliliters).DefaultIfEmpty().Max();
            var usual = Math.Max(Expected(reviewed[t]), Math.Max(fill, largest));
            if (usual > 0 && nights[t].InitialDrain is { } came)
            {
                Held(came.Milliliters, usual, nights[t]);
            }

            // What this person's day leaves to drain in the evening and did not come stays below the first fill.
            var left = fill > 0 && nights[t].InitialDrain is { } initial ? Math.Max(0, Expected(reviewed[t]) - initial.Milliliters)
                : fill == 0 && morning.Day == nights[t].Date.DayNumber - 1 ? Math.Max(0, morning.Left - (nights[t].InitialDrain?.Milliliters ?? 0)) : 0;
            var brought = left;
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
                isStopped |= drained < StoppedShare * fills[k].Fill.Milliliters && IsNow(nights[t]);
                left = Math.Max(0, before - drained);
            }

            // Without its drains the sum of the night tells what stayed. Below half a fill it is what a body takes up, or a leaving that the next night shows by itself (choice).
            // What was there before is taken up in a day or two, and does not add up over a week.
            left = nights[t].CycleDrains.Length > 0 ? Math.Max(0, left - brought) : reviewed[t] is { HoldsDay: false, Ultrafiltration: { } total } ? -total.Milliliters : 0;
            if (left < HalfFill * largest || largest == 0)
            {
                left = 0;
            }
            else if (response.DayFill > 0)
            {
                Held(left + response.DayFill, Math.Max(response.DayFill, largest), nights[t]);
            }
            else if (t == nights.Count - 1)
            {
                morning.Left = left;
                Ahead(response, nights[t]);
            }

            morning = (nights[t].Date.DayNumber, left);

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
        var what = Invariant($"{(fullest.IsAhead ? "By what went in and came out, fluid may still be inside: with the next fill the cavity would hold" : "By its drains the cavity may have held")} {share:0.0#} times the fill, {fullest.Milliliters:0} mL, {(fullest.IsAhead ? "after the night of" : "on")} {Day(fullest.Night)}{(share >= limits.HighOverfillShare.Value ? ", which is high" : "")}");
        if (TightBeside(fullest.Night) is { } tight)
        {
            Warn(findings, "record-overfill-now", $"{what}, and {Tightness(tight)} is written on {Day(tight)}: together compatible with overfill. Stop the exchange that is going on and call the unit now; the unit's rule for overfill applies at once.");
        }
        else if (IsHighNow(fullest))
        {
            Warn(findings, "record-overfill-now", $"{what}. {(told.Count > 0 ? $"Of drains is written {Told()}. " : "")}{(DangerSigns.NotUnderstood(fullest.Night) is { Length: > 0 } words ? $"What is written beside it is not judged here ({words}), so read it; no complaint is needed" : "No complaint of the body is written beside it; none is needed")}: call the unit before the next fill.");
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

                isStopped |= drained < StoppedShare * filled && IsNow(day);
            }
        }

        string Told() => string.Join(" and ", told.TakeLast(2).Select(night => $"{DangerSigns.Quoted(night, Symptom.SlowDrain)} on {Day(night)}"));

        bool IsNow(NightRecord night) => today - night.Date.DayNumber <= limits.NowDays.Value;

        bool IsHighNow(Content one) => Math.Round(one.Share, 2) >= limits.HighOverfillShare.Value && IsNow(one.Night);

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

    /// <summary>What the cavity may have held, or would with the next fill.</summary>
    private sealed record Content(double Share, double Milliliters, NightRecord Night, bool IsAhead);
}
