namespace Transport.Analysis;

/// <summary>Watches all numbers of a night together for a change of known shape: the likelihood of the change over that of none, summed over when it began.</summary>
/// <remarks>
/// <para>Each cause says what it does to the night and to the initial drain. Put through the filter that is a line in the innovations (as in <see cref="ChangeSearch"/>), so that what
/// wander, carry-over and the learning of levels make of it is allowed for, and its likelihood ratio is exact.</para>
/// <para>The sum over beginnings is the statistic of Shiryaev (Theory Probab Appl 1963;8:22-46) and Roberts (Technometrics 1966;8:411-430), which finds a known change soonest
/// on average for its rate of false alarms (both memory).</para>
/// </remarks>
internal sealed class LikelihoodChart
{
    // A loss takes a fifth of a night's ultrafiltration over 60 nights and then stays.
    private const double LostShare = 0.2;
    private const double GrowthNights = 60;

    // A fifth of next to nothing is nothing to look for.
    private const double LeastMilliliters = 300;

    private readonly Watch watch;
    private readonly double weights;
    private readonly List<Start> starts = [];
    private int nights;

    /// <param name="watch">What is watched for, and when it may have begun.</param>
    public LikelihoodChart(Watch watch)
    {
        this.watch = watch;
        weights = watch.WeightPower == 0 ? 1 : Enumerable.Range(0, watch.Longest / watch.EveryNights + 1).Sum(i => Weight(i * watch.EveryNights));
    }

    /// <summary>What is watched for.</summary>
    /// <param name="Causes">What a change may come from.</param>
    /// <param name="EveryNights">On every so many nights it may begin.</param>
    /// <param name="Longest">One that began so many nights ago is part of the level.</param>
    /// <param name="WeightPower">
    /// Beginnings weigh by this power of their age until the loss has grown; 0: all alike. What a ramp tells grows with the cube of its age, so to find it by a given day young
    /// beginnings add false alarms and hardly a finding.
    /// </param>
    public sealed record Watch(IReadOnlyList<ChangeCause> Causes, int EveryNights, int Longest, double WeightPower = 0)
    {
        /// <summary>Ultrafiltration that is lost slowly; after a wet day it shows in the initial drain too, where the long dwell tells most.</summary>
        public static Watch SlowLoss(params IReadOnlyList<ChangeCause> causes) => new(causes, EveryNights: 5, Longest: 90);

        /// <summary>Drains that leave a tenth of what is in behind, from one night on. The first night tells most, so each may be it.</summary>
        public static Watch Drains { get; } = new([ChangeCause.DrainTrouble], EveryNights: 1, Longest: 14);
    }

    /// <summary>Logarithm of the likelihood ratio, summed over beginnings and its mean over causes, by the last night taken.</summary>
    public double LogRatio { get; private set; } = double.NegativeInfinity;

    /// <summary>Takes a night.</summary>
    /// <param name="record">The night.</param>
    /// <param name="response">The regimen that was run.</param>
    /// <param name="before">The regimen whose day fill came out first.</param>
    /// <param name="steps">What the filter did with its numbers, what passed since the night before first.</param>
    public void Take(NightRecord record, NightResponse response, NightResponse? before, IEnumerable<FilterStep> steps)
    {
        var day = record.Date.DayNumber;
        if (nights++ % watch.EveryNights == 0)
        {
            starts.AddRange(watch.Causes.Select(cause => new Start(cause, day)));
        }

        starts.RemoveAll(start => day - start.Day > watch.Longest);
        foreach (var step in steps)
        {
            foreach (var start in starts)
            {
                start.Take(record, response, before ?? response, step);
            }
        }

        var highest = starts.Count == 0 ? double.NegativeInfinity : starts.Max(start => start.LogRatio);
        LogRatio = starts.Count == 0 ? highest : highest + Math.Log(starts.Sum(start => Weight(day - start.Day) * Math.Exp(start.LogRatio - highest)) / (weights * watch.Causes.Count));
    }

    /// <summary>Begins anew.</summary>
    public void Reset()
    {
        starts.Clear();
        LogRatio = double.NegativeInfinity;
    }

    private double Weight(int age) => Math.Pow(Math.Min(1, age / GrowthNights), watch.WeightPower);

    private sealed class Start(ChangeCause cause, int day)
    {
        private readonly double[] state = new double[NightFilter.Size];

        public int Day => day;

        public double LogRatio { get; private set; }

        public void Take(NightRecord record, NightResponse response, NightResponse before, FilterStep step)
        {
            if (step.Channel is not { } channel)
            {
                NightFilter.Pass(state, step);
                return;
            }

            if (channel is NightChannel.DrainTime or NightChannel.AverageDwell)
            {
                // The clock has charts of its own, and shares nothing with what volumes are set beside.
                return;
            }

            var night = record.Date.DayNumber;
            var seen = cause == ChangeCause.DrainTrouble
                ? DrainSignal.UsualShare * DrainSignal.Of(record, response, before, channel, isFirst: night == day, step.HoldsDay)
                : Math.Min(1, (night - day) / GrowthNights) * Of(channel, response, before, step.HoldsDay);
            seen -= NightFilter.Along(step.Load, state);
            LogRatio += (step.Innovation - 0.5 * seen) * seen / step.Variance;
            NightFilter.Follow(state, step.Gain, seen);
        }

        // Of the whole loss, mL.
        private double Of(NightChannel channel, NightResponse response, NightResponse before, bool holdsDay)
        {
            var lever = cause switch
            {
                ChangeCause.FasterTransfer => NightLever.Area,
                ChangeCause.LowerConductance => NightLever.Conductance,
                _ => NightLever.FluidLoss,
            };
            var ofNight = response.OfNight(lever);
            var size = ofNight == 0 ? 0 : -LostShare * Math.Max(LeastMilliliters, response.Night) / ofNight;
            return channel switch
            {
                NightChannel.InitialDrain => before.DayFill > 0 ? size * before.OfInitialDrain(lever) : 0,
                NightChannel.Ultrafiltration => size * (ofNight + (holdsDay ? before.OfInitialDrain(lever) : 0)),
                _ => 0,
            };
        }
    }
}
