using MathNet.Numerics.Distributions;
using MathNet.Numerics.Random;

namespace Transport.Studies;

/// <summary>Writes the nights of a person who does not exist. Not gentle, and not made of what a review assumes.</summary>
/// <remarks>
/// The true membrane is simulated, with whatever happens to it; the cavity is kept by conservation of volume, drain after drain, and what a drain leaves behind beyond the usual
/// dilutes the next fill, as simulated, along a straight line. A night's ultrafiltration differs by Student's t with 5 degrees of freedom and a wander (a tenth of the variance, correlation 0.9 from day to day); each drain leaves
/// 250 mL × exp(0.21 N) per 1.73 m² behind; a wet day differs by 80 mL, a dry one by a fifth of the residual; every person is off the model by
/// N(0, 100 mL) at night and a first cycle is short by N(100, 100) mL, made up by the last; one night in ten is missing, one in ten loses
/// 10 to 60 min of dwell, which is written; average dwell differs by 2 min from what is left of the plan; numbers are rounded to 10 mL. All choices.
/// </remarks>
public sealed class VirtualBook
{
    private const double ResidualVariation = 0.21;
    private const double WanderShare = 0.1;
    private const double WanderCorrelation = 0.9;

    // A residual that much larger is simulated for what it dilutes, mL (choice: what a tenth of a full cavity leaves behind).
    private const double MoreResidual = 200;

    private readonly Patient patient;
    private readonly ThreePoreMembrane truth;
    private readonly Regimen regimen;
    private readonly double residual;
    private readonly RegimenOutcome at;
    private readonly double lostPerMinute;
    private readonly double[] dilution;
    private readonly double dayDilution;

    /// <summary>A person.</summary>
    /// <param name="patient">Plasma and size as they truly are.</param>
    /// <param name="truth">The membrane that nobody can see.</param>
    /// <param name="regimen">What is prescribed.</param>
    public VirtualBook(Patient patient, ThreePoreMembrane truth, Regimen regimen)
    {
        ArgumentNullException.ThrowIfNull(patient);
        ArgumentNullException.ThrowIfNull(truth);
        ArgumentNullException.ThrowIfNull(regimen);
        this.patient = patient;
        this.truth = truth;
        this.regimen = regimen;
        residual = 250 * patient.SurfaceFactor;
        at = Outcome(truth, regimen, patient);
        var slow = Outcome(truth, regimen with { Settings = regimen.Settings with { Drain = DrainProfile.Within(TimeSpan.FromMinutes(20)) } }, patient);
        lostPerMinute = (slow.NightUltrafiltration - at.NightUltrafiltration).Milliliters / (8 * regimen.Cycles);
        var (usual, fuller) = (Parts(at), Parts(Outcome(truth, regimen with { Settings = regimen.Settings with { Residual = Volume.FromMilliliters(residual + MoreResidual) } }, patient)));

        // A dry day takes the residual up, and the first cycle makes it good: that is no dilution.
        dilution = [.. usual.Cycles.Zip(fuller.Cycles, (without, with) => (with - without) / MoreResidual)];
        dilution[0] = regimen.DayFill is null ? dilution[1] : dilution[0];
        dayDilution = regimen.DayFill is null ? 0 : (fuller.Day - usual.Day) / MoreResidual;
    }

    /// <summary>How these nights differ, for somebody who knows it; the standard deviation of the ultrafiltration is learned from the nights.</summary>
    /// <param name="patient">Whose.</param>
    /// <param name="deviation">SD of a night, mL.</param>
    public static NightNoise NoiseOf(Patient patient, double deviation)
    {
        ArgumentNullException.ThrowIfNull(patient);
        var spread = ResidualVariation * 250 * patient.SurfaceFactor;
        var own = Math.Max(0.1, 1 - 2 * spread * spread / (deviation * deviation));
        return new()
        {
            ResidualMilliliters = spread,
            WanderShare = WanderShare * own,
            WanderCorrelation = WanderCorrelation,
            WetDayMilliliters = 80,
            DryDayMilliliters = 50 * patient.SurfaceFactor,
            FirstCycleOffsetMilliliters = 150,
            OffsetMilliliters = 100,
        };
    }

