using System.Runtime.InteropServices;
using System.Runtime.Intrinsics;

namespace Transport.Analysis;

/// <summary>What is believed of a person's nights, night after night: a linear state with normal doubt (Kalman, J Basic Eng 1960;82:35-45).</summary>
/// <remarks>
/// <para>The state: how far the membrane's numbers are from the fit; how far this person's nights and days are from the model for other reasons, which is learned anew where
/// another day's exchange comes; a slow wander; what the last drains left behind. So carry-over is expected before it comes, and slow wander is taken out before anything is charted.</para>
/// <para>initial drain = model + day's offset + left in the morning − left in the evening + noise<br/>
/// night = model + night's offset + wander + left in the evening − left in the morning + noise</para>
/// <para>Where both are one number, what the evening left cancels and successive nights are negatively correlated.</para>
/// </remarks>
internal sealed class NightFilter
{
    /// <summary>Fifteen, and one that stays zero, so that they are whole vectors.</summary>
    public const int Size = 16;

    // Places in the state; the first are the membrane's numbers in the order of NightLever.
    private const int Parameters = 5;
    private const int NightOffset = 5;
    private const int DayOffset = 6;
    private const int Wander = 7;
    private const int LeftBefore = 8;
    private const int LeftEvening = 9;
    private const int LeftMorning = 10;
    private const int FirstCycleOffset = 11;
    private const int DrainTimeOffset = 12;
    private const int DwellOffset = 13;
    private const int DryDayOffset = 14;

    // How far a person's clock is from the plan's, SD in min (choice).
    private const double ClockOffset = 6;

    private const double Furthest = 3.5;

    private readonly NightNoise noise;
    private readonly double[] mean = new double[Size];
    private readonly double[] covariance = new double[Size * Size];
    private readonly double[] squares = new double[Enum.GetValues<NightChannel>().Length];
    private readonly int[] counts = new int[Enum.GetValues<NightChannel>().Length];
    private double usualVariance;
    private double modelForm;
    private Regimen? day;

    public NightFilter(NightNoise noise, double[,] parameterCovariance)
    {
        this.noise = noise;
        for (var i = 0; i < Parameters; i++)
        {
            for (var j = 0; j < Parameters; j++)
            {
                covariance[i * Size + j] = parameterCovariance[i, j];
            }
        }

        Set(NightOffset, noise.OffsetMilliliters);
        Set(DayOffset, noise.OffsetMilliliters);
        Set(DryDayOffset, noise.OffsetMilliliters);
        Set(LeftBefore, noise.ResidualMilliliters);
        Set(LeftMorning, noise.ResidualMilliliters);
        Set(FirstCycleOffset, noise.FirstCycleOffsetMilliliters);
        Set(DrainTimeOffset, ClockOffset);
        Set(DwellOffset, ClockOffset);
    }

    /// <summary>Every update, in order, for what-if questions.</summary>
    public List<FilterStep> Steps { get; } = [];

    /// <summary>Goes to the next night, which is so many days on, after a day with the exchange of <paramref name="before"/>.</summary>
    public void Next(NightResponse response, NightResponse? before, int days)
    {
        var standard = NightVariation.Starting.Milliliters(response.Night);
        if (response.ModelForm > modelForm)
        {
            // A strength that was not tested comes in: the model's own doubt with it.
            Add(NightOffset, response.ModelForm * response.ModelForm - modelForm * modelForm);
            modelForm = response.ModelForm;
        }

        var isOtherDay = before?.DayFill > 0 && !ReferenceEquals(day, before.Regimen) && day?.Day.SequenceEqual(before.Regimen.Day) != true;
        if (isOtherDay)
        {
            // What was learned of one fluid or fill says little of another, least of all between icodextrin and glucose.
            day = before!.Regimen;
            Forget(DayOffset, Math.Sqrt(Square(noise.OffsetMilliliters) + Square(before.DayModelForm)));
        }

        usualVariance = standard * standard;
        var wander = noise.WanderShare * usualVariance;
        var kept = Math.Pow(noise.WanderCorrelation, days);
        Scale(Wander, kept);
        Add(Wander, (1 - kept * kept) * wander);

        // What the last drain left is still there tomorrow; after a gap nobody knows.
        if (days == 1)
        {
            Move(LeftMorning, LeftBefore);
        }
        else
        {
            Forget(LeftBefore, noise.ResidualMilliliters);
        }

        Forget(LeftEvening, noise.ResidualMilliliters);
        Forget(LeftMorning, noise.ResidualMilliliters);
        Steps.Add(FilterStep.Passing(kept, days == 1, isOtherDay));
    }

