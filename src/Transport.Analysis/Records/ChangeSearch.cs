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

    // Prior deviation of each size: logarithms of A0/Δx and LpS; mL/min; share left behind; minutes lost in a night; logarithm of strength; mmol/L. Choices.
    private static readonly (ChangeCause Cause, double Deviation, bool Grows)[] Causes =
    [
        (ChangeCause.FasterTransfer, 0.4, true),
        (ChangeCause.LowerConductance, 0.35, true),
        (ChangeCause.MoreFluidLoss, 0.7, true),
        (ChangeCause.DrainTrouble, 0.12, false),
        (ChangeCause.LostDwell, 60, false),
        (ChangeCause.RunDiffers, 0.4, false),
        (ChangeCause.HighPlasmaGlucose, 6, true),
        (ChangeCause.BookCountsOtherwise, 1, false),
    ];

    /// <summary>
    /// x²/2 + ln 2Φ(x): what a half-normal size adds to the evidence where nights speak for a size of x standard deviations. Rises with x throughout. Far out, where Φ is lost in
    /// the smallest double, by its asymptotic series (Abramowitz and Stegun 26.2.12, memory), in which the squares are no longer there to cancel.
    /// </summary>
    internal static double EvidenceAt(double x) => x > -20
        ? 0.5 * x * x + Math.Log(2 * Normal.CDF(0, 1, x))
        : Math.Log(Math.Sqrt(2 / Math.PI) / -x * (1 - (1 - 3 / (x * x)) / (x * x)));

    private sealed record Trial(ChangeCause Cause, int From, double LogLikelihood, double Size, double SizeDeviation);

    /// <summary>The change that a signal on one night speaks of.</summary>
    /// <param name="signal">Index of the night.</param>
    /// <param name="nights">All nights.</param>
    /// <param name="responses">The regimen's response on each night.</param>
    /// <param name="steps">The filter's steps, with the index of their night.</param>
    /// <param name="last">Last night to look at.</param>
    public static (IReadOnlyList<Explanation> Explanations, int Began, int Earliest, int Latest, double Size, double Deviation) Run(
        int signal, IReadOnlyList<NightRecord> nights, NightResponse?[] responses, IReadOnlyList<(int Night, FilterStep Step)> steps, int last)
    {
        var until = steps.TakeWhile(step => step.Night <= last).ToArray();
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
        var byCause = trials.Zip(weights).GroupBy(pair => pair.First.Cause)
            .Select(group => new Explanation(group.Key, group.Sum(pair => pair.Second) / group.Count()))
            .ToList();
        var sum = byCause.Sum(explanation => explanation.Weight);
        var byDay = trials.Zip(weights).GroupBy(pair => pair.First.From).OrderBy(group => group.Key)
            .Select(group => (group.Key, group.Sum(pair => pair.Second) / total)).ToList();
        var size = trials.Zip(weights).Sum(pair => pair.First.Size * pair.Second) / total;
        var variance = trials.Zip(weights).Sum(pair => (pair.First.SizeDeviation * pair.First.SizeDeviation + pair.First.Size * pair.First.Size) * pair.Second) / total - size * size;
        return (
            [.. byCause.Select(explanation => explanation with { Weight = explanation.Weight / sum }).OrderByDescending(explanation => explanation.Weight)],
            Day(0.5), Day(0.05), Day(0.95), size, Math.Sqrt(Math.Max(0, variance)));

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

        void TryAll(int from)
        {
            foreach (var (cause, deviation, grows) in Causes)
            {
                Try(cause, deviation, from, isGrowing: false);
                if (grows)
                {
                    Try(cause, deviation, from, isGrowing: true);
                }
            }
        }

        void Try(ChangeCause cause, double deviation, int from, bool isGrowing)
        {
            var (information, projection) = Project(cause, from, isGrowing);
            if (cause == ChangeCause.BookCountsOtherwise)
            {
                // The book either counts otherwise or it does not: there is no size to find.
                trials.Add(new(cause, from, projection - 0.5 * information, Effect(cause, last, from, isGrowing), 0));
                return;
            }

            var precision = 1 + deviation * deviation * information;
            var spread = deviation / Math.Sqrt(precision);
            var mean = spread * spread * projection;
            var isOneSided = cause != ChangeCause.RunDiffers;
            var at = mean / spread;
            var evidence = isOneSided ? EvidenceAt(at) : 0.5 * at * at;
            if (isOneSided)
            {
                // The size is not negative: a normal cut off at zero.
                var ratio = Math.Sqrt(2 / Math.PI) * Math.Exp(-evidence);
                (mean, spread) = (spread * (at + ratio), spread * Math.Sqrt(Math.Max(0, 1 - ratio * (ratio + at))));
            }

            var effect = Effect(cause, last, from, isGrowing);
            trials.Add(new(cause, from, evidence - 0.5 * Math.Log(precision), effect * mean, Math.Abs(effect) * spread));
        }

        // What a change of size one does to a night's ultrafiltration on the last night.
        double Effect(ChangeCause cause, int night, int from, bool isGrowing) =>
            responses[night] is null ? 0 : Signal(cause, NightChannel.Ultrafiltration, night, from, isGrowing, holdsDay: false);

        (double Information, double Projection) Project(ChangeCause cause, int from, bool isGrowing)
        {
            double information = 0, projection = 0;
            Span<double> state = stackalloc double[NightFilter.Size];
            state.Clear();
            foreach (var (night, step) in until)
            {
                if (night < from)
                {
                    continue;
                }

                if (step.Channel is not { } channel)
                {
                    NightFilter.Pass(state, step);
                    continue;
                }

                var seen = Signal(cause, channel, night, from, isGrowing, step.HoldsDay);
                for (var i = 0; i < NightFilter.Size; i++)
                {
                    seen -= step.Load[i] * state[i];
                }

                information += seen * seen / step.Variance;
                projection += seen * step.Innovation / step.Variance;
                for (var i = 0; i < NightFilter.Size; i++)
                {
                    state[i] += step.Gain[i] * seen;
                }
            }

            return (information, projection);
        }

        double Signal(ChangeCause cause, NightChannel channel, int night, int from, bool isGrowing, bool holdsDay)
        {
            if (night < from || responses[night] is not { } response)
            {
                return 0;
            }

            var share = isGrowing ? Math.Min(1, (nights[night].Date.DayNumber - nights[from].Date.DayNumber) / GrowthNights) : 1;
            return share * cause switch
            {
                ChangeCause.FasterTransfer => Of(NightLever.Area),
                ChangeCause.LowerConductance => -Of(NightLever.Conductance),
                ChangeCause.MoreFluidLoss => Of(NightLever.FluidLoss),
                ChangeCause.HighPlasmaGlucose => Of(NightLever.PlasmaGlucose),
                ChangeCause.LostDwell when channel == NightChannel.AverageDwell => -1.0 / response.Regimen.Cycles,
                ChangeCause.LostDwell when channel == NightChannel.Ultrafiltration && DwellTime.IsLossOfAverage(nights[night]) => 0,
                ChangeCause.LostDwell => Of(NightLever.LostDwell),
                ChangeCause.RunDiffers => Of(NightLever.Strength),
                ChangeCause.BookCountsOtherwise => channel == NightChannel.Ultrafiltration && !holdsDay ? response.InitialDrain - response.DayFill : 0,
                _ => DrainSignal.Of(nights[night], response, channel, isFirst: night == from, holdsDay),
            };

            double Of(NightLever lever) => channel switch
            {
                NightChannel.InitialDrain => response.OfInitialDrain(lever),
                NightChannel.Ultrafiltration => response.OfNight(lever) + (holdsDay ? response.OfInitialDrain(lever) : 0),
                _ => 0,
            };
        }
    }
}