    /// <summary>Ultrafiltration of a night as it truly is on average, mL.</summary>
    public double NightMilliliters => at.NightUltrafiltration.Milliliters;

    /// <summary>By how much a night's ultrafiltration and the initial drain truly change on average, mL.</summary>
    /// <param name="story">What happens; not a way of counting.</param>
    /// <param name="size">How much, as in <see cref="Write"/>.</param>
    /// <param name="share">How much of it has happened, 0 to 1.</param>
    public (double Night, double InitialDrain) ChangeMilliliters(BookStory story, double size, double share)
    {
        if (!IsDrainFault(story))
        {
            var (before, after) = (Parts(at), Between(Levels(story, size), share));
            return (after.Cycles.Sum() - before.Cycles.Sum(), after.Day - before.Day);
        }

        // What a drain leaves scatters, and a drain brings nothing at least, so a mean is one of many nights: the same with and without.
        var nights = Write(1, 4000, 150, BookKind.WithInitialDrain, story, 0, share * size).Zip(Write(1, 4000, 150, BookKind.WithInitialDrain)).ToList();
        return (
            nights.Average(pair => (pair.First.WrittenUltrafiltration!.Value - pair.Second.WrittenUltrafiltration!.Value).Milliliters),
            nights.Average(pair => (pair.First.InitialDrain!.Value - pair.Second.InitialDrain!.Value).Milliliters));
    }

