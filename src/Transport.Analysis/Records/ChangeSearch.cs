using MathNet.Numerics.Distributions;

namespace Transport.Analysis;

/// <summary>When a change began, how large it is, and which explanation the nights are most compatible with: Bayes over cause, form, day and size.</summary>
/// <remarks>
/// Every cause says what its change would do to each number of each night. Put through the same filter as the nights, that is a straight line in the
/// innovations, whose slope, the size, has a half-normal prior and is integrated out; days and forms (at once; growing over 60 nights) count equally.
/// </remarks>
internal static class ChangeSearch
{
    private const int Window = 120;
    private const int EveryNights = 4;
    private const double GrowthNights = 60;

    // Share of all weight below which a beginning and a cause need no closer look.
    private const double Unlikely = 0.001;

    // Share of the heaviest trial below which one adds nothing to a size.
    private const double Slight = 0.05;

    // No explanation is exact: a number that it leaves alone differs all the same, SD in mL (choice, by the bands of docs/studies/record-review.md).
    private const double LeastMilliliters = 20;

    // Prior deviation of each size: logarithms of A0/Δx and LpS; mL/min; share left behind; minutes lost in a night; logarithm of strength; mL of the day; mmol/L. Choices.
    private static readonly (ChangeCause Cause, double Deviation, bool Grows)[] Causes =
    [
        (ChangeCause.FasterTransfer, 0.4, true),
        (ChangeCause.LowerConductance, 0.35, true),
        (ChangeCause.MoreFluidLoss, 0.7, true),
        (ChangeCause.DrainTrouble, 0.12, false),
        (ChangeCause.LostDwell, 60, false),
        (ChangeCause.RunDiffers, 0.4, false),
        (ChangeCause.DayDiffers, 500, false),
        (ChangeCause.HighPlasmaGlucose, 6, true),
        (ChangeCause.BookCountsOtherwise, 1, false),
    ];

    // The book either counts otherwise or it does not: there is no size to find.
    private static readonly (double Mean, double Deviation)[] CountsOtherwise = [.. Enumerable.Repeat((1.0, 0.0), ChangeSizes.Numbers)];

    /// <summary>
    /// x²/2 + ln 2Φ(x): what a half-normal size adds to the evidence where nights speak for a size of x standard deviations. Rises with x throughout. Far out, where Φ is lost in
    /// the smallest double, by its asymptotic series (Abramowitz and Stegun 26.2.12, memory), in which the squares are no longer there to cancel.
    /// </summary>
    internal static double EvidenceAt(double x) => x > -20
        ? 0.5 * x * x + Math.Log(2 * Normal.CDF(0, 1, x))
        : Math.Log(Math.Sqrt(2 / Math.PI) / -x * (1 - (1 - 3 / (x * x)) / (x * x)));

    // A cause, its prior and its form: at once or growing; of drains, whether a dry day takes up what they leave.
    private sealed record Form(ChangeCause Cause, double Deviation, bool IsGrowing = false, bool IsTakenUp = false);

    // A form that began on one night, and its evidence.
    private sealed record Trial(Form Form, int From, double LogLikelihood);

    // Its size by each number with the deviation of it, in the units of the cause, and how much it weighs.
    private sealed record Sized(Trial Trial, double Weight, (double Mean, double Deviation)[] Sizes);