    public NightReading InitialDrain(NightResponse before, double expected, double observed, bool learns)
    {
        var load = Load(before.OfInitialDrain);
        load[OffsetOf(before)] = 1;
        load[LeftBefore] = 1;
        load[LeftEvening] = -1;
        return Update(NightChannel.InitialDrain, load, DayVariance(before), expected, observed, learns);
    }

    public NightReading FirstCycle(double expected, double observed, bool learns)
    {
        var load = new double[Size];
        load[FirstCycleOffset] = 1;
        load[LeftEvening] = 1;
        return Update(NightChannel.FirstCycle, load, Square(noise.FirstCycleMilliliters), expected, observed, learns);
    }

    public NightReading Night(NightResponse response, double expected, double observed, bool learns)
    {
        var load = Load(response.OfNight);
        load[NightOffset] = 1;
        load[Wander] = 1;
        load[LeftEvening] = 1;
        load[LeftMorning] = -1;
        return Update(NightChannel.Ultrafiltration, load, NightVariance, expected, observed, learns);
    }

    public NightReading NightAndDay(NightResponse response, NightResponse before, double expected, double observed, bool learns)
    {
        var load = Load(lever => response.OfNight(lever) + before.OfInitialDrain(lever));
        load[NightOffset] = 1;
        load[OffsetOf(before)] = 1;
        load[Wander] = 1;
        load[LeftBefore] = 1;
        load[LeftMorning] = -1;
        return Update(NightChannel.Ultrafiltration, load, NightVariance + DayVariance(before), expected, observed, learns, holdsDay: true);
    }

    public NightReading DrainTime(double expected, double observed, bool learns)
    {
        var load = new double[Size];
        load[DrainTimeOffset] = 1;
        return Update(NightChannel.DrainTime, load, Square(noise.DrainTimeMinutes), expected, observed, learns);
    }

    public NightReading AverageDwell(double expected, double observed, bool learns)
    {
        var load = new double[Size];
        load[DwellOffset] = 1;
        return Update(NightChannel.AverageDwell, load, Square(noise.AverageDwellMinutes), expected, observed, learns);
    }

    /// <summary>Something has changed: levels are learned anew.</summary>
    public void Reopen()
    {
        Add(NightOffset, usualVariance);
        Add(DayOffset, Square(noise.OffsetMilliliters));
        Add(DryDayOffset, Square(noise.OffsetMilliliters));
        Add(FirstCycleOffset, Square(noise.OffsetMilliliters));
        Add(DrainTimeOffset, Square(ClockOffset) / 4);
        Add(DwellOffset, Square(ClockOffset) / 4);
    }

    /// <summary>Standard deviation of a single night's ultrafiltration, the person's own blended in, mL.</summary>
    public double NightDeviation => Math.Sqrt(usualVariance * Factor(NightChannel.Ultrafiltration));

    /// <summary>What passes between two nights, for a state of what-if.</summary>
    public static void Pass(Span<double> state, FilterStep step)
    {
        state[Wander] *= step.Kept;
        state[DayOffset] = step.IsOtherDay ? 0 : state[DayOffset];
        state[LeftBefore] = step.IsNextNight ? state[LeftMorning] : 0;
        state[LeftEvening] = state[LeftMorning] = 0;
    }

    /// <summary>What a load sees of a state.</summary>
    public static double Along(ReadOnlySpan<double> load, ReadOnlySpan<double> state)
    {
        ref var first = ref MemoryMarshal.GetReference(load[..Size]);
        ref var second = ref MemoryMarshal.GetReference(state[..Size]);
        var sum = Vector256<double>.Zero;
        for (var i = 0; i < Size; i += Vector256<double>.Count)
        {
            sum += Vector256.LoadUnsafe(ref first, (nuint)i) * Vector256.LoadUnsafe(ref second, (nuint)i);
        }

        return Vector256.Sum(sum);
    }

