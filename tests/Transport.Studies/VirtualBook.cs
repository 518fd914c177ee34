using MathNet.Numerics.Distributions;
using MathNet.Numerics.Random;

namespace Transport.Studies;

/// <summary>Writes the nights of a person who does not exist. Not gentle, and not made of what a review assumes.</summary>
/// <remarks>
/// The true membrane is simulated, with whatever happens to it; the cavity is kept by conservation of volume, drain after drain. A night's ultrafiltration
/// differs by Student's t with 5 degrees of freedom and a wander (a tenth of the variance, correlation 0.9 from day to day); each drain leaves
/// 250 mL × exp(0.21 N) per 1.73 m² behind; a wet day differs by 80 mL, a dry one by a fifth of the residual; every person is off the model by
/// N(0, 100 mL) at night and a first cycle is short by N(100, 100) mL, made up by the last; one night in ten is missing, one in ten loses
/// 10 to 60 min of dwell, which is written; average dwell differs by 2 min from what is left of the plan; numbers are rounded to 10 mL. All choices.
/// </remarks>
public sealed class VirtualBook
{
    private const double ResidualVariation = 0.21;
    private const double WanderShare = 0.1;
    private const double WanderCorrelation = 0.9;

    private readonly Patient patient;
    private readonly ThreePoreMembrane truth;
    private readonly Regimen regimen;
    private readonly double residual;
    private readonly RegimenOutcome at;
    private readonly double lostPerMinute;

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

    /// <summary>By how much a night's ultrafiltration truly changes on average, mL.</summary>
    /// <param name="story">What happens; not a drain fault or a way of counting.</param>
    /// <param name="size">How much, as in <see cref="Write"/>.</param>
    /// <param name="share">How much of it has happened, 0 to 1.</param>
    public double ChangeMilliliters(BookStory story, double size, double share) => Between(Levels(story, size), share).Cycles.Sum() - NightMilliliters;

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
        var own = Math.Sqrt(Math.Max(0.1 * deviation * deviation, deviation * deviation - 2 * spread * spread));
        var wander = Math.Sqrt(WanderShare) * own * Normal.Sample(random, 0, 1);
        var offset = 100 * Normal.Sample(random, 0, 1);
        var first = 100 + 100 * Normal.Sample(random, 0, 1);
        var nights = new List<NightRecord>();
        double left = residual, dayFilled = regimen.DayFill?.Volume.Milliliters ?? 0;
        var date = new DateOnly(2025, 1, 1);
        for (var t = 0; t < count; t++)
        {
            var share = t < from || story == BookStory.Stable ? 0 : over == 0 ? 1 : Math.Min(1, (t - from) / (double)over);
            wander = WanderCorrelation * wander + Math.Sqrt((1 - WanderCorrelation * WanderCorrelation) * WanderShare) * own * Normal.Sample(random, 0, 1);
            var noise = wander + Math.Sqrt(1 - WanderShare) * own * StudentT.Sample(random, 0, 1, 5) / Math.Sqrt(5.0 / 3);
            var lost = random.NextDouble() < 0.1 ? 10 + 50 * random.NextDouble() : 0;
            var missing = random.NextDouble() < 0.1;
            var dayNoise = (dayFilled > 0 ? 80 : residual / 5) * Normal.Sample(random, 0, 1);
            var (cycles, day) = Between(levels, share);
            var fault = story == BookStory.DrainFault ? share * size : 0;

            // Evening: what the day left runs out, but for the residual and, with a fault, a share.
            var inside = Math.Max(0, left + dayFilled + day + dayNoise);
            var behind = Behind(inside);
            var initial = Math.Max(0, inside - behind);
            left = inside - initial;
            var drains = new double[cycles.Length];
            for (var k = 0; k < cycles.Length; k++)
            {
                inside = left + regimen.Night[k].Fill.Milliliters + cycles[k] + (noise + offset + lost * lostPerMinute) / cycles.Length
                    + (k == 0 ? -first : k == cycles.Length - 1 ? first : 0);
                behind = Math.Min(inside, Behind(inside));
                drains[k] = inside - behind;
                left = behind;
            }

            var night = drains.Sum() - regimen.Night.Sum(exchange => exchange.Fill.Milliliters);
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
                    WrittenUltrafiltration = Rounded(night + (kind == BookKind.NightAndDayAlone || counts ? initial - dayFilled : 0)),
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

    // Cycles and day without, with half and with all of what happens.
    private (double[] Cycles, double Day)[] Levels(BookStory story, double size)
    {
        if (story is BookStory.Stable or BookStory.DrainFault or BookStory.CountsOtherwise)
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