    /// <summary>Writes a book.</summary>
    /// <param name="seed">Of the nights: the same nights whatever happens and whatever is written down.</param>
    /// <param name="count">How many nights.</param>
    /// <param name="deviation">How much a night's ultrafiltration differs from the next, SD in mL.</param>
    /// <param name="kind">What is written down.</param>
    /// <param name="story">What happens.</param>
    /// <param name="from">The night on which it begins.</param>
    /// <param name="size">How much: a share of ultrafiltration that is lost, a share left behind, min a night, mL of the day's fill, or mmol/L.</param>
    /// <param name="over">Over how many nights it grows; 0: at once.</param>
    public IReadOnlyList<NightRecord> Write(
        int seed, int count, double deviation, BookKind kind, BookStory story = BookStory.Stable, int from = 0, double size = 0, int over = 0)
    {
        // A clock of its own, so that volumes are the same whether or not somebody looks at it.
        var (random, clock) = (new MersenneTwister(seed), new MersenneTwister(unchecked(7919 * seed + 1)));
        var planned = at.Cycles.Average(cycle => cycle.DwellTime.TotalMinutes);
        var levels = Levels(story, size);
        var spread = ResidualVariation * residual;
        var ofResiduals = 1 + (1 + dilution[0]) * (1 + dilution[0]) + dilution.Skip(1).Sum(ofCycle => ofCycle * ofCycle);
        var own = Math.Sqrt(Math.Max(0.1 * deviation * deviation, deviation * deviation - ofResiduals * spread * spread));
        var wander = Math.Sqrt(WanderShare) * own * Normal.Sample(random, 0, 1);
        var offset = 100 * Normal.Sample(random, 0, 1);
        var first = 100 + 100 * Normal.Sample(random, 0, 1);
        var nights = new List<NightRecord>();
        double left = residual, takenUp = 0;
        var date = new DateOnly(2025, 1, 1);
        for (var t = 0; t < count; t++)
        {
            var share = t < from || story == BookStory.Stable ? 0 : over == 0 ? 1 : Math.Min(1, (t - from) / (double)over);
            wander = WanderCorrelation * wander + Math.Sqrt((1 - WanderCorrelation * WanderCorrelation) * WanderShare) * own * Normal.Sample(random, 0, 1);
            var noise = wander + Math.Sqrt(1 - WanderShare) * own * StudentT.Sample(random, 0, 1, 5) / Math.Sqrt(5.0 / 3);
            var lost = random.NextDouble() < 0.1 ? 10 + 50 * random.NextDouble() : 0;
            var missing = random.NextDouble() < 0.1;
            var dayNoise = (DayFilled > 0 ? 80 : residual / 5) * Normal.Sample(random, 0, 1);
            var (cycles, day) = Between(levels, share);
            var fault = IsDrainFault(story) ? share * size : 0;

            var initial = Evening(ref left, day + dayNoise - takenUp, Behind);
            var drains = Cycles(ref left, [.. cycles.Select((cycle, k) => cycle + (noise + offset + lost * lostPerMinute) / cycles.Length + (k == 0 ? -first : k == cycles.Length - 1 ? first : 0))], Behind);
            var night = NightOf(drains);
            takenUp = TakenUp(story, fault, drains[^1] + left);
            var minutes = 12 + 50 * fault + 1.5 * Normal.Sample(random, 0, 1);
            var unwritten = story == BookStory.LostDwell ? share * size : 0;
            var dwell = planned - (lost + unwritten) / cycles.Length - 50 * fault + 2 * Normal.Sample(clock, 0, 1);
            var counts = story == BookStory.CountsOtherwise && t >= from;
            if (!missing)
            {
                nights.Add(new()
                {
                    Date = date.AddDays(t),
                    Row = t + 2,
                    Regimen = regimen,
                    NightFluid = new(regimen.Night[0].Solution, []),
                    DayFluid = regimen.DayFill is { } fill ? new(fill.Solution, []) : null,
                    Counts = kind == BookKind.NightAndDayAlone ? UltrafiltrationCount.NightAndDay : UltrafiltrationCount.Night,
                    WrittenUltrafiltration = Rounded(night + (kind == BookKind.NightAndDayAlone || counts ? initial - DayFilled : 0)),
                    InitialDrain = kind >= BookKind.WithInitialDrain ? Rounded(initial) : null,
                    CycleDrains = kind == BookKind.WithCycles && story != BookStory.CountsOtherwise ? [.. drains.Select(Rounded)] : [],
                    DrainTime = kind == BookKind.WithCycles ? TimeSpan.FromMinutes(Math.Round(Math.Max(3, minutes), 1)) : null,
                    AverageDwell = kind == BookKind.WithCycles ? TimeSpan.FromMinutes(Math.Round(Math.Max(1, dwell))) : null,
                    LostDwell = lost > 0 ? TimeSpan.FromMinutes(Math.Round(lost)) : TimeSpan.Zero,
                });
            }

            double Behind(double volume) => Math.Min(volume, residual * Math.Exp(ResidualVariation * Normal.Sample(random, 0, 1)) + fault * volume);
        }

        return nights;
    }

    private double DayFilled => regimen.DayFill?.Volume.Milliliters ?? 0;

    // What the day left runs out, but for what stays behind.
    private double Evening(ref double left, double day, Func<double, double> behind)
    {
        var inside = Math.Max(0, left + DayFilled + day + dayDilution * (left - residual));
        left = behind(inside);
        return inside - left;
    }

    // Drain after drain.
    private double[] Cycles(ref double left, double[] cycles, Func<double, double> behind)
    {
        var drains = new double[cycles.Length];
        for (var k = 0; k < cycles.Length; k++)
        {
            var inside = left + regimen.Night[k].Fill.Milliliters + cycles[k] + dilution[k] * (left - residual);
            left = behind(inside);
            drains[k] = inside - left;
        }

        return drains;
    }

    // Of what was in before the last drain, by the end of a dry day.
    private double TakenUp(BookStory story, double fault, double volume) => story == BookStory.DrainFaultTakenUp && DayFilled == 0 ? fault * volume : 0;

    private static bool IsDrainFault(BookStory story) => story is BookStory.DrainFault or BookStory.DrainFaultTakenUp;

    private double NightOf(double[] drains) => drains.Sum() - regimen.Night.Sum(exchange => exchange.Fill.Milliliters);