    /// <summary>Moves a state by so much along a direction.</summary>
    public static void Follow(Span<double> state, ReadOnlySpan<double> direction, double length)
    {
        ref var moved = ref MemoryMarshal.GetReference(state[..Size]);
        ref var along = ref MemoryMarshal.GetReference(direction[..Size]);
        for (var i = 0; i < Size; i += Vector256<double>.Count)
        {
            (Vector256.LoadUnsafe(ref moved, (nuint)i) + Vector256.LoadUnsafe(ref along, (nuint)i) * length).StoreUnsafe(ref moved, (nuint)i);
        }
    }

    /// <summary>An innovation, or where that lies beyond the furthest that a single number counts, the furthest.</summary>
    public static double Within(double innovation, double variance) => Math.Clamp(innovation, -Furthest * Math.Sqrt(variance), Furthest * Math.Sqrt(variance));

    private double NightVariance => Math.Max(0.2 * usualVariance, (1 - noise.WanderShare) * usualVariance - 2 * Square(noise.ResidualMilliliters));

    // A dry day has a level of its own.
    private static int OffsetOf(NightResponse before) => before.DayFill > 0 ? DayOffset : DryDayOffset;

    private double DayVariance(NightResponse before) => Square(before.DayFill > 0 ? noise.WetDayMilliliters : noise.DryDayMilliliters);

    private NightReading Update(NightChannel channel, double[] load, double variance, double expected, double observed, bool learns, bool holdsDay = false)
    {
        var gain = new double[Size];
        for (var i = 0; i < Size; i++)
        {
            gain[i] = Along(covariance.AsSpan(i * Size, Size), load);
        }

        var spread = variance + Along(load, gain);
        var innovation = observed - expected - Along(load, mean);

        // The person's own variance, as far as known; until then the doubt about it widens the tails.
        var factor = Factor(channel);
        var score = Score(innovation / Math.Sqrt(spread * factor), noise.StartingNights + counts[(int)channel]);
        var reading = new NightReading(channel, observed, observed - innovation, Math.Sqrt(spread * factor), score);
        if (!learns)
        {
            return reading;
        }

        // A night beyond the furthest counts as one at the furthest: a slip must not move the level by a metre.
        var taken = Within(innovation, spread * factor);
        squares[(int)channel] += Math.Min(taken * taken / spread, Square(Furthest) * factor);
        counts[(int)channel]++;
        Follow(mean, gain, taken / spread);
        for (var i = 0; i < Size; i++)
        {
            Follow(covariance.AsSpan(i * Size, Size), gain, -gain[i] / spread);
        }

        for (var i = 0; i < Size; i++)
        {
            gain[i] /= spread;
        }

        Steps.Add(new(channel, load, gain, spread * factor, taken) { CutOff = innovation - taken, HoldsDay = holdsDay });
        return reading;
    }

    // The person's own variance over the starting one, shrunk on the logarithm, so that quiet people count as quiet soon.
    private double Factor(NightChannel channel)
    {
        var count = counts[(int)channel];
        return Math.Pow((1 + squares[(int)channel]) / (1 + count), count / (count + noise.StartingNights));
    }

    // Student's t to normal: Abramowitz and Stegun 26.7.8 (memory), within 0.08 to t = 4 at 14 degrees of freedom (computed), less at more.
    private static double Score(double t, double freedom) => t * (1 - 1 / (4 * freedom)) / Math.Sqrt(1 + t * t / (2 * freedom));

    private static double[] Load(Func<NightLever, double> response)
    {
        var load = new double[Size];
        for (var i = 0; i < Parameters; i++)
        {
            load[i] = response((NightLever)i);
        }

        return load;
    }

    private void Set(int place, double deviation) => covariance[place * Size + place] = Square(deviation);

    private void Add(int place, double variance) => covariance[place * Size + place] += variance;

    private void Scale(int place, double factor)
    {
        mean[place] *= factor;
        for (var i = 0; i < Size; i++)
        {
            covariance[place * Size + i] *= factor;
            covariance[i * Size + place] *= factor;
        }
    }

    private void Forget(int place, double deviation)
    {
        Scale(place, 0);
        Set(place, deviation);
    }

    private void Move(int from, int to)
    {
        mean[to] = mean[from];
        for (var i = 0; i < Size; i++)
        {
            covariance[to * Size + i] = covariance[from * Size + i];
        }

        for (var i = 0; i < Size; i++)
        {
            covariance[i * Size + to] = covariance[i * Size + from];
        }

        covariance[to * Size + to] = covariance[from * Size + from];
    }

    private static double Square(double value) => value * value;
}