    /// <summary>The change that a signal on one night speaks of.</summary>
    /// <param name="signal">Index of the night.</param>
    /// <param name="nights">All nights.</param>
    /// <param name="responses">The regimen's response on each night.</param>
    /// <param name="steps">The filter's steps, with the index of their night.</param>
    /// <param name="last">Last night to look at.</param>
    public static SearchedChange Run(
        int signal, IReadOnlyList<NightRecord> nights, NightResponse?[] responses, IReadOnlyList<(int Night, FilterStep Step)> steps, int last)
    {
        var until = steps.TakeWhile(step => step.Night <= last).ToArray();
        var before = Enumerable.Range(0, last + 1).Select(night => NightBefore.Of(nights, responses, night)).ToArray();
        var hasDryDays = before.Any(day => day is { DayFill: 0, IsByHand: false });
        var trials = new List<Trial>();
        var first = Math.Max(0, signal - Window);
        for (var from = first; from <= signal; from += EveryNights)
        {
            TryAll(from);
        }

        // Where these leave the beginning, every night is tried: a date is as sure as the nights make it and no surer.
        var coarse = Weights();
        var least = Unlikely * coarse.Sum();
        var likely = trials.Zip(coarse).Where(pair => pair.Second > least).Select(pair => pair.First.From).ToList();
        var (earliest, latest) = (likely.Min(), likely.Max());
        trials.RemoveAll(trial => trial.From < earliest || trial.From > latest);
        for (var from = Math.Max(first, earliest - EveryNights + 1); from <= Math.Min(signal, latest + EveryNights - 1); from++)
        {
            if ((from - first) % EveryNights != 0)
            {
                TryAll(from);
            }
        }

        var weights = Weights();
        var total = weights.Sum();
        var byCause = trials.Zip(weights).GroupBy(pair => pair.First.Form.Cause)
            .Select(group => new Explanation(group.Key, group.Sum(pair => pair.Second) / group.Count()))
            .ToList();
        var sum = byCause.Sum(explanation => explanation.Weight);
        var byDay = trials.Zip(weights).GroupBy(pair => pair.First.From).OrderBy(group => group.Key)
            .Select(group => (group.Key, group.Sum(pair => pair.Second) / total)).ToList();
        var slight = Slight * weights.Max();
        var sized = trials.Zip(weights).Where(pair => pair.Second >= slight).Select(pair => new Sized(pair.First, pair.Second, SizesOf(pair.First))).ToList();
        return new(
            [.. byCause.Select(explanation => explanation with { Weight = explanation.Weight / sum }).OrderByDescending(explanation => explanation.Weight)],
            Day(0.5), Day(0.05), Day(0.95), SizeOf(NightChannel.Ultrafiltration), until.LastOrDefault(step => step.Step.Channel == NightChannel.Ultrafiltration).Step?.HoldsDay == true, SizeOf(NightChannel.InitialDrain));

        int Day(double share)
        {
            var reached = 0.0;
            foreach (var (day, weight) in byDay)
            {
                reached += weight;
                if (reached >= share - 1e-12)
                {
                    return day;
                }
            }

            return byDay[^1].Key;
        }

        double[] Weights()
        {
            var highest = trials.Max(trial => trial.LogLikelihood);
            return [.. trials.Select(trial => Math.Exp(trial.LogLikelihood - highest))];
        }

        // What the change does to a number on the last night, all trials together. A number that is not written tells nothing: then it would be the prior's.
        (double Mean, double Deviation)? SizeOf(NightChannel channel)
        {
            if (until.LastOrDefault(step => step.Step.Channel == channel) is not { Step: { } written } seen || seen.Night < Day(0.5))
            {
                return null;
            }

            double share = 0, mean = 0, square = 0;
            foreach (var (trial, weight, sizes) in sized)
            {
                var effect = Signal(trial.Form, channel, last, trial.From, written.HoldsDay);
                var (size, deviation) = sizes[ChangeSizes.IndexOf(channel)];
                share += weight;
                mean += weight * effect * size;
                square += weight * effect * effect * (size * size + deviation * deviation);
            }

            mean /= share;
            return (mean, Math.Sqrt(LeastMilliliters * LeastMilliliters + Math.Max(0, square / share - mean * mean)));
        }

        void TryAll(int from)
        {
            foreach (var (cause, deviation, grows) in Causes)
            {
                trials.Add(Tried(new(cause, deviation), from));
                if (grows)
                {
                    trials.Add(Tried(new(cause, deviation, IsGrowing: true), from));
                }

                if (cause == ChangeCause.DrainTrouble && hasDryDays)
                {
                    trials.Add(Tried(new(cause, deviation, IsTakenUp: true), from));
                }
            }
        }

        int FirstOf(int night) => Array.FindIndex(until, step => step.Night >= night) is >= 0 and var index ? index : until.Length;

        (double Mean, double Deviation)[] SizesOf(Trial trial) => trial.Form.Cause == ChangeCause.BookCountsOtherwise ? CountsOtherwise : ChangeSizes.Of(
            trial.Form.Deviation, IsOfBothSigns(trial.Form.Cause), until.AsSpan(FirstOf(trial.From)), (channel, night, holdsDay) => Signal(trial.Form, channel, night, trial.From, holdsDay));

        Trial Tried(Form form, int from)
        {
            var (information, projection) = Project(form, from);
            if (form.Cause == ChangeCause.BookCountsOtherwise)
            {
                return new(form, from, projection - 0.5 * information);
            }

            var precision = 1 + form.Deviation * form.Deviation * information;
            var spread = form.Deviation / Math.Sqrt(precision);
            var mean = spread * spread * projection;
            var evidence = IsOfBothSigns(form.Cause) ? 0.5 * mean * mean / (spread * spread) : EvidenceAt(mean / spread);
            return new(form, from, evidence - 0.5 * Math.Log(precision));
        }

        (double Information, double Projection) Project(Form form, int from)
        {
            double information = 0, projection = 0;
            Span<double> state = stackalloc double[NightFilter.Size];
            state.Clear();
            foreach (var (night, step) in until.AsSpan(FirstOf(from)))
            {
                if (step.Channel is not { } channel)
                {
                    NightFilter.Pass(state, step);
                    continue;
                }

                var seen = Signal(form, channel, night, from, step.HoldsDay) - NightFilter.Along(step.Load, state);
                information += seen * seen / step.Variance;
                projection += seen * step.Innovation / step.Variance;
                NightFilter.Follow(state, step.Gain, seen);
            }

            return (information, projection);
        }

        double Signal(Form form, NightChannel channel, int night, int from, bool holdsDay)
        {
            if (night < from || responses[night] is not { } response)
            {
                return 0;
            }

            var share = form.IsGrowing ? Math.Min(1, (nights[night].Date.DayNumber - nights[from].Date.DayNumber) / GrowthNights) : 1;
            return share * form.Cause switch
            {
                ChangeCause.FasterTransfer => Of(NightLever.Area),
                ChangeCause.LowerConductance => -Of(NightLever.Conductance),
                ChangeCause.MoreFluidLoss => Of(NightLever.FluidLoss),
                ChangeCause.HighPlasmaGlucose => Of(NightLever.PlasmaGlucose),
                ChangeCause.LostDwell when channel == NightChannel.AverageDwell => -1.0 / response.Regimen.Cycles,
                ChangeCause.LostDwell when channel == NightChannel.Ultrafiltration && DwellTime.IsLossOfAverage(nights[night]) => 0,
                ChangeCause.LostDwell => Of(NightLever.LostDwell),
                ChangeCause.RunDiffers => Of(NightLever.Strength),
                ChangeCause.DayDiffers => before[night]?.DayFill > 0 && (channel == NightChannel.InitialDrain || holdsDay) ? 1 : 0,
                ChangeCause.BookCountsOtherwise => channel == NightChannel.Ultrafiltration && !holdsDay ? before[night]?.InitialDrain - before[night]?.DayFill ?? 0 : 0,
                _ => DrainSignal.Of(nights[night], response, before[night], channel, isFirst: night == from, holdsDay, form.IsTakenUp),
            };

            double Of(NightLever lever) => channel switch
            {
                NightChannel.InitialDrain => before[night]?.OfInitialDrain(lever) ?? 0,
                NightChannel.Ultrafiltration => response.OfNight(lever) + (holdsDay ? before[night]?.OfInitialDrain(lever) ?? 0 : 0),
                _ => 0,
            };
        }
    }

    private static bool IsOfBothSigns(ChangeCause cause) => cause is ChangeCause.RunDiffers or ChangeCause.DayDiffers;
}
