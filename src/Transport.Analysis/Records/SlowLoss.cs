namespace Transport.Analysis;

/// <summary>Watches for ultrafiltration that is lost slowly, in all numbers of a night together: the likelihood of a loss over that of none, summed over when it began.</summary>
/// <remarks>
/// <para>The loss that is looked for takes a fifth of a night's ultrafiltration over 60 nights and then stays, by faster transfer, lower conductance or more fluid loss. Each says what
/// that does to the night and, after a wet day, to the initial drain, where the long dwell tells most. Put through the filter it is a line in the innovations (as in
/// <see cref="ChangeSearch"/>), so that what wander, carry-over and the learning of levels make of it is allowed for, and its likelihood ratio is exact.</para>
/// <para>The sum over beginnings is the statistic of Shiryaev (Theory Probab Appl 1963;8:22-46) and Roberts (Technometrics 1966;8:411-430), which finds a known change soonest
/// on average for its rate of false alarms (both memory). Every fifth night a loss may begin; one that began 90 nights ago is part of the level.</para>
/// </remarks>
internal sealed class SlowLoss
{
    private const double Share = 0.2;
    private const double GrowthNights = 60;
    private const int EveryNights = 5;
    private const int Longest = 90;

    private readonly ChangeCause[] causes;
    private readonly List<Start> starts = [];
    private int nights;

    /// <param name="causes">What it may come from.</param>
    public SlowLoss(params ChangeCause[] causes) => this.causes = causes;

    /// <summary>Logarithm of the mean likelihood ratio, over beginnings and causes, by the last night taken.</summary>
    public double LogRatio { get; private set; } = double.NegativeInfinity;

    /// <summary>Takes a night.</summary>
    /// <param name="day">Its day.</param>
    /// <param name="response">The regimen that was run.</param>
    /// <param name="before">The regimen whose day fill came out first.</param>
    /// <param name="steps">What the filter did with its numbers, what passed since the night before first.</param>
    public void Take(int day, NightResponse response, NightResponse? before, IEnumerable<FilterStep> steps)
    {
        if (nights++ % EveryNights == 0)
        {
            starts.AddRange(causes.Select(cause => new Start(cause, day)));
        }

        starts.RemoveAll(start => day - start.Day > Longest);
        foreach (var step in steps)
        {
            foreach (var start in starts)
            {
                start.Take(day, response, before ?? response, step);
            }
        }

        if (starts.Count == 0)
        {
            return;
        }

        var highest = starts.Max(start => start.LogRatio);
        LogRatio = highest + Math.Log(starts.Sum(start => Math.Exp(start.LogRatio - highest)) / causes.Length);
    }

    /// <summary>Begins anew.</summary>
    public void Reset()
    {
        starts.Clear();
        LogRatio = double.NegativeInfinity;
    }

    private sealed class Start(ChangeCause cause, int day)
    {
        private readonly double[] state = new double[NightFilter.Size];

        public int Day => day;

        public double LogRatio { get; private set; }

        public void Take(int night, NightResponse response, NightResponse before, FilterStep step)
        {
            if (step.Channel is not { } channel)
            {
                NightFilter.Pass(state, step);
                return;
            }

            if (channel is NightChannel.DrainTime or NightChannel.AverageDwell)
            {
                // The clock tells nothing of such a loss, and shares nothing with what volumes are set beside.
                return;
            }

            var seen = Math.Min(1, (night - day) / GrowthNights) * Of(channel, response, before, step.HoldsDay);
            var (load, gain) = (step.Load, step.Gain);
            for (var i = 0; i < state.Length; i++)
            {
                seen -= load[i] * state[i];
            }

            LogRatio += (step.Innovation - 0.5 * seen) * seen / step.Variance;
            for (var i = 0; i < state.Length; i++)
            {
                state[i] += gain[i] * seen;
            }
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
            var size = ofNight == 0 ? 0 : -Share * Math.Max(LeastMilliliters, response.Night) / ofNight;
            return channel switch
            {
                NightChannel.InitialDrain => before.DayFill > 0 ? size * before.OfInitialDrain(lever) : 0,
                NightChannel.Ultrafiltration => size * (ofNight + (holdsDay ? before.OfInitialDrain(lever) : 0)),
                _ => 0,
            };
        }
    }

    // A fifth of next to nothing is nothing to look for.
    private const double LeastMilliliters = 300;
}