    // Cycles and day without, with half and with all of what happens.
    private (double[] Cycles, double Day)[] Levels(BookStory story, double size)
    {
        if (IsDrainFault(story) || story is BookStory.Stable or BookStory.CountsOtherwise)
        {
            return [Parts(at), Parts(at), Parts(at)];
        }

        var all = story switch
        {
            BookStory.WeakerBags => 1,
            BookStory.SmallerDay => size,
            BookStory.HighPlasmaGlucose or BookStory.LostDwell => size,
            _ => SizeFor(story, size),
        };
        return [Parts(at), Parts(Changed(story, all / 2)), Parts(Changed(story, all))];
    }

    private RegimenOutcome Changed(BookStory story, double size) => story switch
    {
        BookStory.FasterTransfer => Outcome(truth with { DiffusionArea = truth.DiffusionArea * Math.Exp(size) }, regimen, patient),
        BookStory.LowerConductance => Outcome(truth with { UltrafiltrationCoefficient = truth.UltrafiltrationCoefficient * Math.Exp(-size) }, regimen, patient),
        BookStory.MoreFluidLoss => Outcome(truth with { LymphaticRemoval = truth.LymphaticRemoval + FlowRate.FromMillilitersPerMinute(size) }, regimen, patient),
        // As long as if drains took it, which leave no more behind.
        BookStory.LostDwell => Outcome(truth, regimen with
        {
            Settings = regimen.Settings with { Drain = DrainProfile.Within(regimen.Settings.Drain.WholeDrain!.Value + TimeSpan.FromMinutes(size / regimen.Cycles)) },
        }, patient),
        BookStory.WeakerBags => Outcome(truth, regimen with
        {
            Night = [.. regimen.Night.Select(exchange => exchange with { Solution = DialysisSolution.OfGlucose(exchange.Solution.Glucose.MillimolesPerLiter * Math.Pow(0.6, size)) })],
        }, patient),
        // What is not filled in the morning does not come in the evening.
        BookStory.SmallerDay => Outcome(truth, regimen with
        {
            Day = [.. regimen.Day.Select(exchange => exchange with { Fill = exchange.Fill - Volume.FromMilliliters(size) })],
        }, patient),
        _ => Outcome(truth, regimen, patient with { Plasma = patient.Plasma with { Glucose = patient.Plasma.Glucose + Concentration.FromMillimolesPerLiter(size) } }),
    };

    // The size at which the night has lost its share; by bisection.
    private double SizeFor(BookStory story, double share)
    {
        double low = 0, high = 1.5;
        for (var i = 0; i < 12; i++)
        {
            var middle = (low + high) / 2;
            var lost = (at.NightUltrafiltration - Changed(story, middle).NightUltrafiltration).Milliliters;
            (low, high) = lost < share * Math.Abs(NightMilliliters) ? (middle, high) : (low, middle);
        }

        return (low + high) / 2;
    }

    private static (double[] Cycles, double Day) Between((double[] Cycles, double Day)[] levels, double share)
    {
        // A parabola through none, half and all.
        double[] weights = [(1 - share) * (1 - 2 * share), 4 * share * (1 - share), share * (2 * share - 1)];
        var cycles = new double[levels[0].Cycles.Length];
        for (var k = 0; k < cycles.Length; k++)
        {
            cycles[k] = levels.Zip(weights, (level, weight) => level.Cycles[k] * weight).Sum();
        }

        return (cycles, levels.Zip(weights, (level, weight) => level.Day * weight).Sum());
    }

    // What each dwell and the day add to the cavity.
    private (double[] Cycles, double Day) Parts(RegimenOutcome outcome) => (
        [.. outcome.Cycles.Select(cycle => cycle.Ultrafiltration.Milliliters)],
        outcome.EveningDrain.Milliliters - (regimen.DayFill?.Volume.Milliliters ?? 0));

    private static RegimenOutcome Outcome(ThreePoreMembrane membrane, Regimen run, Patient person) =>
        RegimenSimulation.Run(person, membrane, run, new() { Integration = new() { RelativeTolerance = 1e-5 } });

    private static Volume Rounded(double milliliters) => Volume.FromMilliliters(10 * Math.Round(milliliters / 10));
}
